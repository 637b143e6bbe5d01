import {
  amount,
  computed,
  type OldGiven as Given,
  number,
  type OldWorksheet as Worksheet,
  words,
} from '../../worksheet/index.js';
import { classFigures } from '../class-figures.js';
import {
  adjusterTurn,
  cutAgrees,
  type StemAnswer,
  stemShortening,
  type ValveClearance,
} from '../valve-clearance.js';
import { refusing, verdict } from './answers.js';
import {
  lengthField,
  limitAnswer,
  limitField,
  standardFrom,
  toleranceField,
  type UsedLimit,
  usedLimit,
} from './fields.js';
import { linePicture } from './pictures.js';

const stemRule = computed('clearance grows by what the stem loses (common practice)');
const leverRule = computed('lever geometry of the rocker');
const feelers = toleranceField('uncertainty', 'Feelers, k = 2', 'a feeler set', '0.001 in');

const valveField: Worksheet['fields'][number] = {
  id: 'valve',
  label: 'Valve',
  help: 'Exhaust valves run hotter and have more clearance.',
  kind: 'choice',
  choices: [
    { id: 'intake', label: 'intake' },
    { id: 'exhaust', label: 'exhaust' },
  ],
};

const gapField = lengthField(
  'clearance',
  'Clearance measured',
  'Cold, valve seated, crank where the maker’s sheet wants it. 0 if no leaf enters.',
  '0.002 in',
);

const rangeFields = [
  limitField('least', 'Least allowed', classFigures.sideValveIntake),
  limitField('most', 'Most allowed', classFigures.sideValveIntake),
];

function rangeOf(given: Given, unit: string, side: boolean): UsedLimit {
  const exhaust = given.choice('valve') === 'exhaust';
  const figure = side
    ? exhaust
      ? classFigures.sideValveExhaust
      : classFigures.sideValveIntake
    : exhaust
      ? classFigures.overheadExhaust
      : classFigures.overheadIntake;
  return usedLimit(given, figure, unit);
}

function clearanceOf(given: Given, unit: string, { limit: { min = 0, max } }: UsedLimit): ValveClearance {
  return {
    measured: given.in('clearance', unit),
    u: standardFrom(given, 'uncertainty', unit),
    min,
    max: max ?? Number.NaN,
    unit,
  };
}

const fieldOf = { u: 'uncertainty', measured: 'clearance', min: 'least', max: 'most' };

export const valveClearanceSideValve: Worksheet = {
  id: 'valve-clearance-side-valve',
  title: 'Side-valve clearance',
  question: 'How much must come off this valve stem?',
  purpose: 'Decision on the clearance of a side valve, and how much to grind off the stem end, if anything.',
  fields: [valveField, gapField, feelers, ...rangeFields],
  compute: refusing(fieldOf, (given) => {
    const unit = given.quantity('clearance').unit;
    const used = rangeOf(given, unit, true);
    const found = stemShortening(clearanceOf(given, unit, used));
    return [
      verdict('verdict', 'Clearance', found.now, used.origin),
      limitAnswer(used, unit),
      words('action', 'Action', found.action, stemRule),
      words('do', 'Do', found.words, stemRule),
      ...(found.action === 'shorten stem'
        ? [
            amount('remove', 'Off the stem in all', found.remove, unit, stemRule, {
              picture: stemPicture(given.in('clearance', unit), found, used, unit),
            }),
            amount('first', 'First cut, then measure', found.firstCut, unit, stemRule, {
              note: 'stock does not grow back',
            }),
          ]
        : []),
    ];
  }),
  cautions: [
    'Grinding the stem only ever opens the clearance. Too wide is cured at the seat or with another valve, never at the stem.',
    'Set the clearance after lapping: lapping lets the valve drop and closes it.',
    'Some engines are read at top dead center of the firing stroke, others with the piston a little past it, so that the release bump is clear: the maker’s sheet says which. A wrong place reads falsely tight.',
    'Grind square, cool, and wipe every grain off before the valve goes back.',
  ],
  sources: ['common practice', `class figures: ${classFigures.sideValveIntake.source}`],
  examples: [
    {
      title: 'Intake 0.002 in, range 0.005 to 0.007 in: 0.004 in off, half of it first',
      given: { valve: 'intake', clearance: '0.002 in', least: '0.005 in', most: '0.007 in' },
      expect: {
        action: { text: 'shorten stem' },
        remove: { value: 0.004, unit: 'in', tolerance: 1e-9 },
        first: { value: 0.002, unit: 'in', tolerance: 1e-9 },
      },
      source: 'own arithmetic: middle of the range less the reading',
      mark: 'calculated',
    },
    {
      title: 'Exhaust 0.016 in, range 0.007 to 0.011 in: never grind the stem',
      given: { valve: 'exhaust', clearance: '0.016 in', least: '0.007 in', most: '0.011 in' },
      expect: { action: { text: 'cut seat or fit another valve' } },
      source: 'common practice: wide clearance, cut the seat',
      mark: 'common practice',
    },
  ],
};

