import type { Content } from 'pdfmake/interfaces.js';
import type { Fact } from '../../service-record/index.js';
import { color, ruledFacts } from '../theme.js';
import type { Setting } from './setting.js';
import { explanation } from './small-print.js';
import { staysWhole } from './whole.js';

const widestLabel = 72;
const columnSpace = 10;

export function factTable(facts: readonly Fact[], { type, width }: Setting): Content {
  const label = Math.min(widestLabel, width * 0.3);
  return {
    layout: ruledFacts(type.size.row),
    table: {
      // a width of its own would grow with the longest word and push the table over the margin
      widths: [label, width - label - columnSpace],
      dontBreakRows: facts.every((fact) => staysWhole(Object.values(fact))),
      body: facts.map((fact) => [
        type.text(fact.label, { color: color.soft }),
        { text: [...type.runs(fact.value), ...explanation(fact.origin, type)] },
      ]),
    },
  };
}
