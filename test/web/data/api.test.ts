import { afterEach, describe, expect, test, vi } from 'vitest';
import { api, NotPaired, pictureUrl, ServerError, Unreachable } from '../../../src/web/data/api.js';

const answers = (make: () => Response | Promise<never>) => vi.stubGlobal('fetch', async () => make());
const json = (body: unknown, status = 200) => new Response(JSON.stringify(body), { status });
const failure = (act: () => Promise<unknown>) =>
  act().then(
    () => undefined,
    (error: Error) => error,
  );

afterEach(() => vi.unstubAllGlobals());

describe('what the shop’s server says no to', () => {
  test('comes with its words, code, field and status', async () => {
    answers(() => json({ error: { message: 'torque: too much', code: 'bad', field: 'torque' } }, 400));
    const error = await failure(() => api.append([]));
    expect(error).toBeInstanceOf(ServerError);
    expect(error).toMatchObject({ message: 'torque: too much', code: 'bad', field: 'torque', status: 400 });
  });

  test('without words of its own is named by its status', async () => {
    answers(() => new Response('<html>', { status: 502 }));
    expect(await failure(() => api.append([]))).toMatchObject({
      message: 'The server answered 502.',
      code: 'unknown',
      status: 502,
    });
  });

  test('401 is a device that is not paired, and counts as one that cannot reach the store', async () => {
    answers(() => json({ error: { message: 'pair first' } }, 401));
    const error = await failure(() => api.append([]));
    expect(error).toBeInstanceOf(NotPaired);
    expect(error).toBeInstanceOf(Unreachable);
  });

  test('a network that is away says that what is written is kept', async () => {
    answers(() => Promise.reject(new TypeError('failed')));
    const error = await failure(() => api.append([]));
    expect(error).toBeInstanceOf(Unreachable);
    expect(error?.message).toContain('kept on this device');
  });
});

test('a job of which the store has no line yet has none, and other refusals stay refusals', async () => {
  answers(() => json({ error: { message: 'no such job' } }, 404));
  expect(await api.entries('j')).toEqual([]);
  answers(() => json({ error: { message: 'broken' } }, 500));
  expect(await failure(() => api.entries('j'))).toMatchObject({ status: 500 });
});

test('a picture is asked for whole or cut to a width', () => {
  expect(pictureUrl('abc')).toBe('/api/pictures/abc');
  expect(pictureUrl('abc', 320)).toBe('/api/pictures/abc?width=320');
});
