import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Answering,
  type AnsweringAct,
  type AnsweringEvent,
  answering,
  atRest,
  changesAtMs,
  type Heard,
  type Sayable,
} from '../../src/hear/index.js';

const phrases: readonly Sayable[] = [
  { phrase: 'it clicked', writes: true },
  { phrase: 'take that back', writes: true },
  { phrase: 'how tight', writes: false },
];
const press = (n = 1, question = 'bolt 1'): AnsweringEvent => ({ on: 'press', press: n, question, phrases });
const said = (phrase: string | undefined, more: Partial<Heard> = {}, n = 1): AnsweringEvent => ({
  on: 'heard',
  press: n,
  heard: { heard: phrase, agree: false, doubt: 0.2, ...more },
});
const letGo: AnsweringEvent = { on: 'let go' };
const tap: AnsweringEvent = { on: 'tap' };
const time: AnsweringEvent = { on: 'time' };

/** Events with the time at which each comes; gives the last state and every act. */
function play(events: readonly (readonly [ms: number, event: AnsweringEvent])[], byItself = false) {
  let state: Answering = atRest;
  const acts: AnsweringAct[] = [];
  for (const [ms, event] of events) {
    const next = answering(state, event, ms, byItself);
    state = next.state;
    if (next.act) acts.push(next.act);
  }
  return { state, acts };
}

const shown = [
  [0, press()],
  [1000, letGo],
  [1300, said('it clicked')],
] as const;
const wrote = (phrase: string) => ({ do: 'act', phrase, question: 'bolt 1' });

describe('what writes', () => {
  test('is shown and said back, and written by a tap, once', () => {
    const back = { do: 'say back', phrase: 'it clicked' };
    expect(play(shown)).toMatchObject({ state: { at: 'shown', phrase: 'it clicked' }, acts: [back] });
    const { state, acts } = play([...shown, [2500, tap], [2600, { on: 'question', question: 'bolt 2' }]]);
    expect(acts).toEqual([back, wrote('it clicked')]);
    expect(state).toEqual(atRest);
  });

  test('is replaced by speaking again, and the tap then writes the later one alone', () => {
    const again = [
      [3000, press(2)],
      [4000, letGo],
      [4200, said('take that back', {}, 2)],
      [5000, tap],
    ] as const;
    expect(play([...shown, ...again]).acts.filter((each) => each.do === 'act')).toEqual([
      wrote('take that back'),
    ]);
  });

  test('is dropped by silence; a tap that comes too late for it does nothing, and the next is the pedal’s own', () => {
    const { state } = play(shown);
    const end = changesAtMs(state)!;
    expect(end).toBe(9300);
    expect(play([...shown, [end, time]])).toMatchObject({ state: { at: 'nothing', why: 'dropped' } });
    expect(play([...shown, [end + 100, tap]]).acts).toHaveLength(1);
    expect(play([...shown, [end + 100, tap], [end + 1600, tap]]).acts.at(-1)).toEqual({ do: 'go on' });
  });

  test('is not written by a tap that comes before anybody can have read it', () => {
    expect(play([...shown, [1600, tap]]).acts).toHaveLength(1);
    expect(play([...shown, [1600, tap], [1800, tap]]).acts.at(-1)).toEqual(wrote('it clicked'));
  });

  test('is dropped when another question is in hand, by a touch or another device', () => {
    const other = [...shown, [2000, { on: 'question', question: 'bolt 2' }], [2500, tap]] as const;
    expect(play(other).acts.slice(1)).toEqual([{ do: 'go on' }]);
    expect(play([...shown, [2000, { on: 'question', question: 'bolt 1' }], [2500, tap]]).acts).toHaveLength(
      2,
    );
  });

  test('acts without the tap only where both ears agree and the person has switched that on', () => {
    const begun = shown.slice(0, 2);
    const agreed = [...begun, [1300, said('it clicked', { agree: true })]] as const;
    expect(play(agreed, true)).toEqual({ state: atRest, acts: [wrote('it clicked')] });
    expect(play(agreed, false).acts).toEqual([{ do: 'say back', phrase: 'it clicked' }]);
    expect(play(shown, true).acts).toEqual([{ do: 'say back', phrase: 'it clicked' }]);
  });
});

test('what changes nothing acts at once', () => {
  const asked = [...shown.slice(0, 2), [1300, said('how tight')]] as const;
  expect(play(asked)).toEqual({ state: atRest, acts: [wrote('how tight')] });
});

describe('nothing is done', () => {
  test.each(['nothing said', 'too loud', 'not told'] as const)(
    'where it is “%s”, and that is shown',
    (why) => {
      const { state, acts } = play([...shown.slice(0, 2), [1300, said(undefined, { why })], [1400, tap]]);
      expect(state).toMatchObject({ at: 'nothing', why });
      expect(acts).toEqual([]);
    },
  );

  test('with what was said at another press, while it still listens, or that nobody asked for', () => {
    expect(play([...shown.slice(0, 2), [1300, said('it clicked', {}, 7)]]).acts).toEqual([]);
    expect(
      play([
        [0, press()],
        [900, said('it clicked')],
      ]).acts,
    ).toEqual([]);
    expect(play([...shown.slice(0, 2), [1300, said('spark strong')]]).acts).toEqual([]);
  });

  test('with what was said to a question that is gone', () => {
    const gone = [
      ...shown.slice(0, 2),
      [1200, { on: 'question', question: 'bolt 2' }],
      [1300, said('it clicked')],
    ] as const;
    expect(play(gone)).toEqual({ state: atRest, acts: [] });
  });

  test('with a tap while it listens or works', () => {
    expect(
      play([
        [0, press()],
        [500, tap],
        [1000, letGo],
        [1100, tap],
      ]).acts,
    ).toEqual([]);
  });
});

test('whatever is said and pressed, in any order: nothing that writes is done but by a tap on it, or agreed by both ears where that is on', () => {
  const anEvent = fc.oneof(
    fc.constantFrom(press(), press(2, 'bolt 2'), letGo, time),
    fc.constant(tap),
    fc.constantFrom<AnsweringEvent>(
      { on: 'question', question: 'bolt 1' },
      { on: 'question', question: 'bolt 2' },
    ),
    fc
      .tuple(
        fc.constantFrom('it clicked', 'take that back', 'how tight', undefined),
        fc.boolean(),
        fc.boolean(),
      )
      .map(([phrase, agree, one]) => said(phrase, { agree }, one ? 1 : 2)),
  );
  const course = fc.array(fc.tuple(fc.integer({ min: 0, max: 4000 }), anEvent), { maxLength: 60 });
  fc.assert(
    fc.property(course, fc.boolean(), (steps, byItself) => {
      let state: Answering = atRest;
      let now = 0;
      for (const [ms, event] of steps) {
        now += ms;
        const before = state;
        const { state: after, act } = answering(before, event, now, byItself);
        state = after;
        if (act?.do !== 'act' || act.phrase === 'how tight') continue;
        const tapped = event.on === 'tap' && before.at === 'shown' && before.phrase === act.phrase;
        const agreed = byItself && event.on === 'heard' && event.heard.agree;
        expect(tapped || agreed).toBe(true);
      }
    }),
    { numRuns: 500, seed: 17 },
  );
});
