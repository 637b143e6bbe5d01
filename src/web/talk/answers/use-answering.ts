import { type RefObject, useCallback, useEffect, useLayoutEffect, useRef, useState } from 'react';
import {
  type Answering,
  type AnsweringAct,
  type AnsweringEvent,
  answering,
  atRest,
  changesAtMs,
  type Heard,
  longestAnswerMs,
  type Sayable,
} from '../../../hear/index.js';
import { thisDevice, useDevice } from '../../data/device.js';
import { asSpoken } from '../../data/outbox.js';
import { holdMs } from '../hold-below.js';
import { hush, sayAloud } from './aloud.js';
import { type Choice, type Question, sayables } from './choice.js';
import { whatWasSaid, wordsNotKnown } from './ears.js';
import { type CameIn, type EarLine, openEarLine } from './open-ear-line.js';
import { ownTakes } from './own-takes.js';

/** Answering by voice at a step: the pedal's hold and tap, and what stands on the screen for it. */
export interface Voice {
  /** switched on by the person */
  readonly on: boolean;
  readonly opening: boolean;
  readonly state: Answering;
  /** the choice that was heard and waits for its tap */
  readonly shown: Choice | undefined;
  /** why nothing can be heard, in words */
  readonly wrong: string | undefined;
  /** the pedal is down: it may be held or tapped */
  readonly ready: () => void;
  readonly begin: () => void;
  readonly end: () => void;
  /** `go` is the pedal's own act, where nothing waits to be written */
  readonly tap: (go: (() => void) | undefined) => void;
  readonly drop: () => void;
}

const notOpenYet = 'The microphone was not open yet when you let go. It is open now: hold again and talk.';

/** The question in hand listens while it is held, and nothing else does. */
export function useAnswering(question: Question): Voice {
  const on = useDevice().spokenAnswers === true;
  const inHand = useRef(question);
  inHand.current = question;
  const { state, now, tell, go } = useTold(inHand);
  const { opening, wrong, begin, end } = useHolding(on, { inHand, now, tell });
  useLayoutEffect(() => tell.current({ on: 'question', question: question.key }), [question.key, tell]);
  useTimes(state, { end, tell });
  return {
    ...{ on, opening, state, wrong, begin, end },
    drop: useCallback(() => tell.current({ on: 'question', question: undefined }), [tell]),
    shown: state.at === 'shown' ? choiceOf(question, state.phrase) : undefined,
    ready: hush,
    tap: (own) => {
      go.current = own;
      tell.current({ on: 'tap' });
    },
  };
}

type InHand = RefObject<Question>;
type Tell = RefObject<(event: AnsweringEvent) => void>;

const choiceOf = ({ choices }: Question, phrase: string) => choices.find(({ say }) => say === phrase);

/** How far the answer is, and what is done as it goes on. */
function useTold(inHand: InHand) {
  const [state, setState] = useState<Answering>(atRest);
  const now = useRef<Answering>(atRest);
  const go = useRef<() => void>(undefined);
  const perform = (act: AnsweringAct) => {
    if (act.do === 'go on') return go.current?.();
    const choice = choiceOf(inHand.current, act.phrase);
    if (!choice || choice.disabled) return undefined;
    if (act.do === 'say back') return sayAloud(`${act.phrase}?`);
    if (act.question !== inHand.current.key) return undefined;
    hush();
    return void asSpoken(async () => choice.act());
  };
  const tell = useRef((event: AnsweringEvent) => {
    const byItself = thisDevice().answersWithoutTap === true;
    const { state: next, act } = answering(now.current, event, performance.now(), byItself);
    now.current = next;
    setState(next);
    if (act) perform(act);
  });
  return { state, now, tell, go };
}

/** The hold itself: from the press to what was heard. */
function useHolding(
  on: boolean,
  { inHand, now, tell }: { inHand: InHand; now: RefObject<Answering>; tell: Tell },
) {
  const [opening, setOpening] = useState(false);
  const [wrong, setWrong] = useState<string>();
  const presses = useRef(0);
  const isHeld = useRef(false);
  const line = useEarLine(on);
  const begin = useCallback(async () => {
    if (isHeld.current) return;
    isHeld.current = true;
    presses.current += 1;
    setWrong(undefined);
    hush();
    try {
      setOpening(!line.current);
      line.current ??= await openEarLine();
      if (!isHeld.current) throw new Error(notOpenYet);
      line.current.press(holdMs);
      const { key } = inHand.current;
      tell.current({ on: 'press', press: presses.current, question: key, phrases: sayables(inHand.current) });
    } catch (error) {
      isHeld.current = false;
      setWrong(wordsOf(error));
    } finally {
      setOpening(false);
    }
  }, [line, inHand, tell]);
  const end = useCallback(async () => {
    isHeld.current = false;
    const held = now.current;
    if (held.at !== 'held') return;
    // a page that goes behind another has closed it: what was begun is no answer
    if (!line.current) return tell.current({ on: 'question', question: undefined });
    tell.current({ on: 'let go' });
    const { press, phrases } = held;
    try {
      const heard = await saidAmong(await line.current.letGo(), phrases);
      tell.current({ on: 'heard', press, heard });
    } catch (error) {
      setWrong(wordsOf(error));
      const none: Heard = { heard: undefined, agree: false, doubt: 1, why: 'not told' };
      tell.current({ on: 'heard', press, heard: none });
    }
  }, [line, now, tell]);
  return {
    ...{ opening, wrong },
    begin: useCallback(() => void begin(), [begin]),
    end: useCallback(() => void end(), [end]),
  };
}

/** A phrase with a word whose sound nobody knows is left out. */
async function saidAmong(came: CameIn, all: readonly Sayable[]): Promise<Heard> {
  const phrases = all.map(({ phrase }) => phrase);
  const notKnown = await wordsNotKnown([...new Set(phrases.flatMap((phrase) => phrase.split(' ')))]);
  const known = phrases.filter((phrase) => phrase.split(' ').every((word) => !notKnown.has(word)));
  return whatWasSaid(came, known, await ownTakes());
}

const wordsOf = (error: unknown) => (error instanceof Error ? error.message : String(error));

/** What comes by itself: the longest answer ends, what nobody tapped is dropped, a page that goes behind another lets go. */
function useTimes(state: Answering, { end, tell }: { end: () => void; tell: Tell }): void {
  useEffect(() => {
    if (state.at === 'held') {
      const timer = setTimeout(end, longestAnswerMs);
      return () => clearTimeout(timer);
    }
    const at = changesAtMs(state);
    if (at === undefined) return undefined;
    const timer = setTimeout(() => tell.current({ on: 'time' }), at - performance.now() + 1);
    return () => clearTimeout(timer);
  }, [state, end, tell]);
  useEffect(() => {
    window.addEventListener('blur', end);
    return () => window.removeEventListener('blur', end);
  }, [end]);
}

/** The microphone stays open from the first press until the step is left or the page goes behind another. */
function useEarLine(on: boolean) {
  const line = useRef<EarLine>(undefined);
  useEffect(() => {
    if (!on) return undefined;
    const close = () => {
      line.current?.close();
      line.current = undefined;
    };
    const onHidden = () => document.visibilityState === 'hidden' && close();
    document.addEventListener('visibilitychange', onHidden);
    return () => {
      document.removeEventListener('visibilitychange', onHidden);
      close();
    };
  }, [on]);
  return line;
}
