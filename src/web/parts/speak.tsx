import { useEffect, useState } from 'react';
import { Button } from './act.js';

/** Spoken prompts on request, where the browser has a voice. */
export function Speak({ words }: { words: string }) {
  const [on, setOn] = useState(false);
  useEffect(() => {
    if (!on) return;
    speechSynthesis.cancel();
    speechSynthesis.speak(new SpeechSynthesisUtterance(words));
    return () => speechSynthesis.cancel();
  }, [on, words]);
  if (!('speechSynthesis' in window)) return null;
  return (
    <Button look="quiet" aria-pressed={on} onClick={() => setOn(!on)}>
      {on ? 'Be quiet' : 'Say it aloud'}
    </Button>
  );
}
