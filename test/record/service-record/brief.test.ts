import { describe, expect, test } from 'vitest';
import type { Job } from '../../../src/job/index.js';
import { type Block, recordContent, type Section } from '../../../src/record/index.js';
import { balanced } from '../../../src/record/pdf/balance.js';
import { briefTitle } from '../../../src/record/service-record/words.js';
import { door } from '../../job/door.js';
import { Log, length, torque, w } from '../log.js';
import { ordinaryJob, ordinaryShop } from '../ordinary-job.js';

const shop = ordinaryShop();
const brief = (job: Job) =>
  recordContent(door(job, { shop }), { detail: 'brief', printedAt: '2025-11-05T16:20:00-05:00' });
const logged = (write: (log: Log) => void) => {
  const log = new Log();
  log.add('open', { tag: 6, title: 'Washer' });
  write(log);
  return brief(log.fold());
};
const plain = (value: unknown) => JSON.stringify(value).replaceAll('\u00a0', ' ');
const blocks = (sections: readonly Section[], id: Section['id']) =>
  sections.find((s) => s.id === id)?.blocks ?? [];
const items = (sections: readonly Section[], id: Section['id']) =>
  blocks(sections, id).flatMap((b: Block) => (b.type === 'list' ? b.items : []));

describe('the brief form', () => {
  test('keeps what accuses a fault, with its conditions, and names what was sound', () => {
    const { sections } = logged((log) => {
      log.add('observation', {
        check: 'leak-down',
        title: 'Leak-down, shaft held at firing top',
        outcomes: ['high'],
        words: '46 %',
        conditions: 'cold',
      });
      log.add('observation', {
        check: 'leak-down',
        title: 'Leak-down again',
        outcomes: ['low'],
        conditions: 'after',
      });
      log.add('observation', {
        check: 'oil-level',
        title: 'Oil level as received',
        outcomes: ['right'],
        doubtful: true,
      });
      log.add('observation', { title: 'A check of our own', outcomes: ['low'], conditions: 'warm' });
    });
    expect(items(sections, 'findings')).toEqual([
      { lead: 'Leak-down:', words: 'high, “46 %”', origin: 'cold' },
      {
        lead: 'Oil level as received:',
        words: 'right',
        care: 'doubtful reading',
      },
      { lead: 'A check of our own:', words: 'low', origin: 'warm' },
      { lead: 'Sound since:', words: 'Leak-down again' },
    ]);
  });

  test('says the same thing at many places in one line, from least to most, with the worst verdict', () => {
    const limit = { max: length('2.6030 in'), origin: { from: "maker's sheet" as const, detail: 'page 18' } };
    const { sections } = logged((log) => {
      ['2.5999 in', '2.6040 in', '2.5990 in'].forEach((text, i) => {
        log.add('measurement', {
          measure: 'bore',
          title: 'Bore',
          value: length(text),
          place: `height ${i}`,
          limit,
          instrument: 'bore-gauge',
          phase: 'as-found',
        });
      });
    });
    const [table, notes] = blocks(sections, 'measurements');
    const [row, ...rest] = table?.type === 'table' ? table.rows : [];
    expect(rest).toEqual([]);
    expect(plain(row?.[1])).toBe(
      plain({
        text: '2.5990–2.6040 in',
        strong: true,
        sub: '',
        verdict: { sign: 'fail', word: 'over the limit' },
      }),
    );
    expect(row?.[0]).toEqual({ text: 'Bore', sub: '3 places' });
    expect(row?.[3]).toMatchObject({ sub: '(1)' });
    expect(plain(notes)).toContain('(1) maker’s sheet, page 18; Bore gauge, ± 0.0006 in.');
  });

  test('two places are still two lines', () => {
    const { sections } = logged((log) => {
      for (const place of ['top', 'bottom']) {
        log.add('measurement', {
          measure: 'bore',
          title: 'Bore',
          value: length('2.6 in'),
          place,
          phase: 'as-found',
        });
      }
    });
    const [table] = blocks(sections, 'measurements');
    expect(table?.type === 'table' && table.rows.map((row) => row[0]?.sub)).toEqual(['top', 'bottom']);
  });

  test('names every run-up item that is not in order and every reading, and counts the rest', () => {
    const { sections } = logged((log) => {
      log.add('run-up', { item: 'no-fuel-leak', title: 'No fuel leak, tap on', result: 'ok' });
      log.add('run-up', { item: 'acceleration-clean', title: 'Acceleration clean', result: 'ok' });
      log.add('run-up', {
        item: 'droop',
        title: 'Speed droop under load',
        result: 'reading',
        value: w('6 %', 'ratio'),
      });
      log.add('run-up', { item: 'no-run-on', title: 'No run-on', result: 'not-ok', words: 'Bangs once.' });
    });
    const told = items(sections, 'run-up');
    expect(plain(told.at(-1))).toMatch(
      /^{"lead":"Not looked at:","words":".* · \d+ other points of the run-up"}$/,
    );
    expect(plain(told.slice(0, -1))).toBe(
      plain([
        {
          lead: 'No run-on:',
          words: 'not in order · Bangs once.',
          verdict: { sign: 'fail', word: 'not in order' },
        },
        { lead: 'Measured:', words: 'Speed droop under load: 6 %' },
        {
          lead: 'In order, 2 checks, among them:',
          words: 'No fuel leak, tap on',
          verdict: { sign: 'pass', word: 'in order' },
        },
      ]),
    );
  });

  test('leaves out nothing that is open, unsafe, out of limits or about torque', async () => {
    const { job } = await ordinaryJob();
    const text = plain(brief(job));
    for (const words of [
      'Muffler guard left off against advice',
      'the new spring arrives, or the next oil change',
      'under the limit',
      'too close to call',
      '140 in-lb (15.8 N·m)',
      'maker’s sheet, page 31',
      'each clicked in every pass',
      'Ran fine when I parked it',
      'carbon monoxide',
      '77 lines, 1 struck',
      'This is the brief form',
    ]) {
      expect(text, words).toContain(words);
    }
    expect(text).not.toContain('85 psi');
  });

  test('two joints share a row, and one that failed says why', () => {
    const { sections } = logged((log) => {
      for (const name of ['Head', 'Cover']) {
        log.add('joint', {
          joint: name.toLowerCase(),
          name,
          holes: [{ xMm: 0, yMm: 0 }],
          target: torque('100 in-lb'),
          targetOrigin: { from: "maker's sheet" },
          passes: [1],
          finalRound: false,
          order: [1],
          orderOrigin: { from: 'computed' },
        });
      }
      log.add('torque', { joint: 'head', hole: 1, pass: 1, set: torque('100 in-lb'), result: 'stopped' });
    });
    const joints = blocks(sections, 'torques').flatMap((b) => (b.type === 'joint' ? [b] : []));
    expect(joints.map((joint) => joint.half)).toEqual([true, true]);
    expect(joints[0]?.facts.at(-1)).toEqual({
      label: 'Remarks',
      value: 'pass 1: 0 of 1; number 1 stopped in pass 1',
    });
    expect(joints[1]?.verdict.sign).toBe('cannot-decide');
  });
});

test('a long title is cut at its first explanation, a short one stays whole', () => {
  expect(briefTitle('Leak-down, shaft held at firing top')).toBe('Leak-down');
  expect(briefTitle('Muffler, tank and shroud')).toBe('Muffler, tank and shroud');
  expect(briefTitle('(a title that begins with a bracket and is long)')).toBe(
    '(a title that begins with a bracket and is long)',
  );
});

test('columns are balanced, and each keeps the order of its sections', () => {
  const section = (id: Section['id'], lines: number): Section => ({
    id,
    title: id,
    place: 'column',
    blocks: [{ type: 'list', items: Array.from({ length: lines }, () => ({ words: 'a line' })) }],
  });
  const sections = [
    section('machine', 4),
    section('complaint', 20),
    section('findings', 10),
    section('parts', 3),
    section('work', 2),
  ];
  const [left, right] = balanced(sections, 50);
  expect([left.map((s) => s.id), right.map((s) => s.id)]).toEqual([
    ['machine', 'findings', 'parts'],
    ['complaint', 'work'],
  ]);
});
