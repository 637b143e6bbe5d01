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
  mostSawElongation,
  pitchOverRivets,
  rollerChains,
  sawChainSpeed,
  sawChains,
  sawPitch,
  sawStretch,
} from '../chain.js';
import { DrivenError } from '../error.js';
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
        ? practiceVerdict('verdict', 'Good for more', found.stands)
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

const pitches = { '1/4': 0.25, '.325': 0.325, '3/8': 0.375, '.404': 0.404 } as const;
/** A chain that measures shorter than new, or this much longer, has another pitch or was miscounted. */
const believable = { least: -0.01, most: 0.08 };

const sawChainStretch = worksheet({
  id: 'saw-chain-stretch',
  group: 'The machine it drives',
  title: 'Saw chain: stretch left',
  question: 'How much is this saw chain worn, and what is left?',
  purpose:
    'What the rivets have worn, over as many of them as a caliper reaches, and how far the bar must still move out.',
  fields: {
    pitch: ask.choice('Pitch', 'As stamped on drive link or depth gauge.', [
      '3/8',
      '.325',
      '1/4',
      '.404',
    ] as const),
    rivets: ask.count(
      'Rivets counted',
      'Both outer ones too; an odd number, 17 where they can be reached.',
      '17',
    ),
    measured: ask.in(
      'mm',
      'They measure',
      'Off the bar, pulled straight, first to last, middle to middle.',
      '6.09 in',
    ),
    uncertainty: ask.in(
      'mm',
      'Reading, k = 2',
      '0.3 mm stands for a caliper held to rivet heads (trade judgement, no source).',
      {
        standard: '0.3 mm',
      },
    ),
    links: ask.count('Drive links of the loop', 'For how far the bar must still move.', {
      hint: '60',
      optional: true,
    }),
    limit: ask.in(
      '1',
      'Most stretch',
      'From the chain’s maker; left empty, the trade’s rule for chains is shown.',
      {
        hint: '3 %',
        optional: true,
        within: ['0.1 %', '6 %'],
      },
    ),
  },
  names: { measuredMm: 'measured', driveLinks: 'links' },
  compute: ({ pitch, rivets, measured, uncertainty, links, limit }) => {
    const pitchMm = 25.4 * pitches[pitch];
    const most = limit ?? mostSawElongation;
    const { grown, left, barMovesMm } = sawStretch(
      { measuredMm: measured, rivets, pitchMm },
      { most, driveLinks: links ?? 1 },
    );
    if (grown < believable.least || grown > believable.most)
      throw new DrivenError(
        `${rivets} rivets of this pitch span ${((rivets - 1) * pitches[pitch]).toFixed(2)} in when new: look at pitch and count again.`,
        'measured',
        measured,
      );
    const u = uncertainty / 2 / ((rivets - 1) * pitchMm);
    const found = decide({ value: 100 * grown, u: 100 * u, limit: { max: 100 * most }, unit: '%' });
    const makers = { from: "maker's sheet", detail: 'the limit you gave' } as const;
    return [
      limit === undefined
        ? practiceVerdict('verdict', 'Good for more', found.stands)
        : verdict('verdict', 'Good for more', found.verdict, found.why, makers),
      amount('stretch', 'Stretch', 100 * grown, '%', computed('measured over nominal'), { u: 100 * u }),
      amount('left', 'Stretch left', 100 * left, '%', computed('limit less stretch'), { u: 100 * u }),
      ...(links === undefined || left <= 0
        ? []
        : [
            amount(
              'bar',
              'Bar moves out until then',
              barMovesMm,
              'mm',
              computed('half of what the loop still grows'),
            ),
          ]),
    ];
  },
  cautions: [
    'Lead off, brake on, gloves. A chain that hangs off the bar can jump: tension first, cold.',
    'Past the mark on the cutter the chain is done, whatever its rivets say. A new chain goes on a new sprocket.',
  ],
  sources: ['renewal at 3 %: common practice of chain drives', 'JCGM 106:2012'],
  examples: [
    {
      title:
        '17 rivets of 3/8 in at 6.09 in: grown by 1.5 %, half is left; 60 links: 8.6 mm of the bar’s slot',
      given: { pitch: '3/8', rivets: '17', measured: '6.09 in', links: '60', limit: '3 %' },
      expect: {
        stretch: near(1.5, 1e-6, '%'),
        left: near(1.5, 1e-6, '%'),
        bar: near(8.5725, 1e-6, 'mm'),
        verdict: { text: 'pass' },
      },
      source: 'own arithmetic: 6.09/(16 · 0.375) − 1; 0.015 · 60 · 9.525',
      mark: 'calculated',
    },
    {
      title: '3.5 % is past the limit of its maker',
      given: {
        pitch: '.325',
        rivets: '17',
        measured: '5.382 in',
        limit: '3 %',
        links: '60',
        uncertainty: '0.1 mm',
      },
      expect: { verdict: { text: 'fail' } },
      source: 'own arithmetic',
      mark: 'calculated',
    },
    {
      title: 'an even number of rivets spans no whole pitch of link and strap',
      given: { pitch: '3/8', rivets: '16', measured: '5.7 in' },
      expect: { rivets: { refused: 'odd' } },
      source: 'own arithmetic',
      mark: 'calculated',
    },
    {
      title: 'the pitch of another chain is said',
      given: { pitch: '.325', rivets: '17', measured: '6.09 in' },
      expect: { measured: { refused: 'count again' } },
      source: 'own arithmetic',
      mark: 'calculated',
    },
  ],
});

export const chainSheets = [rollerChain, sawChain, sawChainStretch];
