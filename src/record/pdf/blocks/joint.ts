import type { Content } from 'pdfmake/interfaces.js';
import type { Fact, JointBlock } from '../../service-record/index.js';
import { factTable } from './facts.js';
import { holeDrawing, holeDrawingWidth } from './hole-drawing.js';
import type { Setting } from './setting.js';
import { explanation } from './small-print.js';
import { verdictLine } from './verdict.js';
import { staysWhole } from './whole.js';

const drawingGap = 14;

/** The drawing left, what is known of the joint right; not torn over two pages while it is sure to fit on one. */
export function jointRow(joint: JointBlock, setting: Setting): Content {
  const { type } = setting;
  const drawn = holeDrawingWidth(joint);
  const width = setting.width - drawn - drawingGap;
  const facts = joint.half
    ? joint.facts.map((fact) => runOnFact(fact, setting))
    : [factTable(joint.facts, { ...setting, width })];
  const words = [
    type.text(joint.name, { bold: true, fontSize: type.size.body + 0.6 }),
    verdictLine(joint.verdict, type),
    ...facts,
  ];
  return {
    unbreakable: staysWhole(joint.facts.map((fact) => fact.value)),
    margin: [0, 1, 0, 4],
    columns: [
      { width: drawn, stack: [holeDrawing(joint, type)] },
      { width, stack: words },
    ],
    columnGap: drawingGap,
  };
}

/** Without a column of labels, for which half a page has no room. */
function runOnFact({ label, value, origin }: Fact, { type }: Setting): Content {
  const labelRuns = type.runs(`${label}: `).map((run) => ({ ...run, color: type.small.color }));
  return { text: [...labelRuns, ...type.runs(value), ...explanation(origin, type)] };
}
