import { afterAll, beforeAll, expect, test } from 'vitest';
import { packaged } from '../../src/shopkeep/index.js';
import { startServer, type TestServer } from './support.js';

/** The papers of the invented pump: tag 17. */
let server: TestServer;
let job: string;
beforeAll(async () => {
  server = await startServer({ demo: packaged().demo });
  await server.send('POST', '/api/demo');
  const { json } = await server.get('/api/jobs');
  job = json.jobs.find((j: { summary: { tag: number } }) => j.summary.tag === 17).id;
});
afterAll(() => server.close());

const get = (path: string) => server.get(`/api/jobs/${job}/${path}`);
const textOf = (bytes: Uint8Array) => new TextDecoder().decode(bytes);

test('bag labels are a PDF named after the tag', async () => {
  const labels = await get('bag-labels.pdf');
  expect(labels.status).toBe(200);
  expect(textOf(labels.bytes.subarray(0, 5))).toBe('%PDF-');
  expect(labels.headers.get('content-disposition')).toContain('bag-labels-tag-17.pdf');
});

test.each([
  ['part-labels.pdf?paper=a4', 200],
  ['bag-labels.pdf?paper=roll&width=62&length=29', 200],
  ['bag-labels.pdf?paper=roll&width=62', 422],
  ['bag-labels.pdf?paper=roll&width=2&length=29', 422],
  ['bag-labels.pdf?paper=b5', 404],
  ['chapters.vtt?from=2026-03-16T00:00:00Z', 200],
  ['chapters.vtt?from=noon', 422],
  ['chapters.vtt', 422],
])('%s is answered with %i', async (path, status) => {
  const answer = await get(path);
  expect(answer.status).toBe(status);
  if (status !== 200) expect(answer.json.error.message).toMatch(/mm|roll|no time/);
});

// Letter by ANSI/ASME Y14.1 (8.5 × 11 in), A4 by ISO 216 (210 × 297 mm), in points of 1/72 in
test.each([
  ['letter', 612, 792],
  ['a4', 595.28, 841.89],
])('the mat comes for a printer on %s', async (paper, wide, high) => {
  const mat = await server.get(`/api/mat/${paper}.pdf`);
  expect(mat.status).toBe(200);
  const box = /MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(textOf(mat.bytes));
  expect(Math.abs(Number(box?.[1]) - wide)).toBeLessThan(0.5);
  expect(Math.abs(Number(box?.[2]) - high)).toBeLessThan(0.5);
});

test('a mat on a paper that there is none on says which there are', async () => {
  const { status, json } = await server.get('/api/mat/b5.pdf');
  expect(status).toBe(404);
  expect(json.error.message).toContain('letter and a4');
});

test('the calendar holds an event for each dated due item', async () => {
  const calendar = await get('calendar.ics');
  expect(calendar.headers.get('content-type')).toContain('text/calendar');
  expect(textOf(calendar.bytes).match(/BEGIN:VEVENT/g)?.length).toBeGreaterThanOrEqual(3);
});

test('each table has a row for each entry that stands', async () => {
  const { json } = await server.get(`/api/jobs/${job}/entries`);
  const struck = new Set(
    json.entries
      .filter((e: { kind: string }) => e.kind === 'strike')
      .map((e: { body: { entry: string } }) => e.body.entry),
  );
  const standing = json.entries.filter(
    (e: { kind: string; id: string }) => e.kind === 'measurement' && !struck.has(e.id),
  );
  const table = await get('tables/measurements.csv');
  expect(textOf(table.bytes).trim().split('\r\n')).toHaveLength(standing.length + 1);
});

test('the chapters of a film are WebVTT', async () => {
  expect(textOf((await get('films/1/chapters.vtt')).bytes)).toMatch(/^WEBVTT/);
});

test.each(['tables/everything.csv', 'films/99/chapters.vtt', 'bag-labels.doc'])(
  'there is no %s, and it says so',
  async (path) => {
    const answer = await get(path);
    expect(answer.status).toBe(404);
    expect(answer.json.error.message).toMatch(/\w+ \w+/);
  },
);

test('a job that does not exist has no papers', async () => {
  const other = await server.get('/api/jobs/01900000-0000-7000-8000-00000000dead/calendar.ics');
  expect(other.status).toBe(404);
});
