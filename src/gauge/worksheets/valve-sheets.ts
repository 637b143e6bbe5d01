import { type Quantity, to } from '../../quantity/index.js';
import { amount, ask, computed, near, number, words, worksheet } from '../../worksheet/index.js';
import { classFigures } from '../class-figures.js';
import {
  adjusterTurn,
  cutAgrees,
  type StemAnswer,
  stemShortening,
  type ValveClearance,
} from '../valve-clearance.js';
import { verdict } from './answers.js';
import {
  feelers,
  gapSpan,
  limitAnswer,
  limitField,
  standardIn,
  type UsedLimit,
  usedLimit,
} from './fields.js';
import { linePicture } from './pictures.js';

const stemRule = computed('clearance grows by what the stem loses (common practice)');
const leverRule = computed('lever geometry of the rocker');

const valve = ask.choice('Valve', 'Exhaust valves run hotter and have more clearance.', [
  'intake',
  'exhaust',
]);

const range = {
  least: limitField('Least allowed', classFigures.sideValveIntake),
  most: limitField('Most allowed', classFigures.sideValveIntake),
};

const figures = {
  side: { intake: classFigures.sideValveIntake, exhaust: classFigures.sideValveExhaust },
  overhead: { intake: classFigures.overheadIntake, exhaust: classFigures.overheadExhaust },
} as const;

type Read = Record<'clearance' | 'uncertainty', Quantity<'length'>>;

function clearanceOf(
  { clearance, uncertainty }: Read,
  { limit: { min = 0, max } }: UsedLimit,
): ValveClearance {
  const { unit } = clearance;
  const [measured, u] = [to(clearance, unit), standardIn(uncertainty, unit)];
  return { measured, u, min, max: max ?? Number.NaN, unit };
}

const names = { u: 'uncertainty', measured: 'clearance', min: 'least', max: 'most' } as const;

export const valveClearanceSideValve = worksheet({
  id: 'valve-clearance-side-valve',
  group: 'Setting clearances',
  title: 'Side-valve clearance',
  question: 'How much must come off this valve stem?',
  purpose: 'Decision on the clearance of a side valve, and how much to grind off the stem end, if anything.',
  fields: {
    valve,
    clearance: ask.quantity(
      'length',
      'Clearance measured',
      'Cold, valve seated, crank where the maker’s sheet wants it. 0 if no leaf enters.',
      { hint: '0.002 in', within: gapSpan },
    ),
    uncertainty: feelers,
    ...range,
  },
  names,
  compute: (given) => {
    const { unit } = given.clearance;
    const used = usedLimit(figures.side[given.valve], unit, given);
    const asked = clearanceOf(given, used);
    const found = stemShortening(asked);
    return [
      verdict('verdict', 'Clearance', found.now, used.origin),
      limitAnswer(used, unit),
      words('action', 'Action', found.action, stemRule),
      words('do', 'Do', found.words, stemRule),
      ...(found.action === 'shorten stem'
        ? [
            amount('remove', 'Off the stem in all', found.remove, unit, stemRule, {
              picture: stemPicture(asked.measured, found, used, unit),
            }),
            amount('first', 'First cut, then measure', found.firstCut, unit, stemRule, {
              note: 'stock does not grow back',
            }),
          ]
        : []),
    ];
  },
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
        remove: near(0.004, 1e-9, 'in'),
        first: near(0.002, 1e-9, 'in'),
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
});

