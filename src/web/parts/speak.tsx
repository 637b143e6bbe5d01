import { useEffect, useState } from 'react';
import { hasVoice, hush, sayAloud } from '../talk/answers/aloud.js';
import { Button } from './act.js';

/** Asked for once, it is spoken from step to step until somebody asks for quiet. */
let aloud = false;

/** Said where speech was asked for, in place of what is being said. */
export function sayIfAsked(words: string): void {
  if (aloud) sayAloud(words);
}

/** Spoken prompts on request, where the browser has a voice. */
export function Speak({ words }: { words: string }) {
  const [on, setOn] = useState(aloud);
  useEffect(() => {
    if (!on) return;
    sayAloud(words);
    return hush;
  }, [on, words]);
  if (!hasVoice()) return null;
  const turn = () => {
    aloud = !on;
    setOn(!on);
  };
  return (
    <Button look="quiet" aria-pressed={on} onClick={turn}>
      {on ? 'Be quiet' : 'Say it aloud'}
    </Button>
  );
}
