import { expect, test } from 'vitest';
import { EntryError, localTime, readEntry } from '../../src/job/index.js';
import { length, log, torque } from './entries.js';

const { add } = log();
const good = add('measurement', { measure: 'bore', title: 'Bore', value: length('2.6802 in') });

test.each([
  ['no object', 'garbage', /entry|expected/i],
  ['a body of another kind', { ...good, kind: 'torque' }, /body/],
  ['an id that is no UUID', { ...good, id: 'x' }, /UUID/],
  ['a time without its offset', { ...good, at: '2026-03-01 09:00' }, /ISO 8601/],
  ['a job that is no UUID', { ...good, job: '../etc' }, /job/],
])('%s is refused by name', (_, input, says) => {
  expect(() => readEntry(input)).toThrow(says);
  expect(() => readEntry(input)).toThrow(EntryError);
});

test('a number that says something else than its words is refused', () => {
  const value = { ...length('2.6802 in'), si: 2.6802 };
  expect(() => readEntry({ ...good, body: { measure: 'bore', title: 'Bore', value } })).toThrow(
    /2\.6802 in.*otherwise/,
  );
});

test('a torque in length units is refused, wherever in the body it stands', () => {
  const set = { ...torque('140 in-lb'), written: '0.030 in' };
  const body = { joint: 'head', hole: 1, pass: 1, set, result: 'clicked' };
  expect(() => readEntry({ ...good, kind: 'torque', body })).toThrow(/torque wanted, length given/);
});

test('a field that no schema knows is dropped from a known kind, and an unknown kind passes whole', () => {
  const note = { ...good, kind: 'note', body: { words: 'dry', color: 'red' } };
  expect(readEntry(note).body).toEqual({ words: 'dry' });
  const future = { ...good, kind: 'hologram', body: { words: 'dry', color: 'red' } };
  expect(readEntry(future)).toEqual(future);
});

test('local time is the same instant, with the offset of the clock on the wall', () => {
  const instants = ['2026-01-20T19:05:00.000Z', '2026-07-01T00:00:00.000Z', '1999-12-31T23:59:59.999Z'].map(
    (t) => new Date(t),
  );
  for (const date of instants) {
    const said = localTime(date);
    expect(said).toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}[+-]\d\d:\d\d$/);
    expect(Date.parse(said)).toBe(date.getTime());
    expect(Number(said.slice(11, 13))).toBe(date.getHours());
  }
});
