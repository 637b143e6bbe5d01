import { decide } from '../../gauge/index.js';
import {
  amount,
  ask,
  computed,
  near,
  number,
  practice,
  verdict,
  words,
  worksheet,
} from '../../worksheet/index.js';
import {
  chainPitches,
  depthGaugeMm,
  elongation,
  mostElongation,
  pitchOverRivets,
  rollerChains,
  sawChainSpeed,
  sawChains,
  sawPitch,
} from '../chain.js';
import { practiceVerdict } from './practice-verdict.js';

type Numbered = `${keyof typeof rollerChains}`;

const rollerChain = worksheet({
  id: 'roller-chain',
  group: 'The machine it drives',
  title: 'Roller chain: stretch and length',
  question: 'Is this chain worn out?',
  purpose: 'How much a drive chain has grown, whether it is done, and how many pitches the drive takes.',
  fields: {
    chain: ask.choice('Chain', 'The number stamped on its plates.', [
      '25',
      '35',
      '40',
      '41',
      '50',
      '60',
      '80',
    ] as const satisfies readonly Numbered[]),
    pitches: ask.count('Pitches measured', 'Over as many as can be reached; 12 at least.', '12'),
    measured: ask.in('mm', 'They measure', 'Pulled straight, from pin to pin.', '6.1 in'),
    uncertainty: ask.in(
      'mm',
      'Reading, k = 2',
      '0.5 mm stands for a steel rule (trade judgement, no source).',
      { standard: '0.5 mm' },
    ),
    teeth: ask.count('Teeth of the larger sprocket', 'They decide how much stretch it can carry.', '40'),
    limit: ask.in(
      '1',
      'Most stretch',
      'From the chain’s or the machine’s maker; left empty, the trade’s rule is shown.',
      {
        hint: '3 %',
        optional: true,
        within: ['0.1 %', '10 %'],
      },
    ),
    smaller: ask.count('Teeth of the smaller', 'For the length of the chain.', {
      hint: '12',
      optional: true,
    }),
    centers: ask.in('mm', 'Distance of the centers', 'For the length of the chain.', {
      hint: '15 in',
      optional: true,
    }),
  },
  compute: ({ chain, pitches, measured, uncertainty, teeth, limit, smaller, centers }) => {
    const pitchMm = 25.4 * rollerChains[Number(chain) as keyof typeof rollerChains];
    const grown = elongation(measured, pitches, pitchMm);
    const most = limit ?? mostElongation(teeth);
    const makers = { from: "maker's sheet", detail: 'the limit you gave' } as const;
    const u = uncertainty / 2 / (pitches * pitchMm);
    const found = decide({ value: 100 * grown, u: 100 * u, limit: { max: 100 * most }, unit: '%' });
    return [
      limit === undefined
        ? practiceVerdict('verdict', 'Good for more', found)
        : verdict('verdict', 'Good for more', found.verdict, found.why, makers),
      amount('stretch', 'Stretch', 100 * grown, '%', computed('measured over nominal'), { u: 100 * u }),
      amount('most', 'Done at', 100 * most, '%', limit === undefined ? practice : makers),
      ...(smaller === undefined || centers === undefined
        ? []
        : [lengthAnswer(chainPitches(smaller, teeth, centers / pitchMm))]),
    ];
  },
  cautions: [
    'Lead off before a hand goes near a chain. A new chain on hooked sprockets is worn out soon: renew them together.',
  ],
  sources: ['ASME B29.1 (pitches)', 'renewal at 3 %: common practice', 'Machinery’s Handbook (length)'],
  examples: [
    {
      title: '12 pitches of No. 40 at 6.25 in: 4.2 %, done',
      given: { chain: '40', pitches: '12', measured: '6.25 in', teeth: '40', limit: '3 %' },
      expect: { stretch: near(0.0416667, 1e-6, '1'), verdict: { text: 'fail' } },
      source: 'own arithmetic: 6.25/6 − 1',
      mark: 'calculated',
    },
    {
      title: '20 and 20 teeth at 30 pitches: 80 pitches',
      given: { chain: '40', pitches: '12', measured: '6 in', teeth: '20', smaller: '20', centers: '15 in' },
      expect: { pitches: near(80, 1e-9) },
      source: 'Machinery’s Handbook, chain length',
      mark: 'memory, recomputed',
    },
  ],
});

function lengthAnswer(length: number) {
  const even = 2 * Math.ceil(length / 2 - 1e-9);
  return number(
    'pitches',
    'Chain for these sprockets',
    even,
    0,
    computed('2C + (N + n)/2 + (N − n)²/4π²C, up to an even number'),
    {
      note: `pitches; ${length.toFixed(1)} before rounding up`,
    },
  );
}

const sawChain = worksheet({
  id: 'saw-chain',
  group: 'The machine it drives',
  title: 'Saw chain: pitch, file, speed',
  question: 'Which file fits this saw chain?',
  purpose: 'Pitch from three rivets, the file and depth gauge that go with it, and how fast it runs.',
  fields: {
    rivets: ask.in(
      'mm',
      'Over three rivets',
      'From the first to the third in a row, middle to middle.',
      '0.75 in',
    ),
    low: ask.choice(
      'Profile',
      'Low-profile 3/8 chain is thinner and takes a smaller file.',
      { full: 'full', low: 'low' },
      'full',
    ),
    teeth: ask.count('Teeth of the sprocket', 'For the chain’s speed.', { hint: '7', optional: true }),
    speed: ask.in('rpm', 'Speed', 'Of the sprocket: the engine’s on a saw.', {
      hint: '9000 rpm',
      optional: true,
    }),
  },
  compute: ({ rivets, low, teeth, speed }) => {
    const pitch = sawPitch(pitchOverRivets(rivets));
    const chain = sawChains.find(
      (c) => c.pitchIn === pitch && c.name.includes('low') === (low === 'low' && pitch === 0.375),
    )!;
    return [
      words('pitch', 'Pitch', chain.name, computed('half of the distance over three rivets')),
      amount('file', 'Round file', chain.fileMm, 'mm', practice, {
        note: `${chain.fileIn}; what is printed on the chain’s packing comes first`,
      }),
      amount('depth', 'Depth gauge below the cutter', depthGaugeMm, 'mm', practice),
      ...(teeth === undefined || speed === undefined
        ? []
        : [
            amount(
              'chain-speed',
              'Chain speed',
              sawChainSpeed(25.4 * pitch, teeth, speed),
              'm/s',
              computed('2·pitch·teeth·turns'),
            ),
          ]),
    ];
  },
  cautions: [
    'Lead off, brake on, gloves. The chain must stand still at idle: a chain that creeps is a safety point.',
    'All cutters the same length: the shortest sets the rest. Past the mark on the cutter the chain is done.',
  ],
  sources: ['filing tables of forestry handbooks: common practice'],
  examples: [
    {
      title: '0.75 in over three rivets: 3/8 in, 13/64 in file; 7 teeth at 9000 rpm run 20 m/s',
      given: { rivets: '0.75 in', teeth: '7', speed: '9000 rpm' },
      expect: {
        pitch: { text: '3/8 in' },
        file: near(5.2, 1e-9, 'mm'),
        'chain-speed': near(20, 0.05, 'm/s'),
      },
      source: 'filing tables of forestry handbooks',
      mark: 'common practice',
    },
    {
      title: '0.70 in over three rivets is none of the pitches',
      given: { rivets: '0.70 in' },
      expect: { rivets: { refused: 'none of' } },
      source: 'own arithmetic',
      mark: 'calculated',
    },
  ],
});

export const chainSheets = [rollerChain, sawChain];
