import { of, to } from '../../quantity/index.js';
import {
  amount,
  ask,
  computed,
  curve,
  near,
  number,
  type Picture,
  picture,
  spaced,
  worksheet,
} from '../../worksheet/index.js';
import { classRodMm } from '../cranking/class-engine.js';
import { compressionRatio, ottoEfficiency, ratioAfterMilling, ratioUncertainty } from '../geometry.js';
import {
  angleAtTravelDeg,
  type CrankGeometry,
  displacementCc,
  pistonTravelMm,
  requireCrank,
} from '../slider-crank.js';
import { meanPistonSpeed } from '../speeds.js';
import { bore, openingSpan, rod, runningSpan, stroke, strokeAsWritten } from './fields.js';

const swept = computed('π/4 · bore² · stroke');
const ratioRule = computed('(swept + clearance)/clearance');
const sliderCrank = computed('slider-crank; Internal Combustion Engine Fundamentals 1988, eq. 2.4 and 2.5');

const engineDisplacement = worksheet({
  id: 'engine-displacement',
  group: 'Compression and leaks',
  title: 'Displacement',
  question: 'How big is this engine, and how fast does its piston go?',
  purpose: 'Swept volume from bore and stroke, and the mean piston speed at a speed.',
  fields: {
    bore,
    stroke,
    speed: ask.in('rpm', 'Speed', 'For the piston speed; leave empty for none.', {
      hint: '3600 rpm',
      optional: true,
      within: runningSpan,
    }),
  },
  compute: ({ bore: boreMm, stroke: strokeMm, speed: rpm }) => {
    const displacement = amount(
      'displacement',
      'Displacement',
      displacementCc({ boreMm, strokeMm }),
      'cc',
      swept,
    );
    if (rpm === undefined) return [displacement];
    const metersPerSecond = meanPistonSpeed(strokeMm, rpm);
    return [
      displacement,
      amount('piston-speed', 'Mean piston speed', metersPerSecond, 'm/s', computed('2 · stroke · speed')),
    ];
  },
  cautions: ['Measure the bore where it is not worn: 0.5 % of diameter is 1 % of volume.'],
  sources: ['Internal Combustion Engine Fundamentals 1988'],
  examples: [
    {
      title: '62 mm at 3600 rpm: 7.44 m/s; 65 mm bore: 205.7 cc',
      given: { bore: '65 mm', stroke: '62 mm', speed: '3600 rpm' },
      expect: { displacement: near(205.74, 0.005, 'cc'), 'piston-speed': near(7.44, 0.005, 'm/s') },
      source: 'own arithmetic: π/4·6.5²·6.2; 2·0.062·60',
      mark: 'calculated',
    },
  ],
});

