import { black, box, group, round, rubber, shape, stroke, tube } from './ink.mjs';
import { blotches, runs, specks, web } from './things.mjs';

const rust = ['#8f553f', '#6b4634', '#a86d50'];

/** The tube frame of the pump set seen along the shaft: behind the engine. */
export function frameBehind(dirty) {
  return group(
    tube('M292 742V214Q292 160 346 160H854Q908 160 908 214V742', 24, black),
    dirty && specks(5, 282, 200, 22, 520, 60, rust, [1.5, 4.5], 0.8),
    dirty && specks(6, 898, 200, 22, 520, 60, rust, [1.5, 4.5], 0.8),
  );
}

/** The rails on the bench and their rubber feet: before the engine. */
export function railsBefore(dirty) {
  const foot = (x) =>
    group(
      shape(`M${x - 34} 752H${x + 34}L${x + 42} 790H${x - 42}Z`, { fill: 'url(#black-v)' }),
      box(x - 40, 744, 80, 14, { r: 5, fill: rubber[1] }),
    );
  return group(
    foot(330),
    foot(870),
    tube('M250 740H950', 28, black),
    dirty && specks(8, 250, 728, 700, 24, 120, [...rust, '#b59f74'], [1.5, 5], 0.8),
    dirty && blotches(9, 262, 728, 660, 40, 9, '#7d6a49', [20, 60], 0.5),
  );
}

/** The tank as both ends show it: a pressed box with a seam and a cap. */
export function tankEnd({ x = 398, w = 404, cap = 640, dirty, paint = 'url(#paint-v)' }) {
  const y = 196;
  const h = 116;
  const d = `M${x + 46} ${y}H${x + w - 46}Q${x + w} ${y} ${x + w} ${y + 42}V${y + 78}Q${x + w} ${y + h} ${x + w - 40} ${y + h}H${x + 40}Q${x} ${y + h} ${x} ${y + 78}V${y + 42}Q${x} ${y} ${x + 46} ${y}Z`;
  return group(
    box(x + 74, y + h - 4, 34, 44, { r: 3, fill: 'url(#black-h)' }),
    box(x + w - 108, y + h - 4, 34, 44, { r: 3, fill: 'url(#black-h)' }),
    shape(d, { fill: paint }),
    stroke(`M${x + 2} ${y + 66}H${x + w - 2}`, '#0f3541', 5, 0.8),
    stroke(`M${x + 4} ${y + 61}H${x + w - 4}`, '#8fc0cc', 2.5, 0.7),
    stroke(`M${x + 54} ${y + 16}H${x + w - 80}`, '#bfdde4', 7, 0.55),
    box(cap - 22, y - 16, 44, 20, { r: 3, fill: 'url(#metal-h)' }),
    shape(
      `M${cap - 44} ${y - 14}Q${cap - 46} ${y - 44} ${cap - 32} ${y - 46}H${cap + 32}Q${cap + 46} ${y - 44} ${cap + 44} ${y - 14}Z`,
      { fill: 'url(#black-h)' },
    ),
    [-28, -14, 0, 14, 28].map((dx) => stroke(`M${cap + dx} ${y - 40}V${y - 19}`, '#6c7076', 2.4, 0.8)),
    dirty && dirtOnTank(x, y, w, h, cap),
  );
}

function dirtOnTank(x, y, w, h, cap) {
  return group(
    `<path d="M${x + 50} ${y + 2}H${x + w - 50}Q${x + w - 6} ${y + 4} ${x + w - 4} ${y + 44}H${x + 4}Q${x + 6} ${y + 4} ${x + 50} ${y + 2}Z" fill="url(#dust-down)"/>`,
    runs(31, x + 60, y + 64, w - 120, 9, 60, '#c9b58d'),
    runs(32, cap - 36, y - 4, 72, 4, 110, '#54401f'),
    specks(33, x + 14, y + 8, w - 28, h - 16, 90, ['#5f4c2c', '#8d7a52', '#d8c79f'], [1, 3], 0.6),
    blotches(34, x + 20, y + 80, 120, 30, 4, '#8f553f', [8, 22], 0.55),
  );
}

export function cobweb() {
  return web(306, 176, 150, 0, 90);
}

/** A flange or foot bolted to the rails. */
export function engineFeet(dirty) {
  return group(
    shape('M404 690H796L826 728H374Z', { fill: 'url(#metal-v)' }),
    [430, 770].map((x) =>
      group(
        box(x - 16, 706, 32, 16, { r: 3, fill: 'url(#steel-h)' }),
        round(x, 706, 11, { ry: 6, fill: 'url(#steel-v)', width: 2 }),
      ),
    ),
    dirty && blotches(41, 390, 694, 420, 30, 10, '#6d5a3b', [18, 50], 0.55),
  );
}
