import { afterAll, beforeAll, expect, test } from 'vitest';
import { fold } from '../../src/job/index.js';
import { entry, jobA, note, openEntry, startServer, type TestServer, uuid } from './support.js';

let server: TestServer;
beforeAll(async () => {
  server = await startServer();
  await server.post('/api/entries', { entries: [openEntry(1, 12)] });
});
afterAll(() => server.close());

const write = (...entries: unknown[]) => server.post('/api/entries', { entries });
const stored = async () => (await server.get(`/api/jobs/${jobA}/entries`)).json.entries;

test('an entry dated ten years ahead does not win over a later correction, and keeps what it says', async () => {
  const ahead = { ...entry(2, 'intake', { machine: 'saw' }), at: '2036-03-01T08:00:00Z' };
  expect((await write(ahead)).status).toBe(200);
  expect((await write(entry(3, 'note', { words: 'between' }))).status).toBe(200);
  const right = { ...entry(4, 'intake', { machine: 'pump' }), at: '2026-03-02T09:00:01Z' };
  expect((await write(right)).status).toBe(200);
  expect(fold(jobA, await stored()).intake.machine).toBe('pump');
  expect((await stored())[1].at).toBe('2036-03-01T08:00:00Z');
  expect((await write(ahead)).json).toMatchObject({ already: [ahead.id] }); // sent again it is the same line
});

test('lines of one sending that are dated ahead keep their order', async () => {
  const at = (minute: number) => `2040-01-01T00:0${minute}:00Z`;
  const lines = [5, 6, 7].map((n) => ({ ...note(n, String(n)), at: at(n) }));
  expect((await write(...lines)).status).toBe(200);
  const { notes } = fold(jobA, await stored());
  expect(notes.map(({ words }) => words).filter((words) => /^\d$/.test(words))).toEqual(['5', '6', '7']);
});

test('a page that sends again while its first sending is under way, and the bench’s clock is set back meanwhile, keeps its order', async () => {
  let nowMs = Date.UTC(2026, 2, 2, 9);
  const gate = held();
  const slow = await startServer({ clock: () => new Date(nowMs) });
  const { append } = slow.store;
  try {
    await slow.post('/api/entries', { entries: [openEntry(50, 12)] });
    const [first, second] = [51, 52].map((n) => ({ ...note(n, String(n)), at: `2040-01-01T00:${n}:00Z` }));
    slow.store.append = async (lines) => {
      gate.reached();
      await gate.opened;
      return append(lines);
    };
    const begun = slow.post('/api/entries', { entries: [first] });
    await gate.isReached;
    nowMs -= 5000;
    const again = slow.post('/api/entries', { entries: [first, second] });
    await Promise.race([again, new Promise((later) => setTimeout(later, 200))]); // as far as it comes by itself
    gate.open();
    expect((await Promise.all([begun, again])).map(({ status }) => status)).toEqual([200, 200]);
    const { entries } = (await slow.get(`/api/jobs/${jobA}/entries`)).json;
    expect(fold(jobA, entries).notes.map(({ words }) => words)).toEqual(['51', '52']);
  } finally {
    gate.open();
    await slow.close();
  }
});

function held() {
  let open!: () => void;
  let reached!: () => void;
  const opened = new Promise<void>((resolve) => (open = resolve));
  const isReached = new Promise<void>((resolve) => (reached = resolve));
  return { open, opened, reached, isReached };
}

test('the same id in capitals is the same entry, and a job id in capitals is that job', async () => {
  const line = note(20, 'once');
  await write(line);
  const again = { ...line, id: line.id.toUpperCase(), job: jobA.toUpperCase() };
  expect((await write(again)).json).toMatchObject({ stored: [], already: [line.id] });
  const other = { ...note(21, 'in capitals'), job: jobA.toUpperCase() };
  expect((await write(other)).status).toBe(200);
  expect((await stored()).at(-1)).toMatchObject({ job: jobA, id: other.id });
});

test('a line that strikes itself is refused', async () => {
  const answer = await write(entry(30, 'strike', { entry: uuid(1030), reason: '' }));
  expect([answer.status, answer.json.error.field]).toEqual([422, 'entries.0.body.entry']);
});

test('a rank goes out with the job and comes in with it', async () => {
  await write({ ...note(40, 'stands later'), rank: 4_000_000_000_000 });
  const bundle = await server.get(`/api/jobs/${jobA}/bundle.zip`);
  const other = await startServer();
  try {
    const taken = await other.send('POST', '/api/bundles', bundle.bytes);
    expect(taken.status).toBe(200);
    const { entries } = (await other.get(`/api/jobs/${jobA}/entries`)).json;
    expect(fold(jobA, entries)).toMatchObject({ notes: fold(jobA, await stored()).notes });
    expect(entries.at(-1)).toMatchObject({ rank: 4_000_000_000_000 });
  } finally {
    await other.close();
  }
});

test('every answer of the API says what time it is at the bench', async () => {
  for (const path of ['/api/health', '/api/nothing'])
    expect((await server.get(path)).headers.get('wristpin-clock')).toBe('2026-03-02T09:00:00.000Z');
});
