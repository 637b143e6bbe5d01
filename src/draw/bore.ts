import { area, type Drawing, type Place, type Shape, text, upright } from './shape.js';

/** A bore as each direction saw it: growth over standard at each height, from the top down. */
export interface BoreView {
  readonly panels: readonly BorePanel[];
  /** the size that the growth is counted from */
  readonly standard: number;
  /** most growth that is allowed */
  readonly bound?: number | undefined;
}

export interface BorePanel {
  readonly direction: string;
  readonly walls: readonly {
    readonly growth: number;
    /** the diameter, as it is written */
    readonly text: string;
    /** where it was read, for a picture that has room for it */
    readonly height?: string;
  }[];
}

export interface BoreRoom {
  /** of one direction */
  readonly panel: number;
  readonly perRow: number;
  /** of one height */
  readonly level: number;
  /** over the walls, for the direction's name; none without */
  readonly head: number;
  readonly foot: number;
  readonly wall: number;
  /** most that a wall may stand out or in */
  readonly reach: number;
  /** between the wall and the next direction */
  readonly gap: number;
}

/**
 * Each direction as a cut through the bore: the two walls moved by the growth at each height, drawn so many times too
 * large that the greatest still fits, the standard size and the limit as upright lines.
 */
export function boreDrawing(
  bore: BoreView,
  room: BoreRoom,
  says = '',
): Drawing & { /** how many times too large */ readonly times: number } {
  const { panel, perRow, level, head, foot, wall, reach, gap } = room;
  const half = panel / 2 - reach - wall - gap;
  const growths = bore.panels.flatMap(({ walls }) => walls.map(({ growth }) => Math.abs(growth)));
  const most = Math.max(...growths, Math.abs(bore.bound ?? 0));
  const times = most === 0 ? 100 : roundedDown((reach / (most / 2)) * (bore.standard / (2 * half)));
  const tall = head + Math.max(...bore.panels.map(({ walls }) => walls.length)) * level + foot;
  const shapes = bore.panels.flatMap((each, i) =>
    panelShapes(each, {
      ...room,
      half,
      middle: ((i % perRow) + 0.5) * panel,
      top: Math.floor(i / perRow) * tall + head,
      shift: (growth) => (growth * times * half) / bore.standard,
      bound: bore.bound,
    }),
  );
  return {
    width: panel * Math.min(perRow, bore.panels.length),
    height: Math.ceil(bore.panels.length / perRow) * tall,
    shapes,
    says,
    times,
  };
}

interface PanelRoom extends BoreRoom {
  readonly half: number;
  readonly middle: number;
  readonly top: number;
  readonly shift: (growth: number) => number;
  readonly bound: number | undefined;
}

function panelShapes({ direction, walls }: BorePanel, room: PanelRoom): Shape[] {
  const { level, head, wall, reach, half, middle, top, shift, bound } = room;
  const bottom = top + walls.length * level;
  const at = (i: number): number => top + level * (i + 0.5);
  const profile: Place[] = [
    { x: shift(walls[0]!.growth), y: top },
    ...walls.map(({ growth }, i) => ({ x: shift(growth), y: at(i) })),
    { x: shift(walls.at(-1)!.growth), y: bottom },
    { x: reach + wall, y: bottom },
    { x: reach + wall, y: top },
  ];
  const sides = [1, -1];
  const both = (look: string, growth: number): Shape[] =>
    sides.map((side) => upright(look, middle + side * (half + shift(growth)), top, bottom));
  return [
    ...(head > 0 ? [text('direction', { x: middle, y: top - head / 2 }, direction)] : []),
    ...sides.map((side) =>
      area(
        'metal',
        profile.map(({ x, y }) => ({ x: middle + side * (half + x), y })),
      ),
    ),
    ...both('standard', 0),
    ...(bound === undefined ? [] : both('bound', bound)),
    ...walls.flatMap((w, i) => [
      text('figure', { x: middle, y: at(i) - (w.height ? level * 0.08 : 0) }, w.text),
      ...(w.height ? [text('height', { x: middle, y: at(i) + level * 0.19 }, w.height)] : []),
    ]),
  ];
}

/** A round number not above x, at least 1. */
function roundedDown(x: number): number {
  const power = 10 ** Math.floor(Math.log10(x));
  return Math.max(1, [8, 6, 5, 4, 3, 2, 1.5, 1].find((step) => step * power <= x)! * power);
}
