import fc from 'fast-check';
import { expect, test } from 'vitest';
import { askedFor, type FoundPlace, fold, jobTokens, placesFound, placesOf } from '../../../src/job/index.js';
import { jobId, log, torque } from '../entries.js';

function places(): FoundPlace[] {
  const { add, lines } = log();
  add('open', { tag: 12, title: 'tiller' });
  add('intake', {
    machine: 'Brünn tiller, 5 hp',
    owner: 'O. Finch',
    contact: '(555) 014-2003',
    complaint: 'Smokes; surges.',
  });
  add('identity', { how: 'plate', written: 'HV52 K073 0142', where: 'blower housing', reads: [] });
  add('part', { part: 'ring', name: 'Bowl ring', count: 1, state: 'wanted', number: 'OX-195-32' });
  add('part', { part: 'ring', name: 'Bowl ring', count: 1, state: 'ordered', number: 'OX-195-32' });
  add('step', {
    step: 's1',
    stage: 'teardown',
    title: 'Recoil starter',
    state: 'done',
    bag: '3',
    fasteners: [],
  });
  add('step', { step: 's2', stage: 'teardown', title: 'Fuel tank', state: 'done', bag: '31', fasteners: [] });
  add('torque', { joint: 'head', hole: 2, pass: 1, set: torque('140 in-lb'), result: 'clicked' });
  add('note', { stage: 'parts', words: 'Called her on 2026-11-29, she waits .0025 more.' });
  const wrong = add('note', { stage: 'parts', words: 'belongs to the snowblower' });
  add('strike', { entry: wrong.id, reason: 'another machine' });
  return placesOf(fold(jobId, lines));
}

/** The titles found by the narrowest way that finds anything, as the program asks. */
function found(typed: string): string[] | undefined {
  const all = places();
  const tokens = jobTokens(all);
  const way = askedFor(typed).find((asked) =>
    asked.every(({ token, goesOn }) => tokens.some((t) => (goesOn ? t.startsWith(token) : t === token))),
  );
  return way && placesFound(all, way, 3).map(({ title }) => title);
}

test.each([
  ['#12', 'Tag hung'],
  ['tag 12', 'Tag hung'],
  ['12', 'Tag hung'],
  ['finch', 'Taken in'],
  ['FIN', 'Taken in'],
  ['brunn', 'Taken in'],
  ['555-014-2003', 'Taken in'],
  ['5550142003', 'Taken in'],
  ['014 2003', 'Taken in'],
  ['surges smokes', 'Taken in'],
  ['K073 0142', 'Plate'],
  ['hv52k0730142', 'Plate'],
  ['plate', 'Plate'],
  ['ox-195', 'Bowl ring'],
  ['OX19532', 'Bowl ring'],
  ['195-32', 'Bowl ring'],
  ['bag 3', 'Recoil starter'],
  ['head 140 in-lb', 'head, bolt 2'],
  ['140 in lbs', 'head, bolt 2'],
  ['0.0025', 'Called her on 2026-11-29, she waits .0025 more.'],
  ['nov 29 called', 'Called her on 2026-11-29, she waits .0025 more.'],
  ['11/29/2026', 'Called her on 2026-11-29, she waits .0025 more.'],
])('“%s” is found at %s', (typed, title) => {
  expect(found(typed)?.[0]).toBe(title);
});

test.each(['#1 2', 'tag 13', 'snowblower', '14 in-lb', 'bag 4', 'Nov 30', 'finch mower', ''])(
  '“%s” finds nothing',
  (typed) => {
    expect(found(typed)).toBeUndefined();
  },
);

test('bag 3 is not bag 31 while there is a bag 3', () => {
  expect(found('bag 3')).toEqual(['Recoil starter']);
});

test('words that stand in several lines are shown by a line each, what was said of a part by its last line', () => {
  expect(found('finch ring')).toEqual(['Bowl ring', 'Taken in']);
  const [ring] = placesFound(places(), [{ token: 'ring', goesOn: false }], 3);
  expect(ring).toMatchObject({ stage: 'parts', value: 'ordered', day: '2026-03-01' });
});

test('of a long line the pieces are shown that hold what was asked', () => {
  const long = 'It was left out all winter with fuel in the tank and now hunts at no load.';
  const { add, lines } = log();
  add('open', { tag: 1, title: 'pump' });
  add('intake', {
    owner: 'O. Finch',
    contact: '555-0142',
    machine: 'pump of the market garden',
    complaint: long,
  });
  const [place] = placesFound(placesOf(fold(jobId, lines)), [{ token: 'finch', goesOn: false }], 1);
  expect(place!.detail).toBe('Owner: O. Finch');
});

test('each token of a place finds that place, whatever was written, and is one that a database takes', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme', maxLength: 60 }), fc.nat(9999), (words, n) => {
      const { add, lines } = log();
      add('open', { tag: n, title: words.trim() || 'pump' });
      add('note', { words: `${words} .${n} in-lb ${n}-${n}-A ×` });
      const all = placesOf(fold(jobId, lines));
      for (const token of jobTokens(all)) {
        expect(token).toMatch(/^[\p{L}\p{N}_.-]+$/u);
        expect(placesFound(all, [{ token, goesOn: false }], 1)).toHaveLength(1);
      }
    }),
    { numRuns: 200, seed: 20261129 },
  );
});
