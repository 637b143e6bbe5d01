import { counted, inPercent } from '../../phrase/index.js';
import {
  type Bolt,
  type Comparison,
  extentOf,
  groupsOf,
  mayHideBolts,
  type Plate,
  type Seen,
} from '../../sight/index.js';

const to = (decimals: number) => (value: number) => Math.round(value * 10 ** decimals) / 10 ** decimals;
const mm = to(3);

/** `uScale` is null where the bars were not measured: the shapes are right, their size is not known. */
export function sightAsJson(
  { refused, camera, plate, bolts }: Seen,
  uScale: number | undefined,
  comparison?: Comparison,
): string {
  const points = (line: Plate['outline']) => line.map(({ x, y }) => [mm(x), mm(y)]);
  return JSON.stringify({
    ...(refused && { refused: { why: refused.why, do: refused.do } }),
    ...(camera && { camera: { tiltDeg: to(2)(camera.tiltDeg), rmsPx: mm(camera.rmsPx) } }),
    ...(plate && {
      plate: {
        outline: points(plate.outline),
        holes: plate.holes.map(({ x, y, d, u }) => ({ x: mm(x), y: mm(y), d: mm(d), u: mm(u) })),
        cutouts: plate.cutouts.map(points),
        hiddenBelow: to(1)(plate.hiddenBelow),
      },
    }),
    ...(bolts && {
      bolts: bolts.map(({ x, y, length, d, flats, u }) => ({
        x: mm(x),
        y: mm(y),
        length: mm(length),
        d: mm(d),
        ...(flats !== undefined && { flats: mm(flats) }),
        u: mm(u),
      })),
    }),
    ...(comparison && { comparison: comparisonAsJson(comparison) }),
    uScale: uScale === undefined ? null : to(6)(uScale),
  });
}

function comparisonAsJson({ differences, turn, least, ...rest }: Comparison) {
  const told = differences.map(({ what, inFirst, inSecond, by, u }) => ({
    what,
    inFirst: [mm(inFirst.x), mm(inFirst.y)],
    inSecond: [mm(inSecond.x), mm(inSecond.y)],
    by: mm(by),
    u: mm(u),
  }));
  return { differences: told, ...rest, turnDeg: to(1)(turn), least: to(2)(least) };
}

export function sightAsText(
  { refused, camera, plate, bolts }: Seen,
  uScale: number | undefined,
  comparison?: Comparison,
): string {
  if (refused) return [refused.why, refused.do].join('\n');
  return [
    ...(plate ? plateWords(plate) : []),
    ...(bolts ? boltWords(bolts) : []),
    ...(comparison ? comparisonWords(comparison) : []),
    uScale === undefined
      ? 'The bars of the mat were not measured: the shape is right, but every size holds only if the printer kept 100 %. Measure both bars and give --bars.'
      : `Every length besides ±${inPercent(uScale, 2)} for the bars of the mat.`,
    ...(camera ? [`Taken ${camera.tiltDeg.toFixed(0)}° off upright.`] : []),
  ].join('\n');
}

function plateWords(plate: Plate): string[] {
  const { holes, cutouts, hiddenBelow } = plate;
  const { x: long, y: wide } = extentOf(plate);
  const others = cutouts.length > 0 ? `, ${counted(cutouts.length, 'opening')} not round` : '';
  return [
    `A part of ${long.toFixed(1)} by ${wide.toFixed(1)} mm as it lies, ${counted(holes.length, 'round hole')}${others}.`,
    ...holes.map(
      ({ x, y, d, u }, i) =>
        `  ${i + 1}: at ${x.toFixed(2)}, ${y.toFixed(2)} mm, ${d.toFixed(2)} mm across, ±${u.toFixed(2)}`,
    ),
    ...(mayHideBolts(plate)
      ? [
          `Count them on the part: from here a hole narrower than ${hiddenBelow.toFixed(0)} mm may show no mat through it, and is not listed then. Taken from straight above, more of them are seen.`,
        ]
      : []),
  ];
}

function comparisonWords({
  differences,
  turnedOver,
  eitherWayUp,
  turns,
  least,
  maybeHidden,
}: Comparison): string[] {
  return [
    differences.length === 0
      ? `No difference to the other; one of less than ${least.toFixed(1)} mm would not show.`
      : `Not the same as the other: ${counted(differences.length, 'difference')}.`,
    ...differences.map(
      ({ what, inFirst: { x, y }, by }) =>
        `  ${what}: ${by.toFixed(2)} mm, here at ${x.toFixed(1)}, ${y.toFixed(1)} mm`,
    ),
    ...(maybeHidden > 0
      ? [
          `${counted(maybeHidden, 'narrow hole')} of one may be hidden in the other: take both from straight above.`,
        ]
      : []),
    ...(turnedOver ? ['The other lies the other way up.'] : []),
    ...(eitherWayUp
      ? ['Either way up it looks the same: look for a mark of which side goes to the engine.']
      : []),
    ...(turns > 1 ? [`It fits in ${turns} turns alike.`] : []),
  ];
}

const boltWords = (bolts: readonly Bolt[]): string[] => [
  `${counted(bolts.length, 'bolt')}.`,
  ...groupsOf(bolts).map(
    ({ bolts: own, length, d, flats, u, uDiameter }) =>
      `  ${own.length} ×: ${length.toFixed(1)} ±${u.toFixed(1)} mm under the head, ${d.toFixed(1)} ±${uDiameter.toFixed(1)} mm thick${flats ? `, ${flats.toFixed(1)} mm across the flats` : ''}`,
  ),
];
