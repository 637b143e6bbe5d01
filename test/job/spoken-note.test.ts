import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { attachedTo, fold, lineWords, readEntry } from '../../src/job/index.js';
import { jobId } from './entries.js';

const uuid = (n: number) => `01900000-0000-7000-8000-00000000010${n}`;

const sound = { sha256: 'ab'.repeat(32), mime: 'audio/wav', bytes: 230_444, seconds: 7.2 };
const line = (n: number, kind: string, body: unknown) => ({
  ...{ id: uuid(n), job: jobId, at: `2026-03-01T12:0${n}:00Z`, by: 'a', kind, v: 1, body },
});
const said = line(1, 'spoken-note', { sound, stage: 'teardown', about: 'Cylinder head' });

describe('a spoken note', () => {
  test('stands in the log with how long it is and beside what it was said, and is struck like any line', () => {
    const job = fold(jobId, [readEntry(said)]);
    expect(job.spokenNotes).toMatchObject([{ sound, stage: 'teardown', about: 'Cylinder head' }]);
    expect(lineWords(job.log[0]!)).toEqual({ title: 'Spoken note', value: '0:07', detail: 'Cylinder head' });
    const struck = fold(jobId, [said, line(2, 'strike', { entry: uuid(1), reason: 'taken back at once' })]);
    expect(struck.spokenNotes).toEqual([]);
    expect(struck.log).toHaveLength(2);
  });

  test.each([
    ['longer than a note may be', { ...sound, seconds: 151 }],
    ['without a length', { ...sound, seconds: 0 }],
    ['of another kind of file', { ...sound, mime: 'video/mp4' }],
    ['without its hash', { ...sound, sha256: '' }],
  ])('%s is refused', (_, other) => {
    expect(() => readEntry({ ...said, body: { sound: other, stage: 'teardown' } })).toThrow('sound');
  });
});

describe('what is kept beside the log', () => {
  test('is a photograph’s picture and a spoken note’s sound, and nothing of any other line', () => {
    const picture = { sha256: 'cd'.repeat(32) };
    expect(attachedTo(said)).toBe(sound.sha256);
    expect(attachedTo({ kind: 'photograph', body: { picture } })).toBe(picture.sha256);
    expect(attachedTo({ kind: 'photograph', body: { clip: {}, sound } })).toBeUndefined();
    expect(attachedTo({ kind: 'note', body: { picture, sound } })).toBeUndefined();
  });

  test('never fails on what another program wrote', () => {
    const kinds = fc.constantFrom('photograph', 'spoken-note', 'note', 'constructor');
    fc.assert(
      fc.property(kinds, fc.anything(), (kind, body) => {
        expect(['string', 'undefined']).toContain(typeof attachedTo({ kind, body }));
      }),
    );
  });
});
