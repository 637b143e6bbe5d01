/** The one voice of the program: while it speaks no microphone listens. */
const listeners = new Set<() => void>();
let speaking: SpeechSynthesisUtterance | undefined;

export const hasVoice = (): boolean => 'speechSynthesis' in globalThis;
export const isSpeaking = (): boolean => speaking !== undefined;

/** Calls back when the program begins to speak and when it is quiet again. */
export function whenSpeaking(tell: () => void): () => void {
  listeners.add(tell);
  return () => listeners.delete(tell);
}

/** A voice that never says that it has ended is taken to have ended. */
const longestMs = (words: string) => 1500 + 120 * words.length;

/** Says it in place of what is being said. Nothing where the browser has no voice. */
export function sayAloud(words: string): void {
  if (!hasVoice()) return;
  speechSynthesis.cancel();
  const mine = new SpeechSynthesisUtterance(words);
  const ended = () => {
    clearTimeout(late);
    if (speaking === mine) change(undefined);
  };
  const late = setTimeout(ended, longestMs(words));
  mine.onend = ended;
  mine.onerror = ended;
  change(mine);
  speechSynthesis.speak(mine);
}

/** The microphone is not to hear the program. */
export function hush(): void {
  globalThis.speechSynthesis?.cancel();
  change(undefined);
}

function change(now: SpeechSynthesisUtterance | undefined): void {
  speaking = now;
  for (const tell of listeners) tell();
}
