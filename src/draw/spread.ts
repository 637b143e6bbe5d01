import { axisOver } from './axis.js';
import { circle, type Drawing, level, type Shape, text, upright } from './shape.js';

/** Cost over machines like this one, as it is drawn. */
export interface SpreadView {
  /** of twenty machines, those that are made right, cheapest first; the others are scrap */
  readonly ofTwenty: readonly number[];
  readonly cost: Readonly<Record<'p05' | 'p25' | 'p50' | 'p75' | 'p95', number>>;
  /** above it, a machine costs more than it may */
  readonly good?: number | undefined;
  readonly marks: readonly { readonly amount: number; readonly words: string; readonly look: string }[];
}

const rowHeight = 22;
const margin = 14;
const scrapRoom = 74;
/** crosses side by side */
const scrapWide = 3;

/** Twenty machines along the cost, each a dot on those of about its cost, and what it is worth, the limit and the stop point across them. */
export function spreadDrawing(
  { ofTwenty, cost, good, marks: unsorted }: SpreadView,
  width: number,
  money: (amount: number) => string,
  says: string,
): Drawing {
  const marks = unsorted.toSorted((a, b) => b.amount - a.amount);
  const scrap = 20 - ofTwenty.length;
  const radius = width < 520 ? 6 : 9;
  const pile = 2 * radius + 2;
  const end = width - margin - (scrap > 0 ? scrapRoom : 0);
  const most = Math.max(ofTwenty.at(-1) ?? 0, cost.p95, ...marks.map((m) => m.amount), 1);
  const { at, ticks } = axisOver(0, most, margin, end, 90);
  const dots = stacked(ofTwenty.map(at), pile);
  const top = marks.length * rowHeight + 8;
  const high = Math.max(3, Math.ceil(scrap / scrapWide), ...dots.map((d) => d.level + 1));
  const ground = top + high * pile + 4;
  const dotLook = (x: number) => (good !== undefined && x > at(good) ? 'dot over' : 'dot');
  return {
    width,
    height: ground + 58,
    says,
    shapes: [
      ...dots.map((d) =>
        circle(dotLook(d.costX), { x: d.x, y: ground - radius - 2 - d.level * pile }, radius - 1),
      ),
      ...scrapPile(scrap, { x: end + 26, ground, radius }),
      level('axis', ground, margin, end),
      level('half nine', ground + 12, at(cost.p05), at(cost.p95)),
      level('half most', ground + 12, at(cost.p25), at(cost.p75)),
      upright('half middle', at(cost.p50), ground + 6, ground + 18),
      ...ticks.map((t, i) =>
        text('tick', { x: at(t), y: ground + 38 }, money(t), {
          ...(i === 0 && { anchor: 'start' }),
          ...(i === ticks.length - 1 && { anchor: 'end' }),
        }),
      ),
      ...marks.map((m, row) => upright(`mark ${m.look}`, at(m.amount), row * rowHeight + 4, ground + 20)),
      // after all lines, so that none of them runs through the words
      ...marks.map((m, row) => markWords(m.words, at(m.amount), row, width)),
    ],
  };
}

function markWords(words: string, x: number, row: number, width: number): Shape {
  const leftward = x > width * 0.55;
  const place = { x: leftward ? x - 7 : x + 7, y: row * rowHeight + 11 };
  return text('mark-words', place, words, { anchor: leftward ? 'end' : 'start' });
}

function scrapPile(count: number, { x, ground, radius }: Record<'x' | 'ground' | 'radius', number>): Shape[] {
  if (count === 0) return [];
  const step = 2 * radius + 2;
  const r = radius * 0.62;
  const crosses = Array.from({ length: count }, (_, i): Shape => {
    const cx = x + (i % scrapWide) * step;
    const cy = ground - radius - 2 - Math.floor(i / scrapWide) * step;
    const d = `M${cx - r} ${cy - r}L${cx + r} ${cy + r}M${cx - r} ${cy + r}L${cx + r} ${cy - r}`;
    return { is: 'path', d, look: 'scrap' };
  });
  return [...crosses, text('tick', { x: x - radius, y: ground + 16 }, 'scrap', { anchor: 'start' })];
}

/** Dots of about one place stand on one another. */
function stacked(xs: readonly number[], pile: number) {
  const height = new Map<number, number>();
  return xs.map((costX) => {
    const column = Math.floor(costX / pile);
    const level = height.get(column) ?? 0;
    height.set(column, level + 1);
    return { x: column * pile + pile / 2, costX, level };
  });
}
