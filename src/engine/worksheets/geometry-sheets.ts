import {
  amount,
  oldAsk as ask,
  computed,
  curve,
  number,
  oldOptional as optional,
  type Picture,
  picture,
  spaced,
  oldStanding as standing,
  type OldWorksheet as Worksheet,
} from '../../worksheet/index.js';
import { classRodMm } from '../cranking/class-engine.js';
import { compressionRatio, ottoEfficiency, ratioAfterMilling } from '../geometry.js';
import {
  angleAtTravelDeg,
  type CrankGeometry,
  displacementCc,
  pistonTravelMm,
  requireCrank,
} from '../slider-crank.js';
import { meanPistonSpeed } from '../speeds.js';
import { refusing } from './answers.js';
import { bore, optionalMm, rod, stroke } from './fields.js';

const swept = computed('π/4 · bore² · stroke');
const ratioRule = computed('(swept + clearance)/clearance');
const sliderCrank = computed('slider-crank; Internal Combustion Engine Fundamentals 1988, eq. 2.4 and 2.5');

export const engineDisplacement: Worksheet = {
  id: 'engine-displacement',
  title: 'Displacement',
  question: 'How big is this engine, and how fast does its piston go?',
  purpose: 'Swept volume from bore and stroke, and the mean piston speed at a speed.',
  fields: [
    bore,
    stroke,
    optional(ask('rotation', 'speed', 'Speed', 'For the piston speed; leave empty for none.', '3600 rpm')),
  ],
  compute: refusing({}, (given) => {
    const strokeMm = given.in('stroke', 'mm');
    const cc = displacementCc({ boreMm: given.in('bore', 'mm'), strokeMm });
    const speed = () => meanPistonSpeed(strokeMm, given.in('speed', 'rpm'));
    return [
      amount('displacement', 'Displacement', cc, 'cc', swept),
      ...(given.has('speed')
        ? [amount('piston-speed', 'Mean piston speed', speed(), 'm/s', computed('2 · stroke · speed'))]
        : []),
    ];
  }),
  cautions: ['Measure the bore where it is not worn: 0.5 % of diameter is 1 % of volume.'],
  sources: ['Internal Combustion Engine Fundamentals 1988'],
  examples: [
    {
      title: '62 mm at 3600 rpm: 7.44 m/s; 65 mm bore: 205.7 cc',
      given: { bore: '65 mm', stroke: '62 mm', speed: '3600 rpm' },
      expect: {
        displacement: { value: 205.74, unit: 'cc', tolerance: 0.005 },
        'piston-speed': { value: 7.44, unit: 'm/s', tolerance: 0.005 },
      },
      source: 'own arithmetic: π/4·6.5²·6.2; 2·0.062·60',
      mark: 'calculated',
    },
  ],
};

export const compressionRatioSheet: Worksheet = {
  id: 'compression-ratio',
  title: 'Compression ratio, gasket and milling',
  question: 'What is the compression ratio, and what does milling the head do to it?',
  purpose: 'Geometric ratio from the chamber’s parts, and the ratio after a cut over the recess in the head.',
  fields: [
    bore,
    stroke,
    ask(
      'volume',
      'head',
      'Head volume',
      'The recess in the head, by burette, plug in and valves closed.',
      '24 cc',
    ),
    standing(ask('length', 'gasket', 'Gasket', 'Squeezed thickness; 0 stands for none.', '1.2 mm'), '0 mm'),
    optional(
      ask(
        'area',
        'opening',
        'Gasket opening',
        'Left empty, the bore’s area. On a side-valve it spans the valves: measure it.',
        '5000 mm²',
      ),
    ),
    standing(
      ask(
        'length',
        'deck',
        'Piston below the face',
        'At top; negative when it stands above. 0 stands for level.',
        '0.3 mm',
      ),
      '0 mm',
    ),
    standing(
      ask(
        'volume',
        'crown',
        'Hollow of the crown',
        'Negative for a dome; a side-valve’s valve pockets belong here. 0 stands for flat.',
        '2 cc',
      ),
      '0 cc',
    ),
    optional(ask('length', 'cut', 'Milled off', 'What comes off the head’s face.', '0.010 in')),
    optional(
      ask(
        'area',
        'recess',
        'Recess at the face',
        'Area of the head’s recess where it is cut. Left empty, the gasket opening.',
        '4500 mm²',
      ),
    ),
  ],
  compute: refusing(
    { boreMm: 'bore', gasketArea: 'opening', swept: 'stroke', clearance: 'head' },
    (given) => {
      const boreMm = given.in('bore', 'mm');
      const opening = given.has('opening') ? given.in('opening', 'mm²') : (Math.PI / 4) * boreMm ** 2;
      const found = compressionRatio({
        boreMm,
        strokeMm: given.in('stroke', 'mm'),
        headCc: given.in('head', 'cc'),
        gasketMm: given.in('gasket', 'mm'),
        gasketAreaMm2: opening,
        deckMm: given.in('deck', 'mm'),
        crownCc: given.in('crown', 'cc'),
      });
      const milled = given.has('cut')
        ? ratioAfterMilling(
            found,
            given.in('cut', 'mm'),
            given.has('recess') ? given.in('recess', 'mm²') : opening,
          )
        : undefined;
      return [
        number('ratio', 'Compression ratio', found.ratio, 2, ratioRule),
        amount('clearance', 'Space at top', found.clearanceCc, 'cc', ratioRule),
        amount('displacement', 'Displacement', found.sweptCc, 'cc', swept),
        ...(milled === undefined ? [] : afterMilling(found.ratio, milled)),
      ];
    },
  ),
  cautions: [
    'Milling brings the valves and the piston nearer to the head: check with clay before it runs.',
    'On a side-valve the whole cut comes off the valves’ head room.',
  ],
  sources: ['Internal Combustion Engine Fundamentals 1988'],
  examples: [
    {
      title: '65 × 62 mm, 29.39 cc at top: ratio 8; half a millimeter off 4500 mm² makes 8.58',
      given: { bore: '65 mm', stroke: '62 mm', head: '29.391 cc', cut: '0.5 mm', recess: '4500 mm²' },
      expect: {
        ratio: { value: 8, tolerance: 0.0005 },
        'ratio-milled': { value: 8.5803, tolerance: 0.0005 },
      },
      source: 'own arithmetic: 205.737/29.391 + 1; 205.737/27.141 + 1',
      mark: 'calculated',
    },
  ],
};