const compressionRatioSheet = worksheet({
  id: 'compression-ratio',
  group: 'Compression and leaks',
  title: 'Compression ratio, gasket and milling',
  question: 'What is the compression ratio, and what does milling the head do to it?',
  purpose: 'Geometric ratio from the chamber’s parts, and the ratio after a cut over the recess in the head.',
  fields: {
    bore,
    stroke,
    head: ask.in('cc', 'Head volume', 'The recess in the head, by burette, plug in and valves closed.', {
      hint: '24 cc',
      within: ['0 cc', '500 cc'],
    }),
    gasket: ask.in('mm', 'Gasket', 'Squeezed thickness; 0 stands for none.', {
      standard: '0 mm',
      hint: '1.2 mm',
      within: ['0 mm', '10 mm'],
    }),
    opening: ask.in(
      'mm²',
      'Gasket opening',
      'Left empty, the bore’s area. On a side-valve it spans the valves: measure it.',
      { hint: '5000 mm²', optional: true, within: openingSpan },
    ),
    deck: ask.in(
      'mm',
      'Piston below the face',
      'At top; negative when it stands above. 0 stands for level.',
      { standard: '0 mm', hint: '0.3 mm', within: ['-3 mm', '25 mm'] },
    ),
    crown: ask.in(
      'cc',
      'Hollow of the crown',
      'Negative for a dome; a side-valve’s valve pockets belong here. 0 stands for flat.',
      { standard: '0 cc', hint: '2 cc', within: ['-50 cc', '50 cc'] },
    ),
    cut: ask.in('mm', 'Milled off', 'What comes off the head’s face.', {
      hint: '0.010 in',
      optional: true,
      within: ['0 mm', '10 mm'],
    }),
    recess: ask.in(
      'mm²',
      'Recess at the face',
      'Area of the head’s recess where it is cut. Left empty, the gasket opening.',
      { hint: '4500 mm²', optional: true, within: openingSpan },
    ),
  },
  compute: ({ bore: boreMm, head, gasket, deck, crown, cut, recess, ...given }) => {
    const opening = given.opening ?? (Math.PI / 4) * boreMm ** 2;
    const chamber = {
      ...{ boreMm, strokeMm: given.stroke, headCc: head, crownCc: crown },
      ...{ gasketMm: gasket, gasketAreaMm2: opening, deckMm: deck },
    };
    const found = compressionRatio(chamber);
    const doubt = ratioUncertainty(chamber);
    const milled = cut === undefined ? undefined : ratioAfterMilling(found, cut, recess ?? opening);
    return [
      amount('ratio', 'Compression ratio', found.ratio, '1', ratioRule, { u: doubt, note: ratioDoubt }),
      amount('clearance', 'Space at top', found.clearanceCc, 'cc', ratioRule),
      amount('displacement', 'Displacement', found.sweptCc, 'cc', swept),
      ...(milled === undefined ? [] : afterMilling(found.ratio, milled)),
    ];
  },
  names: { boreMm: 'bore', gasketArea: 'opening', swept: 'stroke', clearance: 'head' },
  cautions: [
    'Milling brings the valves and the piston nearer to the head: check with clay before it runs.',
    'On a side-valve the whole cut comes off the valves’ head room.',
  ],
  sources: ['Internal Combustion Engine Fundamentals 1988'],
  examples: [
    {
      title: '65 × 62 mm, 29.39 cc at top: ratio 8; half a millimeter off 4500 mm² makes 8.58',
      given: { bore: '65 mm', stroke: '62 mm', head: '29.391 cc', cut: '0.5 mm', recess: '4500 mm²' },
      expect: { ratio: near(8, 0.0005), 'ratio-milled': near(8.5803, 0.0005) },
      source: 'own arithmetic: 205.737/29.391 + 1; 205.737/27.141 + 1',
      mark: 'calculated',
    },
  ],
});

const ratioDoubt =
  'head to 0.5 cc, lengths to 0.1 mm (k = 2), as a burette and a caliper leave them (trade judgement, no source)';

function afterMilling(before: number, after: number) {
  const gain = 100 * (ottoEfficiency(after) / ottoEfficiency(before) - 1);
  return [
    number('ratio-milled', 'Ratio after milling', after, 2, ratioRule),
    number('efficiency', 'Gain of the ideal cycle, %', gain, 1, computed('Otto cycle, 1 − r^(1 − 1.4)'), {
      note: 'an upper bound of what more compression can give',
    }),
  ];
}

