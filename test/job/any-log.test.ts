import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { builtInCatalog } from '../../src/catalog/index.js';
import { bodies, type EntryKind } from '../../src/job/entry.js';
import {
  type Answers,
  answersFor,
  benchPlanOf,
  benchProblemOf,
  EntryError,
  fold,
  foldShop,
  lineWords,
  nothingTaught,
  type RawEntry,
  readEntry,
} from '../../src/job/index.js';
import { benchSchedule } from '../../src/plan/index.js';
import { calendar, chapters, labelsOf, recordContent, tables } from '../../src/record/index.js';
import { anyBody } from './any-body.js';
import { jobId } from './entries.js';

const catalog = builtInCatalog();
const now = '2026-11-25T09:40';
const shopKinds: ReadonlySet<EntryKind> = new Set([
  ...(['wrench', 'instrument', 'supplier', 'place', 'learning', 'setting'] as const),
]);
const jobKinds = (Object.keys(bodies) as EntryKind[]).filter((k) => !shopKinds.has(k) && k !== 'pack');

const line = (kinds: readonly EntryKind[]) =>
  fc
    .constantFrom(...kinds)
    .chain((kind) => fc.tuple(fc.constant(kind), anyBody(kind), fc.integer({ min: 0, max: 9000 })));

const id = (n: number) => `01900000-0000-7000-8000-1${String(n).padStart(11, '0')}`;

/** As a device would send it; what the log does not take is left out, and anything but a refusal is a failure. */
function taken([kind, body, minutes]: readonly [EntryKind, unknown, number], n: number): RawEntry[] {
  const aim = { ...(body as object), ...(kind === 'strike' && { entry: id(n - 1 - (minutes % 4)) }) };
  const at = new Date(Date.UTC(2026, 10, 20, 9, minutes)).toISOString();
  try {
    const sent = JSON.parse(
      JSON.stringify({ id: id(n), job: jobId, at, by: 'bench', kind, v: 1, body: aim }),
    );
    return [readEntry(sent)];
  } catch (error) {
    if (error instanceof EntryError) return [];
    throw error;
  }
}

const intake = fc.tuple(fc.constant<EntryKind>('intake'), anyBody('intake'), fc.constant(0));
const logs = fc
  .tuple(intake, fc.array(line(jobKinds), { minLength: 6, maxLength: 24 }))
  .map(([first, more]) => [first, ...more].flatMap(taken));
const shops = fc.array(line([...shopKinds]), { maxLength: 8 }).map((lines) => foldShop(lines.flatMap(taken)));

/** Members that infer or draw, asked of fewer logs for they take longer. */
const slow: ReadonlySet<string> = new Set([
  ...['machine', 'inference', 'findings', 'safetyFound', 'evidence', 'lastMove', 'worth', 'worthHistory'],
  ...['gateRules', 'gates', 'compression'],
]);

function askAll(answers: Answers, which: (member: string) => boolean): void {
  for (const member of Object.getOwnPropertyNames(answers))
    if (which(member)) void answers[member as keyof Answers];
  const { job } = answers;
  for (const l of job.log) expect(lineWords(l).title).not.toBe('');
  for (const handle of job.steps.keys()) answers.step(handle);
  for (const reading of job.measurements) answers.limitOf(reading);
  for (const cleaning of job.cleanings.values()) answers.cleaningRefused(cleaning);
  answers.teardownAt(`${now}:00.000Z`);
  answers.basketAsked({});
}

function papers(answers: Answers): void {
  const { job } = answers;
  for (const detail of ['full', 'brief'] as const)
    expect(recordContent(answers, { printedAt: '2026-11-25T16:20:00-05:00', detail }).sections).toBeDefined();
  expect(tables(job).parts).toContain('tag');
  expect(calendar(job, { now: `${now}:00Z` })).toContain('VCALENDAR');
  void [labelsOf(job, 'bag'), labelsOf(job, 'part'), chapters(job)];
}

function onTheBench(answers: Answers): void {
  const asked = benchProblemOf([answers], answers.shop, now);
  expect(benchPlanOf(asked, benchSchedule(asked.problem, { schedules: 5 })).says).not.toBe('');
}

/** Set it to run a longer campaign: so many times the logs of a usual run, from another seed. */
const times = Number(process.env.WRISTPIN_CAMPAIGN ?? 1);
const seed = times > 1 ? undefined : 20261128;
const of = (count: number) => ({ numRuns: count * times, ...(seed !== undefined && { seed }) });

describe('any log that the door takes', { timeout: 180_000 * times }, () => {
  const doors = fc
    .tuple(logs, shops)
    .map(([lines, shop]) => answersFor({ job: fold(jobId, lines), catalog, shop, jobs: nothingTaught }));

  test('gives every answer that takes no inference, every paper and a place on the bench', () => {
    fc.assert(
      fc.property(doors, (answers) => {
        askAll(answers, (member) => !slow.has(member));
        papers(answers);
        onTheBench(answers);
      }),
      of(600),
    );
  });

  test('gives every finding, its worth and its gates', () => {
    fc.assert(
      fc.property(doors, (answers) => askAll(answers, () => true)),
      of(12),
    );
  });

  test('holds lines enough to say something', () => {
    const counts = fc.sample(logs, of(200)).map((lines) => lines.length);
    expect(counts.reduce((a, b) => a + b) / counts.length).toBeGreaterThan(6);
  });
});
