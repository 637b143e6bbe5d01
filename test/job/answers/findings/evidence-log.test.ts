import { describe, expect, test } from 'vitest';
import { builtInCatalog, byId } from '../../../../src/catalog/index.js';
import { type EvidenceLine, fold, timesWords } from '../../../../src/job/index.js';
import { door } from '../../door.js';
import { jobId, log } from '../../entries.js';

const catalog = builtInCatalog();
type Log = ReturnType<typeof log>;

function jobWith(more: (add: Log['add']) => void, intake: Record<string, unknown> = {}) {
  const { add, lines } = log();
  add('open', { tag: 4, title: 'Mower' });
  add('intake', { architecture: 'side-valve', complaints: ['cranks-never-fires'], ...intake });
  more(add);
  return fold(jobId, lines);
}
const look = (add: Log['add'], check: string, outcome: string, doubtful?: boolean) =>
  add('observation', {
    check,
    title: byId(catalog.checks).get(check)?.title ?? check,
    outcomes: [outcome],
    ...(doubtful && { doubtful }),
  });
const decide = (add: Log['add'], which: string, choice: string) =>
  add('decision', { about: 'fault', which, title: which, choice, reason: '' });

function lines(...args: Parameters<typeof jobWith>): EvidenceLine[] {
  const { findings, evidence } = door(jobWith(...args));
  if (findings.state !== 'answered') throw new Error(findings.words);
  return evidence;
}

describe('the evidence log', () => {
  test('tells the latest line first, each with the faults that it weighs on, the heaviest first', () => {
    const [returns, none] = lines((add) => {
      look(add, 'spark-across-gap', 'none');
      look(add, 'spark-stop-wire-off', 'spark returns');
    });
    expect(returns!.check).toBe('spark-stop-wire-off');
    expect(none!.value).toBe('none');
    const onWire = returns!.says.find((s) => s.id === 'stop-wire-grounded');
    expect(onWire!.times).toBeGreaterThan(1);
    expect(returns!.says.find((s) => s.id === 'coil-dead')!.times).toBeLessThan(1);
    for (const { says } of [returns!, none!]) {
      const weights = says.map((s) => Math.abs(Math.log(s.times)));
      expect(weights).toEqual([...weights].sort((a, b) => b - a));
    }
  });

  test('a reading from before a repair says so, and one after it does not', () => {
    const [after, decided, before] = lines((add) => {
      look(add, 'air-cleaner-look', 'blocked');
      decide(add, 'air-cleaner-choked', 'repaired');
      look(add, 'air-cleaner-look', 'clean');
    });
    expect(after!.repairedSince).toEqual([]);
    expect(decided).toMatchObject({ decided: true, says: [] });
    expect(before!.repairedSince).toEqual([byId(catalog.faults).get('air-cleaner-choked')!.name]);
  });

  test('a reading that an automatic release makes usual says so, where it is fitted or not known', () => {
    const usual = (variants?: Record<string, boolean>) =>
      lines((add) => look(add, 'compression-dry', '40 % down'), variants && { variants })[0]!.usual;
    expect(usual({ 'automatic-release': true })).toMatch(/^Says little here/);
    expect(usual()).toMatch(/^May say little/);
    expect(usual({ 'automatic-release': false })).toBeUndefined();
  });

  test('what the catalog does not know is kept, and says that it moves nothing', () => {
    const [own] = lines((add) =>
      add('observation', { title: 'A nest', outcomes: ['in the fins'], words: 'dry' }),
    );
    expect(own).toMatchObject({ title: 'A nest', value: 'in the fins', detail: 'dry', says: [] });
    expect(own!.silent).toContain('moves nothing');
  });
});

test('weights are said as times and parts of the odds', () => {
  expect([4, 12.4, 1, 0.25, 1e6, 1e-6].map(timesWords)).toEqual([
    '× 4',
    '× 12',
    '× 1',
    '÷ 4',
    'all but settles it',
    'all but rules it out',
  ]);
});

describe('what the last line changed', () => {
  test('is the difference that leaving it out makes, whoever opens the page', () => {
    const job = jobWith((add) => look(add, 'spark-across-gap', 'none'));
    const move = door(job).lastMove!;
    expect(move.line).toMatch(/: none$/);
    const coil = move.faults.find((f) => f.id === 'coil-dead')!;
    expect(coil.to).toBeGreaterThan(coil.from);
    expect(coil.why).toBe('shows itself so');
    expect(door(job).lastMove).toEqual(move);
  });

  test('a differential check that comes right accuses what was out of the way, and the others fall with a reason', () => {
    const move = door(
      jobWith((add) => {
        look(add, 'spark-across-gap', 'none');
        look(add, 'spark-stop-wire-off', 'spark returns');
      }),
    ).lastMove!;
    const of = (id: string) => move.faults.find((f) => f.id === id)!;
    expect(of('stop-wire-grounded')).toMatchObject({ why: 'right again without it' });
    expect(of('coil-dead').to).toBeLessThan(of('coil-dead').from);
    expect(of('coil-dead').why).not.toBe('');
  });

  test('striking a line moves back what it had moved', () => {
    const job = jobWith((add) => {
      const line = look(add, 'spark-across-gap', 'none');
      add('strike', { entry: line.id, reason: 'other engine' });
    });
    const move = door(job).lastMove!;
    expect(move.line).toMatch(/^struck: .*: none$/);
    const coil = move.faults.find((f) => f.id === 'coil-dead')!;
    expect(coil.to).toBeLessThan(coil.from);
  });

  test('a line that says nothing of the machine changes nothing', () => {
    const seen = (add: Log['add']) => look(add, 'spark-across-gap', 'none');
    const noted = jobWith((add) => {
      seen(add);
      add('note', { words: 'rained all day' });
    });
    expect(door(noted).lastMove).toEqual(door(jobWith(seen)).lastMove);
  });
});
