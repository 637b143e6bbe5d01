import type { Heard } from './hear.js';

/** A phrase that may be said to the question in hand. */
export interface Sayable {
  readonly phrase: string;
  /** it writes into the log, or strikes what stands there; what does neither acts at once */
  readonly writes: boolean;
}

/** Why nothing is shown, or no longer. */
export type Nothing = NonNullable<Heard['why']> | 'dropped';

/** One press: what it listens for, and of how many it is which. */
export interface Press {
  readonly question: string;
  readonly phrases: readonly Sayable[];
  readonly press: number;
}

/** How far one spoken answer is. Times are in milliseconds of one clock. */
export type Answering =
  | { readonly at: 'rest' }
  /** the microphone listens to these and no other */
  | ({ readonly at: 'held' } & Press)
  /** let go: the ears are at work */
  | ({ readonly at: 'hearing' } & Press)
  /** heard and not written: a tap writes it, speaking again replaces it, silence drops it */
  | {
      readonly at: 'shown';
      readonly question: string;
      readonly phrase: string;
      readonly sinceMs: number;
      readonly untilMs: number;
    }
  /** nothing came of it; a tap that was meant for it does nothing else */
  | { readonly at: 'nothing'; readonly why: Nothing; readonly untilMs: number };

export type AnsweringEvent =
  | ({ readonly on: 'press' } & Press)
  | { readonly on: 'let go' }
  | { readonly on: 'heard'; readonly press: number; readonly heard: Heard }
  | { readonly on: 'tap' }
  /** another question is in hand, or none: given with every change of it */
  | { readonly on: 'question'; readonly question: string | undefined }
  | { readonly on: 'time' };

/** What is to be done now, and by whom it was said to be so. */
export type AnsweringAct =
  | { readonly do: 'act'; readonly phrase: string; readonly question: string }
  | { readonly do: 'say back'; readonly phrase: string }
  /** the tap was not for a spoken answer: it is the pedal's own */
  | { readonly do: 'go on' };

export interface Next {
  readonly state: Answering;
  readonly act?: AnsweringAct;
}

export const atRest: Answering = { at: 'rest' };

/** Letting go is the end of speech; so many milliseconds are as good as letting go. */
export const longestAnswerMs = 6000;
/** So long what was heard waits for its tap: it is said back in two seconds and read in one. */
const shownMs = 8000;
/** So long a tap that comes late, for what has just gone, does nothing. */
const deafMs = 1500;
/** Nobody reads what stands there in less: as for every touch (`steady-hands`). */
const freshMs = 400;

/**
 * The next state of a spoken answer, and what is to be done. Pure; the same for the page, the tests and the hour of noise
 * in bench/hear-hour.ts.
 *
 * What writes is done by a tap on what is shown, and by nothing else; without the tap only where both ears agree and
 * `byItself`, which the person has switched on, says so.
 */
export function answering(state: Answering, event: AnsweringEvent, nowMs: number, byItself = false): Next {
  switch (event.on) {
    case 'press':
      return { state: { at: 'held', question: event.question, phrases: event.phrases, press: event.press } };
    case 'let go':
      return { state: state.at === 'held' ? { ...state, at: 'hearing' } : state };
    case 'heard':
      return afterHearing(state, event, nowMs, byItself);
    case 'tap':
      return afterTap(state, nowMs);
    case 'question':
      return { state: 'question' in state && state.question !== event.question ? atRest : state };
    case 'time':
      return { state: afterTime(state, nowMs) };
  }
}

function afterHearing(
  state: Answering,
  { press, heard }: Extract<AnsweringEvent, { on: 'heard' }>,
  nowMs: number,
  byItself: boolean,
): Next {
  // what was said to a question that is gone, or was said anew meanwhile, is no answer
  if (state.at !== 'hearing' || state.press !== press) return { state };
  const { question } = state;
  const said = state.phrases.find(({ phrase }) => phrase === heard.heard);
  if (!said) return { state: nothing(heard.why ?? 'not told', nowMs) };
  const { phrase } = said;
  if (!said.writes || (byItself && heard.agree))
    return { state: atRest, act: { do: 'act', phrase, question } };
  const shown = { at: 'shown', question, phrase, sinceMs: nowMs, untilMs: nowMs + shownMs } as const;
  return { state: shown, act: { do: 'say back', phrase } };
}

function afterTap(state: Answering, nowMs: number): Next {
  const now = afterTime(state, nowMs);
  if (now.at === 'rest') return { state: now, act: { do: 'go on' } };
  if (now.at !== 'shown' || nowMs - now.sinceMs < freshMs) return { state: now };
  return { state: atRest, act: { do: 'act', phrase: now.phrase, question: now.question } };
}

function afterTime(state: Answering, nowMs: number): Answering {
  if (state.at === 'shown' && nowMs >= state.untilMs)
    return afterTime(nothing('dropped', state.untilMs), nowMs);
  if (state.at === 'nothing' && nowMs >= state.untilMs) return atRest;
  return state;
}

const nothing = (why: Nothing, nowMs: number): Answering => ({ at: 'nothing', why, untilMs: nowMs + deafMs });

/** When `time` changes the state by itself; nothing while it waits for somebody. */
export const changesAtMs = (state: Answering): number | undefined =>
  'untilMs' in state ? state.untilMs : undefined;
