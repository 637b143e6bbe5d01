import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { desk } from '../../src/desk/index.js';
import { startServer, type TestServer } from './support.js';

let server: TestServer;
beforeAll(async () => {
  server = await startServer();
});
afterAll(() => server.close());

const ask = (id: string, body: unknown) => server.post(`/api/worksheets/${id}`, body);

test('every worksheet is described, with its fields, sources and examples', async () => {
  const { worksheets } = (await server.get('/api/worksheets')).json;
  expect(worksheets.map((w: { id: string }) => w.id)).toEqual(desk.map((w) => w.id));
  for (const each of worksheets) {
    expect(each).toMatchObject({ question: expect.any(String), fields: expect.any(Array) });
    expect(each.sources.length, each.id).toBeGreaterThan(0);
    expect(each.compute).toBeUndefined();
  }
});

test('15 ft-lb is 180 in-lb', async () => {
  const answer = await ask('convert', { given: { quantity: '15 ft-lb', unit: 'in-lb' } });
  expect(answer.status).toBe(200);
  const converted = answer.json.answers.find((each: { id: string }) => each.id === 'converted');
  expect(converted.value).toBeCloseTo(180, 9);
  expect(converted.unit).toBe('in-lb');
  expect(converted.origin.from).toBe('standard');
});

describe('what a worksheet cannot answer', () => {
  test.each([
    ['a field in words that are no quantity', { quantity: 'tight' }, 'quantity'],
    ['a field that is missing', {}, 'quantity'],
    ['a quantity of another kind than the unit', { quantity: '15 ft-lb', unit: 'mm' }, 'quantity'],
    ['a field that it does not have', { quantity: '1 in', bore: '2 in' }, 'bore'],
    ['a field named like something inherited', { quantity: '1 in', constructor: '2 in' }, 'constructor'],
  ])('%s is refused by name', async (_title, given, field) => {
    const answer = await ask('convert', { given });
    expect(answer.status).toBe(422);
    expect(answer.json.error).toMatchObject({ code: 'cannot-answer', field, message: expect.any(String) });
  });

  test('a number where the words of the bench are wanted', async () => {
    const answer = await ask('convert', { given: { quantity: 15 } });
    expect(answer.status).toBe(422);
    expect(answer.json.error).toMatchObject({ code: 'bad-request-body', field: 'given.quantity' });
  });

  test('a worksheet that does not exist', async () => {
    const answer = await ask('perpetual-motion', { given: {} });
    expect(answer.status).toBe(404);
    expect(answer.json.error.message).toContain('perpetual-motion');
  });
});