const pistonPosition = worksheet({
  id: 'piston-position',
  group: 'Compression and leaks',
  title: 'Piston position',
  question: 'Where does the piston stand at this crank angle?',
  purpose:
    'Depth of the piston below top for a crank angle, or the angle for a depth: for timing marks, valve checks and ports.',
  fields: {
    stroke: strokeAsWritten,
    rod,
    angle: ask.in('°', 'Crank angle', 'From top, either way; or give the depth instead.', {
      hint: '25°',
      optional: true,
    }),
    depth: ask.in('mm', 'Depth', 'Of the piston below top; or give the angle instead.', {
      hint: '0.25 in',
      optional: true,
      within: ['0 mm', '200 mm'],
    }),
  },
  compute: ({ stroke: written, rod: rodMm, angle, depth }) => {
    const strokeMm = to(written, 'mm');
    const crank = { boreMm: strokeMm, strokeMm, rodMm: rodMm ?? classRodMm(strokeMm) };
    requireCrank(crank);
    const asked = angle ?? (depth === undefined ? undefined : angleAtTravelDeg(crank, depth));
    const at = asked ?? 90;
    const travelMm = pistonTravelMm(crank, at);
    const label = asked === undefined ? 'Piston below top at 90°' : 'Piston below top';
    const inWritten = (mm: number) => to(of(mm, 'mm'), written.unit);
    const piston = amount('depth', label, inWritten(travelMm), written.unit, sliderCrank, {
      u: inWritten(travelDoubtMm(crank, at, rodMm === undefined)),
      note: asked === undefined ? atNinety : positionDoubt,
      picture: travelPicture(crank, at),
    });
    if (asked === undefined) return [piston];
    return [
      piston,
      amount('angle', 'Crank angle from top', Math.abs(at), '°', sliderCrank),
      number('part', 'Part of the stroke, %', (100 * travelMm) / strokeMm, 1, sliderCrank),
    ];
  },
  names: { travel: 'depth' },
  oneOf: [{ ids: ['angle', 'depth'], wanted: false }],
  cautions: ['Find top by a stop on either side and halve the angle: near top the piston hardly moves.'],
  sources: ['Internal Combustion Engine Fundamentals 1988, eq. 2.4 and 2.5'],
  examples: [
    {
      title: 'L/R 3.5, 90°: 1.1459 throws',
      given: { stroke: '62 mm', rod: '108.5 mm', angle: '90°' },
      expect: { depth: near(31 * 1.1459, 0.0002 * 31, 'mm') },
      source: 'slider-crank relation, computed apart',
      mark: 'calculated',
    },
    {
      title: 'L/R 4, 30°: 0.16535 throws, and back from the depth to the angle',
      given: { stroke: '62 mm', rod: '124 mm', depth: '5.12585 mm' },
      expect: { angle: near(30, 0.01, '°') },
      source: 'slider-crank relation, computed apart',
      mark: 'calculated',
    },
  ],
});

/** A degree wheel read to a degree, a rod of the class within a tenth of the stroke (k = 2): trade judgement, no source. */
function travelDoubtMm(crank: CrankGeometry, angleDeg: number, classRod: boolean): number {
  const at = pistonTravelMm(crank, angleDeg);
  const byAngle = (pistonTravelMm(crank, angleDeg + 1) - pistonTravelMm(crank, angleDeg - 1)) / 4;
  const rodMm = crank.rodMm + 0.05 * crank.strokeMm;
  const byRod = classRod ? pistonTravelMm({ ...crank, rodMm }, angleDeg) - at : 0;
  return Math.max(0.005, Math.hypot(byAngle, byRod));
}

const positionDoubt = 'the angle to a degree (k = 2); a rod of the class to a tenth of the stroke';

const atNinety =
  'more than half the stroke: the rod’s slant pulls it down. Give an angle or a depth for another place';

function travelPicture(crank: CrankGeometry, angleDeg: number): Picture {
  const x = Math.min(360, Math.abs(angleDeg));
  return picture({
    title: 'Piston below top',
    says: 'The piston leaves top slowly, is past mid-stroke before 90° and turns back at 180°.',
    x: { label: 'Crank angle after top', unit: '°' },
    y: { label: 'Piston below top', unit: 'mm' },
    curves: [curve('piston', spaced(0, 360, 73), (angle) => pistonTravelMm(crank, angle))],
    marks: [{ x, y: pistonTravelMm(crank, x), label: 'here' }],
  });
}

export const geometrySheets = [compressionRatioSheet, engineDisplacement, pistonPosition];