export const valveClearanceRecheck: Worksheet = {
  id: 'valve-clearance-recheck',
  title: 'Side-valve clearance after the cut',
  question: 'I ground the stem: did the clearance grow by what came off?',
  purpose: 'Compares the change of clearance with the stock taken off.',
  fields: [
    lengthField('before', 'Clearance before', 'As measured before the cut.', '0.002 in'),
    lengthField('removed', 'Stem before less after', 'By micrometer, valve in hand.', '0.002 in'),
    lengthField('after', 'Clearance after', 'Measured at the same crank position.', '0.004 in'),
    feelers,
  ],
  compute: refusing({ u: 'uncertainty' }, (given) => {
    const unit = given.quantity('before').unit;
    const { agrees, unexplained } = cutAgrees({
      before: given.in('before', unit),
      removed: given.in('removed', unit),
      after: given.in('after', unit),
      u: standardFrom(given, 'uncertainty', unit),
    });
    return [
      words('agrees', 'Do they agree?', agrees ? agreesWords : differsWords, stemRule),
      amount('unexplained', 'Unexplained', unexplained, unit, stemRule),
    ];
  }),
  cautions: ['Two clearances are compared, so √2 of the feelers’ uncertainty counts.'],
  sources: ['JCGM 100:2008, 5.1.2'],
  examples: [
    {
      title: '0.002 in before, 0.002 in off, 0.004 in after',
      given: { before: '0.002 in', removed: '0.002 in', after: '0.004 in' },
      expect: { unexplained: { value: 0, unit: 'in', tolerance: 1e-9 } },
      source: 'own arithmetic',
      mark: 'calculated',
    },
  ],
};

/** Clearance over what has come off the stem: the line goes one way only. */
function stemPicture(measured: number, { remove, firstCut }: StemAnswer, used: UsedLimit, unit: string) {
  return linePicture({
    title: 'Clearance as the stem is ground',
    says: 'Every cut opens the clearance and none closes it: stop short of the shaded stretch above.',
    x: { label: 'off the stem', unit },
    y: { label: 'clearance', unit },
    label: 'clearance',
    from: 0,
    to: 2 * remove,
    at: (off) => measured + off,
    mark: { x: firstCut, label: 'first cut' },
    limit: used.limit,
  });
}

const agreesWords = 'Yes, within the feelers.';
const differsWords =
  'No: something else moved. Stem end not square, a burr, the cam off its base circle, or the valve not on its seat.';

export const valveClearanceOverhead: Worksheet = {
  id: 'valve-clearance-overhead',
  title: 'Overhead-valve clearance',
  question: 'How far do I turn the adjuster?',
  purpose:
    'Decision on the clearance and the turn of the adjuster that brings it to the middle of its range.',
  fields: [
    valveField,
    lengthField(
      'clearance',
      'Clearance measured',
      'Cold, at top dead center of the firing stroke, both rockers loose.',
      '0.05 mm',
    ),
    {
      ...feelers,
      standard: '0.02 mm',
      hint: '0.02 mm',
      help: 'Expanded uncertainty (k = 2) of your feelers. 0.02 mm stands for a metric feeler set in practised hands (trade judgement, no source).',
    },
    lengthField('pitch', 'Pitch of the adjuster', 'Travel for one turn: thread pitch.', '0.75 mm'),
    {
      id: 'ratio',
      label: 'Rocker ratio',
      help: 'Valve-side arm over push-rod-side arm; 1.3 stands (trade judgement, no source).',
      kind: 'number',
      standard: '1.3',
      hint: '1.3',
    },
    {
      id: 'at',
      label: 'Where it adjusts',
      help: 'Screw over the push rod, nut the rocker pivots on, or screw over the valve.',
      kind: 'choice',
      choices: [
        { id: 'push rod', label: 'screw over the push rod' },
        { id: 'pivot', label: 'nut the rocker pivots on' },
        { id: 'valve', label: 'screw over the valve' },
      ],
      standard: 'pivot',
    },
    ...rangeFields,
  ],
  compute: refusing({ ...fieldOf, rockerRatio: 'ratio' }, (given) => {
    const unit = given.quantity('clearance').unit;
    const used = rangeOf(given, unit, false);
    const found = adjusterTurn({
      ...clearanceOf(given, unit, used),
      pitch: given.in('pitch', unit),
      rockerRatio: given.number('ratio'),
      at: given.choice('at') as 'push rod' | 'pivot' | 'valve',
    });
    return [
      verdict('verdict', 'Clearance', found.now, used.origin),
      limitAnswer(used, unit),
      words('do', 'Do', found.words, leverRule),
      ...(found.action === 'leave'
        ? []
        : [number('degrees', `Degrees to ${found.action}`, found.degrees, 1, leverRule)]),
    ];
  }),
  cautions: [
    'The lock nut moves the setting: measure again after locking.',
    'Wrong stroke: the rockers are not both loose, and the reading is falsely tight.',
  ],
  sources: ['lever geometry', `class figures: ${classFigures.overheadIntake.source}`],
  examples: [
    {
      title: '0.05 mm, middle 0.10 mm, pitch 0.75 mm, ratio 1.3 at the push rod: 18.5°',
      given: {
        valve: 'intake',
        clearance: '0.05 mm',
        pitch: '0.75 mm',
        ratio: '1.3',
        at: 'push rod',
        least: '0.08 mm',
        most: '0.12 mm',
      },
      expect: { degrees: { value: 18.46, tolerance: 0.01 }, verdict: { text: 'fail' } },
      source: 'own arithmetic: 360 × 0.05/(1.3 × 0.75)',
      mark: 'calculated',
    },
  ],
};