function afterMilling(before: number, after: number) {
  const gain = 100 * (ottoEfficiency(after) / ottoEfficiency(before) - 1);
  return [
    number('ratio-milled', 'Ratio after milling', after, 2, ratioRule),
    number('efficiency', 'Gain of the ideal cycle, %', gain, 1, computed('Otto cycle, 1 − r^(1 − 1.4)'), {
      note: 'an upper bound of what more compression can give',
    }),
  ];
}

export const pistonPosition: Worksheet = {
  id: 'piston-position',
  title: 'Piston position',
  question: 'Where does the piston stand at this crank angle?',
  purpose:
    'Depth of the piston below top for a crank angle, or the angle for a depth: for timing marks, valve checks and ports.',
  fields: [
    stroke,
    rod,
    optional(ask('angle', 'angle', 'Crank angle', 'From top, either way; or give the depth instead.', '25°')),
    optional(
      ask('length', 'depth', 'Depth', 'Of the piston below top; or give the angle instead.', '0.25 in'),
    ),
  ],
  compute: refusing({ travel: 'depth' }, (given) => {
    const strokeMm = given.in('stroke', 'mm');
    const crank = { boreMm: strokeMm, strokeMm, rodMm: optionalMm(given, 'rod') ?? classRodMm(strokeMm) };
    requireCrank(crank);
    const unit = given.quantity('stroke').unit;
    if (!given.has('angle') && !given.has('depth')) return [bottomHalf(crank, unit)];
    const angle = given.has('angle')
      ? given.in('angle', '°')
      : angleAtTravelDeg(crank, given.in('depth', 'mm'));
    const depth = pistonTravelMm(crank, angle);
    return [
      amount('depth', 'Piston below top', inUnit(depth, unit), unit, sliderCrank, {
        picture: travelPicture(crank, angle),
      }),
      amount('angle', 'Crank angle from top', Math.abs(angle), '°', sliderCrank),
      number('part', 'Part of the stroke, %', (100 * depth) / strokeMm, 1, sliderCrank),
    ];
  }),
  cautions: ['Find top by a stop on either side and halve the angle: near top the piston hardly moves.'],
  sources: ['Internal Combustion Engine Fundamentals 1988, eq. 2.4 and 2.5'],
  examples: [
    {
      title: 'L/R 3.5, 90°: 1.1459 throws',
      given: { stroke: '62 mm', rod: '108.5 mm', angle: '90°' },
      expect: { depth: { value: 31 * 1.1459, unit: 'mm', tolerance: 0.0002 * 31 } },
      source: 'slider-crank relation, computed apart',
      mark: 'calculated',
    },
    {
      title: 'L/R 4, 30°: 0.16535 throws, and back from the depth to the angle',
      given: { stroke: '62 mm', rod: '124 mm', depth: '5.12585 mm' },
      expect: { angle: { value: 30, unit: '°', tolerance: 0.01 } },
      source: 'slider-crank relation, computed apart',
      mark: 'calculated',
    },
  ],
};

const inUnit = (mm: number, unit: string) =>
  unit === 'in' ? mm / 25.4 : unit === 'cm' ? mm / 10 : unit === 'mm' ? mm : mm / 1000;

function bottomHalf(crank: CrankGeometry, unit: string) {
  const at90 = pistonTravelMm(crank, 90);
  return amount('depth', 'Piston below top at 90°', inUnit(at90, unit), unit, sliderCrank, {
    note: 'more than half the stroke: the rod’s slant pulls it down. Give an angle or a depth for another place',
    picture: travelPicture(crank, 90),
  });
}

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

export const geometrySheets: readonly Worksheet[] = [
  engineDisplacement,
  compressionRatioSheet,
  pistonPosition,
];
