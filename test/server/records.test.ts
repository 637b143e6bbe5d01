import { createHash } from 'node:crypto';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { entry, jobA, openEntry, picture, startServer, type TestServer, uuid } from './support.js';

let server: TestServer;
beforeAll(async () => {
  server = await startServer();
});
afterAll(() => server.close());

const pdf = (job: string) => server.get(`/api/jobs/${job}/record.pdf`);

test('the record of an open job is a PDF, named by its tag', async () => {
  await server.store.append([openEntry(1, 12)]);
  const answer = await pdf(jobA);
  expect(answer.status).toBe(200);
  expect(answer.headers.get('content-type')).toBe('application/pdf');
  expect(answer.headers.get('content-disposition')).toBe('inline; filename="service-record-tag-12.pdf"');
  expect(new TextDecoder('latin1').decode(answer.bytes.slice(0, 5))).toBe('%PDF-');
});

test('a photograph of any kind that the store takes is printed, a WebP too', async () => {
  const without = (await pdf(jobA)).bytes.length;
  for (const [n, format] of (['jpeg', 'png', 'webp'] as const).entries()) {
    const bytes = await picture(format, { seed: n + 1 });
    const sha256 = createHash('sha256').update(bytes).digest('hex');
    const { json } = await server.send('PUT', `/api/pictures/${sha256}`, bytes);
    const photograph = { picture: json, caption: `As ${format}`, stage: 'intake', when: 'before' };
    await server.store.append([entry(10 + n, 'photograph', photograph)]);
    const record = await pdf(jobA);
    expect(record.status, server.logged.join()).toBe(200);
    const shown = record.bytes.length;
    // noise of 640 x 480 compresses badly: each picture adds far more than its caption does
    expect(shown - without).toBeGreaterThan((n + 1) * 50_000);
  }
});

test('the same job printed at the same time is the same file', async () => {
  expect(Buffer.compare((await pdf(jobA)).bytes, (await pdf(jobA)).bytes)).toBe(0);
});

test('a job that does not exist has no record', async () => {
  const answer = await pdf(uuid(99));
  expect(answer.status).toBe(404);
  expect(answer.json.error.code).toBe('not-found');
});