export const valveClearanceRecheck = worksheet({
  id: 'valve-clearance-recheck',
  group: 'Setting clearances',
  title: 'Side-valve clearance after the cut',
  question: 'I ground the stem: did the clearance grow by what came off?',
  purpose: 'Compares the change of clearance with the stock taken off.',
  fields: {
    before: ask.quantity('length', 'Clearance before', 'As measured before the cut.', {
      hint: '0.002 in',
      within: gapSpan,
    }),
    removed: ask.quantity('length', 'Stem before less after', 'By micrometer, valve in hand.', {
      hint: '0.002 in',
      within: gapSpan,
    }),
    after: ask.quantity('length', 'Clearance after', 'Measured at the same crank position.', {
      hint: '0.004 in',
      within: gapSpan,
    }),
    uncertainty: feelers,
  },
  names: { u: 'uncertainty' },
  compute: ({ before, removed, after, uncertainty }) => {
    const { unit } = before;
    const { agrees, unexplained } = cutAgrees({
      before: to(before, unit),
      removed: to(removed, unit),
      after: to(after, unit),
      u: standardIn(uncertainty, unit),
    });
    return [
      words('agrees', 'Do they agree?', agrees ? agreesWords : differsWords, stemRule),
      amount('unexplained', 'Unexplained', unexplained, unit, stemRule),
    ];
  },
  cautions: ['Two clearances are compared, so √2 of the feelers’ uncertainty counts.'],
  sources: ['JCGM 100:2008, 5.1.2'],
  examples: [
    {
      title: '0.002 in before, 0.002 in off, 0.004 in after',
      given: { before: '0.002 in', removed: '0.002 in', after: '0.004 in' },
      expect: { unexplained: near(0, 1e-9, 'in') },
      source: 'own arithmetic',
      mark: 'calculated',
    },
  ],
});

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

export const valveClearanceOverhead = worksheet({
  id: 'valve-clearance-overhead',
  group: 'Setting clearances',
  title: 'Overhead-valve clearance',
  question: 'How far do I turn the adjuster?',
  purpose:
    'Decision on the clearance and the turn of the adjuster that brings it to the middle of its range.',
  fields: {
    valve,
    clearance: ask.quantity(
      'length',
      'Clearance measured',
      'Cold, at top dead center of the firing stroke, both rockers loose.',
      { hint: '0.05 mm', within: gapSpan },
    ),
    uncertainty: {
      ...feelers,
      standard: '0.02 mm',
      hint: '0.02 mm',
      help: 'Expanded uncertainty (k = 2) of your feelers. 0.02 mm stands for a metric feeler set in practised hands (trade judgement, no source).',
    },
    pitch: ask.quantity('length', 'Pitch of the adjuster', 'Travel for one turn: thread pitch.', {
      hint: '0.75 mm',
      within: ['0.2 mm', '3 mm'],
    }),
    ratio: ask.number(
      'Rocker ratio',
      'Valve-side arm over push-rod-side arm; 1.3 stands (trade judgement, no source).',
      { standard: '1.3', hint: '1.3', within: [0.5, 3] },
    ),
    at: ask.choice(
      'Where it adjusts',
      'Screw over the push rod, nut the rocker pivots on, or screw over the valve.',
      {
        'push rod': 'screw over the push rod',
        pivot: 'nut the rocker pivots on',
        valve: 'screw over the valve',
      },
      'pivot',
    ),
    ...range,
  },
  names: { ...names, rockerRatio: 'ratio' },
  compute: ({ pitch, ratio: rockerRatio, at, ...given }) => {
    const { unit } = given.clearance;
    const used = usedLimit(figures.overhead[given.valve], unit, given);
    const found = adjusterTurn({ ...clearanceOf(given, used), pitch: to(pitch, unit), rockerRatio, at });
    return [
      verdict('verdict', 'Clearance', found.now, used.origin),
      limitAnswer(used, unit),
      words('do', 'Do', found.words, leverRule),
      ...(found.action === 'leave'
        ? []
        : [number('degrees', `Degrees to ${found.action}`, found.degrees, 1, leverRule)]),
    ];
  },
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
      expect: { degrees: near(18.46, 0.01), verdict: { text: 'fail' } },
      source: 'own arithmetic: 360 × 0.05/(1.3 × 0.75)',
      mark: 'calculated',
    },
  ],
});
