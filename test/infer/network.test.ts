import { describe, expect, test } from 'vitest';
import { type NetworkErrorCode, readNetwork } from '../../src/infer/index.js';
import { outcomeLevel } from '../../src/infer/network.js';
import { small } from './small-network.js';

const good = () => structuredClone(small) as unknown as Record<string, unknown>;
const sign = {
  id: 's',
  outcomes: ['a', 'b'],
  leak: [0.9, 0.1],
  causes: [{ fault: 'weak-coil', outcome: [0.5, 0.5] }],
};

describe('a network is refused at the place where it is wrong', () => {
  const cases: [string, Record<string, unknown>, NetworkErrorCode, string][] = [
    ['no faults', { faults: undefined }, 'shape', 'faults'],
    ['a prior in words', { faults: [{ id: 'f', prior: 'rare' }] }, 'shape', 'faults[0].prior'],
    ['a prior above 1', { faults: [{ id: 'f', prior: 1.01 }] }, 'shape', 'faults[0].prior'],
    ['a prior that is no number', { faults: [{ id: 'f', prior: Number.NaN }] }, 'shape', 'faults[0].prior'],
    [
      'two faults of one name',
      { faults: [...small.faults, { id: 'weak-coil', prior: 0.1 }] },
      'duplicate',
      'faults[3].id',
    ],
    ['two signs of one name', { signs: [...small.signs, small.signs[0]] }, 'duplicate', 'signs[3].id'],
    ['a link from nowhere', { links: [{ from: 'x', to: 'weak-coil', p: 0.1 }] }, 'unknown', 'links[0].from'],
    ['a link to nowhere', { links: [{ from: 'weak-coil', to: 'x', p: 0.1 }] }, 'unknown', 'links[0].to'],
    [
      'a link of negative probability',
      { links: [{ from: 'weak-coil', to: 'wet-plug', p: -0.1 }] },
      'shape',
      'links[0].p',
    ],
    ['a link twice', { links: [...small.links, ...small.links] }, 'duplicate', 'links[1]'],
    ['a link to itself', { links: [{ from: 'weak-coil', to: 'weak-coil', p: 0.1 }] }, 'cycle', 'links[0]'],
    ['one outcome only', { signs: [{ ...sign, outcomes: ['a'] }] }, 'shape', 'signs[0].outcomes'],
    ['an outcome twice', { signs: [{ ...sign, outcomes: ['a', 'a'] }] }, 'duplicate', 'signs[0].outcomes[1]'],
    [
      'a leak of another length',
      { signs: [{ ...sign, leak: [0.5, 0.25, 0.25] }] },
      'distribution',
      'signs[0].leak',
    ],
    [
      'a leak that does not sum to 1',
      { signs: [{ ...sign, leak: [0.9, 0.2] }] },
      'distribution',
      'signs[0].leak',
    ],
    [
      'a cause that does not sum to 1',
      { signs: [{ ...sign, causes: [{ fault: 'weak-coil', outcome: [0.5, 0.4] }] }] },
      'distribution',
      'signs[0].causes[0].outcome',
    ],
    [
      'a cause that is no fault',
      { signs: [{ ...sign, causes: [{ fault: 'x', outcome: [0.5, 0.5] }] }] },
      'unknown',
      'signs[0].causes[0].fault',
    ],
    [
      'a cause twice',
      { signs: [{ ...sign, causes: [sign.causes[0], sign.causes[0]] }] },
      'duplicate',
      'signs[0].causes[1].fault',
    ],
    ['a sign seen that is none', { seen: [{ sign: 'x', outcome: 'none' }] }, 'unknown', 'seen[0].sign'],
    [
      'an outcome seen that is none',
      { seen: [{ sign: 'spark', outcome: 'blue' }] },
      'unknown',
      'seen[0].outcome',
    ],
    ['an outcome beyond the last', { seen: [{ sign: 'spark', outcome: 3 }] }, 'unknown', 'seen[0].outcome'],
    ['a sign seen twice', { seen: [small.seen[0], small.seen[0]] }, 'seen-twice', 'seen[1]'],
    [
      'weights of another length',
      { seen: [{ sign: 'spark', weights: [1, 0] }] },
      'weights',
      'seen[0].weights',
    ],
    [
      'weights that are all nought',
      { seen: [{ sign: 'spark', weights: [0, 0, 0] }] },
      'impossible',
      'seen[0].weights',
    ],
    ['a negative weight', { seen: [{ sign: 'spark', weights: [1, -1, 0] }] }, 'shape', 'seen[0].weights[1]'],
    [
      'both outcome and weights',
      { seen: [{ sign: 'spark', outcome: 'none', weights: [0, 0, 1] }] },
      'shape',
      'seen[0]',
    ],
    ['neither outcome nor weights', { seen: [{ sign: 'spark' }] }, 'shape', 'seen[0]'],
    ['a known fault that is none', { known: [{ fault: 'x', present: true }] }, 'unknown', 'known[0].fault'],
    [
      'a fault known twice',
      {
        known: [
          { fault: 'weak-coil', present: true },
          { fault: 'weak-coil', present: true },
        ],
      },
      'duplicate',
      'known[1]',
    ],
    [
      'a fault known to be both',
      {
        known: [
          { fault: 'weak-coil', present: true },
          { fault: 'weak-coil', present: false },
        ],
      },
      'contradiction',
      'known[1]',
    ],
  ];

  test.each(cases)('%s', (_, change, code, place) => {
    const refused = expect.objectContaining({ name: 'NetworkError', code, place });
    expect(() => readNetwork({ ...good(), ...change })).toThrow(refused);
  });

  test('what is no object at all', () => {
    expect(() => readNetwork('spark: none')).toThrow(
      expect.objectContaining({ code: 'shape', place: 'network' }),
    );
  });

  test('links that go round, with the way round', () => {
    const links = [
      { from: 'stale-fuel', to: 'weak-coil', p: 0.1 },
      { from: 'weak-coil', to: 'wet-plug', p: 0.1 },
      { from: 'wet-plug', to: 'weak-coil', p: 0.1 },
    ];
    expect(() => readNetwork({ ...good(), links })).toThrow(
      /links go round: (weak-coil → wet-plug → weak-coil|wet-plug → weak-coil → wet-plug)/,
    );
  });
});

describe('a network is read as it is written', () => {
  test('links, seen and known may be left out', () => {
    const { faults, signs } = small;
    expect(readNetwork({ faults, signs })).toEqual({ faults, signs, links: [], seen: [], known: [] });
  });

  test('an outcome goes by its name, or by its place where all names are words', () => {
    expect(outcomeLevel(small.signs[0]!, 'weak')).toBe(1);
    expect(outcomeLevel(small.signs[0]!, 2)).toBe(2);
    expect(outcomeLevel({ ...sign, outcomes: [2, 1, 0], leak: [1, 0, 0] }, 2)).toBe(0);
  });
});
