import 'fake-indexeddb/auto';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { builtInCatalog } from '../../../src/catalog/index.js';
import { type RawEntry, written } from '../../../src/job/index.js';
import { stateWords } from '../../../src/web/data/outbox/words.js';
import {
  browserWindow,
  fakeShop,
  freshStorage,
  leavePages,
  openPage,
  type Shop,
  says,
  until,
} from './fake-shop.js';

const job = '0198c0de-0000-7000-8000-000000000001';
const other = '0198c0de-0000-7000-8000-000000000002';
const note = (text: string) => ({ kind: 'note' as const, body: { stage: 'intake' as const, words: text } });
const textOf = (entry: RawEntry) => (entry.body as { words: string }).words;

let shop: Shop;
let page: EventTarget;
beforeEach(() => {
  vi.stubGlobal('indexedDB', freshStorage());
  page = browserWindow();
  vi.stubGlobal('window', page);
  shop = fakeShop();
});
afterEach(() => {
  leavePages();
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

/** Until the lines that wait on the device are these. */
const waiting = (box: Awaited<ReturnType<typeof openPage>>, texts: readonly string[]) =>
  until(() => expect(box.outboxNow().waiting.map(textOf)).toEqual(texts));

describe('a line', () => {
  test('is on the device before the store is asked, and leaves it only after the store’s word', async () => {
    const box = await openPage();
    let waitingWhenAsked: string[] = [];
    shop.answer = () => {
      waitingWhenAsked = box.outboxNow().waiting.map(textOf);
      return undefined;
    };
    await box.write(job, 'note', note('one').body);
    await waiting(box, []);
    expect(waitingWhenAsked).toEqual(['one']);
    expect(shop.kept.map(textOf)).toEqual(['one']);
    expect(box.outboxNow().reach).toBe('reached');
  });

  test('is not called saved from the touch on, before this device has it', async () => {
    const box = await openPage();
    await box.startOutbox();
    await box.write(job, 'note', note('one').body);
    await until(() => expect(stateWords(box.outboxNow()).words).toBe('all saved'));
    const kept = box.write(job, 'note', note('two').body);
    expect(stateWords(box.outboxNow()).words).toBe('keeping …');
    await kept;
    expect(stateWords(box.outboxNow()).words).toBe('1 waiting to send');
    await until(() => expect(stateWords(box.outboxNow()).words).toBe('all saved'));
  });

  test('written while the store is away outlives the page, and is sent by the next one', async () => {
    shop.answer = () => 'away';
    const first = await openPage();
    await first.write(job, 'note', note('one').body);
    await until(() => expect(first.outboxNow().reach).toBe('no answer'));

    shop.answer = () => undefined;
    const next = await openPage();
    await next.startOutbox();
    await waiting(next, []);
    expect(shop.kept.map(textOf)).toEqual(['one']);
  });

  test('is not called saved before this device has read what an earlier visit left on it', async () => {
    shop.answer = () => 'away';
    const first = await openPage();
    await first.write(job, 'note', note('one').body);
    await until(() => expect(first.outboxNow().reach).toBe('no answer'));

    const next = await openPage();
    const { api } = await import('../../../src/web/data/api.js');
    shop.answer = () => undefined;
    const started = next.startOutbox();
    await api.health(); // answers before the device's storage does
    expect(next.outboxNow()).toMatchObject({ reach: 'reached', waiting: [] });
    expect(stateWords(next.outboxNow()).words).toBe('looking at what waits here …');
    await started;
    await waiting(next, []);
    expect(shop.kept.map(textOf)).toEqual(['one']);
  });

  test('that waits is sent when the network comes back', async () => {
    shop.answer = () => 'away';
    const box = await openPage();
    await box.startOutbox();
    await box.write(job, 'note', note('one').body);
    await until(() => expect(box.outboxNow().reach).toBe('no answer'));
    shop.answer = () => undefined;
    page.dispatchEvent(new Event('online'));
    await waiting(box, []);
    expect(box.outboxNow().reach).toBe('reached');
  });

  test('that the log would not take is refused before anything is kept or sent', async () => {
    const box = await openPage();
    await expect(box.write(job, 'note', { words: 7 } as never)).rejects.toThrow();
    expect(box.outboxNow().waiting).toEqual([]);
    expect(shop.asked).toEqual([]);
  });

  test('that this engine cannot have said is refused before anything is kept or sent', async () => {
    const box = await openPage();
    const { knowJob } = await import('../../../src/web/data/known-jobs.js');
    const value = written('0.006 in', 'length');
    const body = { measure: 'valve-clearance-side-valve', title: 'Clearance', value, place: 'exhaust' };
    knowJob(job, { facts: { architecture: 'two-stroke' }, catalog: builtInCatalog() });
    await expect(box.write(job, 'measurement', body)).rejects.toThrow(
      /^body\.measure: this engine has no valves of that kind/,
    );
    expect(box.outboxNow().waiting).toEqual([]);
    expect(shop.asked).toEqual([]);
    // another job's engine says nothing of this one
    await box.write(other, 'measurement', body);
    await until(() => expect(shop.kept).toHaveLength(1));
  });

  test('has an id, a time with its offset and the name of who writes on this device', async () => {
    const box = await openPage();
    const entry = await box.write(job, 'note', note('one').body);
    expect(entry).toMatchObject({ job, kind: 'note', by: 'bench' });
    expect(entry.id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-7/);
    expect(entry.at).toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d.*([+-]\d\d:\d\d|Z)$/);
    await waiting(box, []);
  });
});

describe('lines written together', () => {
  test('go to the store in one request, in their order', async () => {
    const box = await openPage();
    await box.writeAll(job, [note('one'), note('two'), note('three')]);
    await waiting(box, []);
    expect(shop.asked).toEqual(['POST /api/entries']);
    expect(shop.kept.map(textOf)).toEqual(['one', 'two', 'three']);
  });

  test('of two jobs go in a request each', async () => {
    shop.answer = () => 'away';
    const box = await openPage();
    await box.write(job, 'note', note('one').body);
    await box.write(other, 'note', note('two').body);
    await until(() => expect(box.outboxNow().reach).toBe('no answer'));
    shop.asked.length = 0;
    shop.answer = () => undefined;
    await box.write(job, 'note', note('three').body);
    await waiting(box, []);
    expect(shop.kept.filter((e) => e.job === job).map(textOf)).toEqual(['one', 'three']);
    expect(shop.asked).toHaveLength(2);
  });

  test('of which the store refuses one: that one stays behind with its reason, the others are saved', async () => {
    shop.answer = (_, lines) =>
      lines.some((line) => textOf(line) === 'bad') ? says(400, 'a note says something else') : undefined;
    const box = await openPage();
    await box.writeAll(job, [note('one'), note('bad'), note('three')]);
    await waiting(box, []);
    expect(shop.kept.map(textOf)).toEqual(['one', 'three']);
    expect(box.outboxNow().refused).toMatchObject([{ reason: 'a note says something else' }]);
    expect(box.outboxNow().refused.map(({ entry }) => textOf(entry!))).toEqual(['bad']);
  });

  test('that a broken server refuses are not taken for bad: they wait', async () => {
    shop.answer = () => says(503, 'out of order');
    const box = await openPage();
    await box.writeAll(job, [note('one'), note('two')]);
    // one that answers "out of order" is not one that is away: the header says which of them it is, and why
    await until(() => expect(box.outboxNow()).toMatchObject({ reach: 'out of order', said: 'out of order' }));
    expect(box.outboxNow().waiting.map(textOf)).toEqual(['one', 'two']);
    expect(box.outboxNow().refused).toEqual([]);
  });
});

describe('a refused line', () => {
  test('is still there with its reason when the page is opened again, and is sent no more', async () => {
    shop.answer = () => says(400, 'no');
    const first = await openPage();
    await first.write(job, 'note', note('bad').body);
    await until(() => expect(first.outboxNow().refused).toHaveLength(1));

    shop.asked.length = 0;
    const next = await openPage();
    await next.startOutbox();
    expect(next.outboxNow().refused.map(({ entry, reason }) => [textOf(entry!), reason])).toEqual([
      ['bad', 'no'],
    ]);
    expect(shop.asked).toEqual([]);
  });

  test('that is taken back is gone for good', async () => {
    shop.answer = () => says(400, 'no');
    const first = await openPage();
    await first.write(job, 'note', note('bad').body);
    await until(() => expect(first.outboxNow().refused).toHaveLength(1));
    await first.dropRefused(first.outboxNow().refused[0]!);
    expect(first.outboxNow().refused).toEqual([]);

    const next = await openPage();
    await next.startOutbox();
    expect(next.outboxNow().refused).toEqual([]);
  });
});

test('a device that the shop shut out keeps its lines and says so', async () => {
  shop.answer = () => says(401, 'not paired');
  const box = await openPage();
  await box.write(job, 'note', note('one').body);
  await until(() => expect(box.outboxNow().reach).toBe('not paired'));
  expect(box.outboxNow().waiting.map(textOf)).toEqual(['one']);
});

test('who listens hears of acknowledged lines before the outbox lets them go', async () => {
  const box = await openPage();
  const heard: { saved: string[]; stillWaiting: string[] }[] = [];
  box.whenSaved((saved) =>
    heard.push({ saved: saved.map(textOf), stillWaiting: box.outboxNow().waiting.map(textOf) }),
  );
  await box.write(job, 'note', note('one').body);
  await waiting(box, []);
  expect(heard).toEqual([{ saved: ['one'], stillWaiting: ['one'] }]);
});
