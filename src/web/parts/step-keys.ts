import { useLayoutEffect, useRef } from 'react';
import { holdMs, useHoldBelow } from '../talk/hold-below.js';
import type { Talk } from '../talk/use-talk.js';
import { isKeyAct } from './steady-hands.js';

/** What a step is answered with: it is put there anew for each. */
const answers = '.step > footer, .act-page > footer';
const goButton = '.step > footer > .go, .act-page > footer > .go';

/** What a pedal sends. Tapped it goes on, held it talks. */
const pedal = new Set([' ', 'PageDown']);

/** A key of a keyboard, and what a third pedal sends. */
const noteKeys = new Set(['n', 'N', 'End']);
/** What holding does, and what a tap does first where something waits for it. */
interface Hold {
  readonly begin: () => void;
  readonly end: () => void;
  /** the pedal is down, and nobody knows yet for how long */
  readonly ready?: () => void;
  readonly tap?: (go: (() => void) | undefined) => void;
}
interface Voice extends Hold {
  readonly on: boolean;
}
const noHold: Hold = { begin: () => undefined, end: () => undefined };
const holdOf = (talk: Talk | undefined, voice: Voice | undefined): Hold =>
  voice?.on ? voice : (talk ?? noHold);

interface Press {
  readonly key: string;
  readonly go: (() => void) | undefined;
  readonly timer: ReturnType<typeof setTimeout>;
  talks: boolean;
}

/**
 * Three keys: space, right arrow and a pedal's page-down go on; left arrow and page-up take back what was last done; N or
 * a third pedal's End notes, held while one talks, or pressed to begin and again to end. Escape leaves. Space and page-down,
 * held, and a finger held on the lower half of the screen talk into the log too, or to the question in hand where `voice`
 * is switched on. An open question is answered by the same keys: on is its first answer, back puts it away. Typing keeps its
 * keys.
 */
export function useStepKeys(
  own: (() => void) | undefined,
  back: (() => void) | undefined,
  leave: () => void,
  talk: Talk | undefined,
  voice?: Voice,
): void {
  const { begin, end, ready, tap } = holdOf(talk, voice);
  const go = tap ? () => tap(own) : own;
  const press = useRef<Press>(undefined);
  const note = useRef<number>(undefined); // when its key went down
  const isTalking = talk?.state === 'opening' || talk?.state === 'talking';
  useHoldBelow({ begin, end });
  // before the next step is shown: a press that comes at once must not count for the one before
  useLayoutEffect(() => {
    const onKey = (e: KeyboardEvent) => {
      const question = document.querySelector<HTMLDialogElement>('dialog[open]');
      if (question) return answerByKey(e, question);
      if (isTyped(e)) return;
      if (pedal.has(e.key)) {
        e.preventDefault();
        if (e.repeat || press.current) return;
        ready?.();
        press.current = pressed(e, go, begin);
        return;
      }
      if (talk && noteKeys.has(e.key)) {
        e.preventDefault();
        if (e.repeat || note.current !== undefined) return;
        note.current = e.timeStamp;
        (isTalking ? talk.end : talk.begin)();
        return;
      }
      const act = { ArrowRight: go, ArrowLeft: back, PageUp: back, Escape: leave }[e.key];
      if (!act) return;
      e.preventDefault();
      if (isKeyAct(e, document.querySelector(answers))) act();
    };
    const onUp = (e: KeyboardEvent) => {
      if (noteKeys.has(e.key) && note.current !== undefined) {
        if (e.timeStamp - note.current >= holdMs) end();
        note.current = undefined;
        return;
      }
      const was = press.current;
      if (was?.key !== e.key) return;
      e.preventDefault();
      press.current = undefined;
      clearTimeout(was.timer);
      if (was.talks) end();
      else was.go?.();
    };
    window.addEventListener('keydown', onKey);
    window.addEventListener('keyup', onUp);
    return () => {
      window.removeEventListener('keydown', onKey);
      window.removeEventListener('keyup', onUp);
    };
  });
}

/** What is pressed is known when it is let go: until then it may be either. */
function pressed(e: KeyboardEvent, go: (() => void) | undefined, begin: () => void): Press {
  const isAct = isKeyAct(e, document.querySelector(answers));
  const press: Press = {
    key: e.key,
    go: isAct ? go : undefined,
    timer: setTimeout(() => {
      press.talks = true;
      begin();
    }, holdMs),
    talks: false,
  };
  return press;
}

/** The first answer is the one that does no harm; what goes over a doubt is touched. */
function answerByKey(e: KeyboardEvent, question: HTMLDialogElement): void {
  if (e.target instanceof HTMLElement && e.target.matches('input, textarea, select')) return;
  const first = question.querySelector<HTMLButtonElement>('.button.go:enabled');
  const isBack = e.key === 'ArrowLeft' || e.key === 'PageUp';
  const isOn = first !== null && (e.key === 'ArrowRight' || e.key === 'PageDown');
  if (!isBack && !isOn) return;
  e.preventDefault();
  if (!isKeyAct(e, question)) return;
  if (isBack) question.close();
  else first?.click();
}

/** Whether the key belongs to a field or a button. */
function isTyped(e: KeyboardEvent): boolean {
  const on = e.target instanceof HTMLElement ? e.target : undefined;
  if (on?.matches('input:not([type=checkbox]), textarea, select')) return true;
  return e.key === ' ' && Boolean(on?.closest('button, a, input, summary, label')) && !on?.matches(goButton);
}
