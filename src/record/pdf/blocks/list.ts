import type { Content } from 'pdfmake/interfaces.js';
import type { Box, Item } from '../../service-record/index.js';
import { signDrawing } from '../sign.js';
import { boxEdges, color, edged } from '../theme.js';
import type { Typesetter } from '../typesetter.js';
import type { Setting } from './setting.js';
import { explanation } from './small-print.js';
import { staysWhole } from './whole.js';

export function list(items: readonly Item[], { type, width }: Setting): Content {
  return { stack: items.map((item) => listItem(item, type, width)) };
}

const signWidth = 10;

function listItem({ lead, words, care, origin, verdict }: Item, type: Typesetter, width: number): Content {
  const text: Content = {
    text: [
      ...(lead ? type.runs(`${lead} `).map((run) => ({ ...run, bold: true })) : []),
      ...type.runs(words),
      ...(care ? type.runs(`  ! ${care}`).map((run) => ({ ...run, ...warning(type) })) : []),
      ...explanation(origin, type),
    ],
  };
  const margin: [number, number, number, number] = [0, 0.4, 0, type.size.row];
  if (!verdict) return { ...text, margin };
  const sign = {
    width: signWidth,
    stack: [signDrawing(verdict.sign)],
    margin: [0, 1.4, 0, 0] as typeof margin,
  };
  return { columns: [sign, { ...text, width: width - signWidth }], columnGap: 0, margin };
}

function warning(type: Typesetter) {
  return { bold: true, color: color.open, fontSize: type.size.small };
}

const tones = {
  care: { color: color.open, fill: '#fdf7e6' },
  stop: { color: color.fail, fill: '#fdf1ee' },
} as const;

/** A warning: framed, with a heavy edge and an exclamation mark, so that it stands out without color too. */
export function warningBox({ tone, title, items }: Box, setting: Setting): Content {
  const { type } = setting;
  const inner = setting.width - boxEdges;
  const whole = staysWhole(items.flatMap((item) => [item.lead, item.words]));
  const heading = type.text(`! ${title}`, { bold: true, color: tones[tone].color, margin: [0, 0, 0, 1] });
  return {
    layout: edged(tones[tone].color, tones[tone].fill),
    table: {
      widths: [inner],
      dontBreakRows: whole,
      body: [[{ stack: [heading, list(items, { ...setting, width: inner })] }]],
    },
    margin: [0, 2, 0, 3],
  };
}
