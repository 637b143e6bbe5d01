import { useCallback, useEffect, useRef, useState } from 'react';
import type { Body } from '../../job/index.js';
import { type Sound, writeWav } from '../../listen/index.js';
import { writeSpokenNote } from '../data/outbox.js';
import { hush } from './answers/aloud.js';
import { openTape } from './tape.js';

export type TalkState = 'idle' | 'opening' | 'talking' | 'keeping';

/** Talking into the log: from `begin` to `end`, once, and what was said is kept. */
export interface Talk {
  readonly state: TalkState;
  /** why nothing was kept, in words */
  readonly wrong: string | undefined;
  readonly begin: () => void;
  readonly end: () => void;
}

const longestMs = 120_000;
const shortestS = 0.5;
/** of full scale: below it even a whisper lies above the microphone's own hiss */
const quietest = 1e-3;

interface Hold {
  readonly isLetGo: () => boolean;
  readonly letGo: () => void;
  readonly whenLetGo: Promise<void>;
}

function newHold(): Hold {
  let gone = false;
  let resolve = () => {};
  const whenLetGo = new Promise<void>((done) => {
    resolve = done;
  });
  const letGo = () => {
    gone = true;
    resolve();
  };
  return { isLetGo: () => gone, letGo, whenLetGo };
}

/** `beside` says what is in hand; it is read when talking begins. A page that is left, or goes behind another, ends it. */
export function useTalk(job: string, beside: Omit<Body<'spoken-note'>, 'sound'>): Talk {
  const [state, setState] = useState<TalkState>('idle');
  const [wrong, setWrong] = useState<string>();
  const hold = useRef<Hold>(undefined);
  const inHand = useRef(beside);
  inHand.current = beside;
  const end = useCallback(() => hold.current?.letGo(), []);
  const begin = useCallback(() => {
    if (hold.current) return;
    const mine = newHold();
    hold.current = mine;
    setWrong(undefined);
    setState('opening');
    hush();
    void spoken(mine, setState)
      .then((said) => writeSpokenNote(job, said, inHand.current))
      .catch((error) => setWrong(error instanceof Error ? error.message : String(error)))
      .finally(() => {
        hold.current = undefined;
        setState('idle');
      });
  }, [job]);
  useEffect(() => {
    const onHidden = () => document.visibilityState === 'hidden' && end();
    window.addEventListener('blur', end);
    document.addEventListener('visibilitychange', onHidden);
    return () => {
      window.removeEventListener('blur', end);
      document.removeEventListener('visibilitychange', onHidden);
      end();
    };
  }, [end]);
  return { state, wrong, begin, end };
}

async function spoken(hold: Hold, tell: (state: TalkState) => void) {
  const tape = await openTape();
  if (hold.isLetGo()) {
    await tape.stop();
    throw new Error(
      'The microphone was not open yet when you let go. It is allowed now: hold again and talk.',
    );
  }
  tell('talking');
  const tooLong = setTimeout(hold.letGo, longestMs);
  await hold.whenLetGo;
  clearTimeout(tooLong);
  tell('keeping');
  return asNote(await tape.stop());
}

/** @throws Error in words when nothing was said */
function asNote(sound: Sound): { readonly wav: Uint8Array<ArrayBuffer>; readonly seconds: number } {
  const seconds = sound.samples.length / sound.sampleRate;
  if (seconds < shortestS) throw new Error('That was too short to keep. Hold as long as you talk.');
  if (sound.samples.every((sample) => Math.abs(sample) < quietest))
    throw new Error('No sound came from the microphone; nothing was kept. Is it switched off or covered?');
  return { wav: writeWav(sound), seconds };
}
