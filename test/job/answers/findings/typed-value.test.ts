import { expect, test } from 'vitest';
import { builtInCatalog, byId } from '../../../../src/catalog/index.js';
import {
  EntryError,
  fold,
  lookedFor,
  readBody,
  seenWords,
  typedValue,
  valueAsked,
  written,
} from '../../../../src/job/index.js';
import { door } from '../../door.js';
import { jobId, log } from '../../entries.js';

const catalog = builtInCatalog();
const check = (id: string) => byId(catalog.checks).get(id)!;
type Add = ReturnType<typeof log>['add'];

function answersOn(intake: Parameters<Add>[1], more: (add: Add) => void = () => undefined) {
  const { add, lines } = log();
  add('open', { tag: 4, title: 'Mower' });
  add('intake', intake as never);
  more(add);
  return door(fold(jobId, lines));
}
const overhead = { architecture: 'overhead-valve' } as const;
const without = { ...overhead, variants: { 'automatic-release': false } };
const released = { ...overhead, variants: { 'automatic-release': true } };
const outcome = (a: ReturnType<typeof answersOn>, id: string, text: string) =>
  typedValue(a, check(id), text).outcome;

test('a gauge reading typed into its check means what it means on this engine (common practice for the ranges)', () => {
  expect(outcome(answersOn(without), 'compression-dry', '62 psi')).toBe('40 % down');
  expect(outcome(answersOn(released), 'compression-dry', '62 psi')).toBe('normal for the type');
  expect(outcome(answersOn(without), 'compression-dry', '4.3 bar')).toBe('40 % down');
  expect(outcome(answersOn(overhead), 'compression-dry', '62 psi')).toBeUndefined();
  expect(valueAsked(answersOn(overhead), check('compression-dry'))).toEqual({
    unit: 'psi',
    kind: 'pressure',
  });
});

test('pulls, percent and gaps are read as well; a check that ends in no number takes none', () => {
  const a = answersOn(without);
  expect(outcome(a, 'hot-restart', '5 pulls')).toBe('several pulls');
  expect(outcome(a, 'leak-down', '46 %')).toBe('high');
  expect(outcome(a, 'coil-gap', '0.010 in')).toBe('in range');
  expect(valueAsked(a, check('hot-restart'))).toEqual({ unit: 'pulls' });
  expect(valueAsked(a, check('plug-tip'))).toBeUndefined();
});

/** A governed engine whose maker's sheet gives 2900 to 3100 rpm as top speed. */
const withTopSpeed = (use: 'mower' | 'generator') =>
  answersOn({ ...overhead, governor: 'flyweight', use }, (add) =>
    add('spec', {
      spec: 'governed-top-speed',
      label: 'Top speed',
      line: 'top speed 2900 to 3100 rpm',
      value: written('2900 rpm', 'rotation'),
      upTo: written('3100 rpm', 'rotation'),
      origin: { from: "maker's sheet", detail: 'page 4' },
    }),
  );

test('the limit of the maker’s sheet decides before the scale of the trade', () => {
  const a = withTopSpeed('mower');
  expect(outcome(a, 'governed-speed', '3000 rpm')).toBe('in spec');
  expect(outcome(a, 'governed-speed', '3600 rpm')).toBe('high');
  expect(outcome(a, 'governed-speed', '2500 rpm')).toBe('low');
});

test('what a number is looked for near is the maker’s limit before the scale of the trade, in the unit that is asked', () => {
  const sheet = withTopSpeed('generator');
  const rpm = { unit: 'rpm', kind: 'rotation' } as const;
  expect(lookedFor(sheet, check('governed-speed'), rpm)!.near).toBeCloseTo(3000, 6);
  // without a sheet a generator at no load holds 58 to 63 Hz at two poles, 3480 to 3780 rpm
  const trade = answersOn({ ...overhead, governor: 'flyweight', use: 'generator' });
  expect(lookedFor(trade, check('governed-speed'), rpm)).toEqual({ near: 3630, low: 0, high: 20_000 });
  const a = answersOn(without);
  expect(lookedFor(a, check('compression-dry'), { unit: 'psi', kind: 'pressure' })).toMatchObject({
    ...{ near: 100, low: 0 },
  });
  const inches = lookedFor(a, check('coil-gap'), { unit: 'in', kind: 'length' })!;
  expect(inches.near).toBeCloseTo(0.3 / 25.4, 6);
  expect(inches.high).toBeCloseTo(5 / 25.4, 6);
  // what scale holds is not known before the release is
  expect(
    lookedFor(answersOn(overhead), check('compression-dry'), { unit: 'psi', kind: 'pressure' }),
  ).toBeUndefined();
});

