import { describe, expect, test } from 'vitest';
import { cliWithFolder } from '../support/built-cli.js';

const { cli, inFolder, solve } = cliWithFolder();

const infer = (network: unknown, ...args: string[]) => solve('infer', network, ...args);

/** Two faults that each may make one sign weak or dead; small enough to be summed by hand below. */
const network = {
  faults: [
    { id: 'plug-fouled', prior: 0.2 },
    { id: 'coil-weak', prior: 0.1 },
  ],
  links: [],
  signs: [
    {
      id: 'spark',
      outcomes: ['strong', 'weak', 'none'],
      leak: [0.9, 0.08, 0.02],
      causes: [
        { fault: 'plug-fouled', outcome: [0.3, 0.5, 0.2] },
        { fault: 'coil-weak', outcome: [0.1, 0.4, 0.5] },
      ],
    },
  ],
  seen: [{ sign: 'spark', outcome: 'none' }],
};

/** Sum over the four states: the sign is “none” unless leak and every present cause stay below it. */
function byHand() {
  const joint = [0, 1].flatMap((plug) =>
    [0, 1].map((coil) => {
      const prior = (plug ? 0.2 : 0.8) * (coil ? 0.1 : 0.9);
      const below = 0.98 * (plug ? 0.8 : 1) * (coil ? 0.5 : 1);
      return { plug, coil, p: prior * (1 - below) };
    }),
  );
  const sum = (of: typeof joint) => of.reduce((total, { p }) => total + p, 0);
  const evidence = sum(joint);
  return {
    evidence,
    plug: sum(joint.filter(({ plug }) => plug)) / evidence,
    coil: sum(joint.filter(({ coil }) => coil)) / evidence,
  };
}

test('a small network is answered as by summing over all its states', async () => {
  const { code, out, err } = await infer(network, '--json');
  expect(code, err).toBe(0);
  const answer = JSON.parse(out);
  expect(Object.keys(answer)).toEqual(['posterior', 'evidence']);
  expect(answer.evidence).toBeCloseTo(byHand().evidence, 14);
  expect(answer.posterior['plug-fouled']).toBeCloseTo(byHand().plug, 14);
  expect(answer.posterior['coil-weak']).toBeCloseTo(byHand().coil, 14);
});

test('a doubtful reading weighs each outcome, and a link brings its fault about', async () => {
  const linked = {
    ...network,
    links: [{ from: 'coil-weak', to: 'plug-fouled', p: 0.5 }],
    seen: [{ sign: 'spark', weights: [1, 1, 1] }],
  };
  const answer = JSON.parse((await infer(linked, '--json')).out);
  expect(answer.evidence).toBeCloseTo(1, 14);
  expect(answer.posterior['plug-fouled']).toBeCloseTo(1 - 0.8 * (1 - 0.1 * 0.5), 14);
  expect(answer.posterior['coil-weak']).toBeCloseTo(0.1, 14);
});

test('for people the likeliest fault stands first', async () => {
  const { code, out } = await infer(network);
  expect(code).toBe(0);
  const first = byHand().plug > byHand().coil ? 'plug-fouled' : 'coil-weak';
  expect(out.trimStart().startsWith(first)).toBe(true);
});

describe('a network that cannot be taken is refused by its place', () => {
  test.each([
    ['garbage', '{"faults": [', /cannot be read as JSON/],
    ['nothing', '', /cannot be read as JSON/],
    [
      'a sign that was never described',
      { ...network, seen: [{ sign: 'smoke', outcome: 'blue' }] },
      /seen\[0\].*smoke/,
    ],
    [
      'an outcome that the sign does not have',
      { ...network, seen: [{ sign: 'spark', outcome: 'blue' }] },
      /seen\[0\].*blue/,
    ],
  ])('%s', async (_title, bad, message) => {
    const { code, out, err } = await infer(bad, '--json');
    expect(code).toBe(1);
    expect(out).toBe('');
    expect(err).toMatch(message);
    expect(err.trimEnd().split('\n')).toHaveLength(1);
  });

  test.each([
    ['nothing in it', {}, /: “faults” is missing; it is a list/],
    ['a list', [1], /“network” must be a set of names and values .*, and a list .* stands there/],
    [
      'a prior above one',
      { ...network, faults: [{ id: 'plug-fouled', prior: 1.2 }, network.faults[1]] },
      /“faults\[0\]\.prior” must be at most 1/,
    ],
  ])(
    'one of another build is told in plain words, with a file that works: %s',
    async (_title, bad, words) => {
      const { code, out, err } = await infer(bad);
      expect(code).toBe(1);
      expect(out).toBe('');
      expect(err.split('\n')[0]).toMatch(words);
      expect(err).not.toMatch(/Invalid input|undefined/);
      const shown = err.slice(err.indexOf('\n{'));
      expect((await infer(shown)).code).toBe(0);
    },
  );

  test('a file that is not there', async () => {
    const { code, err } = await cli.run(['infer', inFolder('none.json')]);
    expect(code).toBe(1);
    expect(err).toMatch(/none\.json cannot be read: there is no such file/);
  });
});
