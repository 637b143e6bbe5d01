import { afterAll, beforeAll, expect, test } from 'vitest';
import { entry, jobA, jobB, note, openEntry, startServer, type TestServer, uuid } from './support.js';

let server: TestServer;
beforeAll(async () => {
  server = await startServer();
});
afterAll(() => server.close());

const find = async (words: string) => {
  const { found } = (await server.get(`/api/find?words=${encodeURIComponent(words)}`)).json;
  return found as { summary: { id: string }; places: { entry: string; stage: string; title: string }[] }[];
};
const jobs = async (words: string) => (await find(words)).map(({ summary }) => summary.id);

test('a job is found by any of its lines, and each says where it stands', async () => {
  await server.store.append([
    openEntry(1, 12),
    entry(2, 'intake', { machine: 'Pump', owner: 'O. Finch', complaint: 'Smokes.' }),
    note(3, 'Circlip rolled under the lathe'),
    openEntry(4, 13, jobB),
    entry(5, 'intake', { machine: 'Mower', owner: 'P. Finchley' }, jobB),
  ]);
  expect(await jobs('circ')).toEqual([jobA]);
  expect((await find('circlip'))[0]!.places).toEqual([
    expect.objectContaining({ entry: uuid(1003), title: 'Circlip rolled under the lathe' }),
  ]);
  expect(await jobs('finch')).toEqual([jobA, jobB]); // the whole word comes before its beginning
  expect(await jobs('finch mower')).toEqual([jobB]);
  expect(await jobs('#13')).toEqual([jobB]);
  expect(await jobs('')).toEqual([]);
  expect(await jobs('gearbox')).toEqual([]);
});

test('what was just written is found, and what was struck is not', async () => {
  await server.post('/api/entries', { entries: [note(6, 'Woodruff key sheared')] });
  expect(await jobs('woodruff')).toEqual([jobA]);
  const strike = entry(7, 'strike', { entry: uuid(1006), reason: 'another machine' });
  await server.post('/api/entries', { entries: [strike] });
  expect(await jobs('woodruff')).toEqual([]);
});

test.each(['"', "'", '*', 'a" OR "b', "x') --", '(:*&|!<->)', '\\', '%', '\u0000', '🔧', 'pump -smokes'])(
  'signs that a database reads otherwise are only signs: %j',
  async (words) => {
    const answer = await server.get(`/api/find?words=${encodeURIComponent(words)}`);
    expect(answer.status).toBe(200);
  },
);

test('more than anybody types is refused', async () => {
  const answer = await server.get(`/api/find?words=${'x'.repeat(201)}`);
  expect(answer.status).toBe(422);
  expect(answer.json.error.field).toBe('words');
});