test('a number typed before the release was known gets its meaning when it is', () => {
  const gauge = (add: Add) =>
    add('observation', { check: 'compression-dry', title: 'Compression', outcomes: [], value: '62 psi' });
  const valve = (more: (add: Add) => void) => {
    const said = answersOn({ ...overhead, complaints: ['cranks-never-fires'] }, (add) => {
      gauge(add);
      more(add);
    }).findings;
    if (said.state !== 'answered') throw new Error(said.words);
    return said.findings.faults.find((f) => f.id === 'valve-not-sealing')!.posterior;
  };
  const open = valve(() => undefined);
  const plain = valve((add) => add('intake', { variants: { 'automatic-release': false } }));
  const lifted = valve((add) => add('intake', { variants: { 'automatic-release': true } }));
  expect(plain).toBeGreaterThan(open);
  expect(lifted).toBeLessThan(plain);
});

test('evidence, log and record say the number with what it stands for', () => {
  const a = answersOn(without, (add) =>
    add('observation', { check: 'leak-down', title: 'Leak-down', outcomes: ['high'], value: '46 %' }),
  );
  expect(a.evidence[0]!.value).toBe('46 %, high');
  expect(seenWords(a.sights[0]!)).toBe('46 %, high');
});

test.each([
  ['compression-dry', '1000 psi', 'cannot be meant: here stands 0 to 300 psi'],
  ['compression-dry', '-5 psi', 'cannot be meant'],
  ['leak-down', '120 %', 'here stands 0 to 100 %'],
  ['coil-gap', '9 in', 'here stands 0 to 0.197 in'],
  ['hot-restart', '0 pulls', 'here stands 1 to 100 pulls'],
  ['compression-dry', 'good', 'is no number in psi'],
])('%s refuses %s and says the bound', (id, value, words) => {
  const body = { check: id, title: id, outcomes: [], value };
  expect(() => readBody('observation', body, { facts: without, catalog })).toThrow(EntryError);
  expect(() => readBody('observation', body, { facts: without, catalog })).toThrow(words);
});

test('a gauge a third under what is sound puts the valve first among what leaks, and leak-down settles it', () => {
  const after = (more: (add: Add) => void) => {
    const said = answersOn({ ...without, complaints: ['no-power'] }, more).findings;
    if (said.state !== 'answered') throw new Error(said.words);
    return said.findings.faults;
  };
  const leaks = [
    'valve-not-sealing',
    'rings-and-bore-worn',
    'head-gasket-blown',
    'rings-stuck',
    'bore-scored',
  ];
  const low = (add: Add) =>
    add('observation', { check: 'compression-dry', title: 'Compression', outcomes: [], value: '65 psi' });
  const [sound, third] = [
    after((add) =>
      add('observation', { check: 'compression-dry', title: 'Compression', outcomes: [], value: '100 psi' }),
    ),
    after(low),
  ];
  const odds = (of: typeof sound) => {
    const p = of.find((f) => f.id === 'valve-not-sealing')!.posterior;
    return p / (1 - p);
  };
  expect(odds(third) / odds(sound)).toBeGreaterThan(20);
  expect(third.filter((f) => leaks.includes(f.id))[0]!.id).toBe('valve-not-sealing');
  const heard = after((add) => {
    low(add);
    add('observation', { check: 'leak-down-listen', title: 'Leak-down', outcomes: ['exhaust'] });
  });
  expect(heard.find((f) => f.id === 'valve-not-sealing')!.posterior).toBeGreaterThan(0.9);
});
