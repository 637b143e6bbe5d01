import { useEffect, useState } from 'react';
import { Button } from './act.js';

/** Asked for once, it is spoken from step to step until somebody asks for quiet. */
let aloud = false;

/** Said where speech was asked for, over what is being said. */
export function sayAloud(words: string): void {
  if (aloud && 'speechSynthesis' in window) speechSynthesis.speak(new SpeechSynthesisUtterance(words));
}

/** Spoken prompts on request, where the browser has a voice. */
export function Speak({ words }: { words: string }) {
  const [on, setOn] = useState(aloud);
  useEffect(() => {
    if (!on) return;
    speechSynthesis.cancel();
    speechSynthesis.speak(new SpeechSynthesisUtterance(words));
    return () => speechSynthesis.cancel();
  }, [on, words]);
  if (!('speechSynthesis' in window)) return null;
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
