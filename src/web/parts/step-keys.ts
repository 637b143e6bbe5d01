import { useLayoutEffect } from 'react';
import { isKeyAct } from './steady-hands.js';

/** What a step is answered with: it is put there anew for each. */
const answers = '.step > footer, .act-page > footer';

/** Space, right arrow and a pedal's page-down go on; left arrow goes back; Escape leaves. Typing and open questions keep their keys. */
export function useStepKeys(
  go: (() => void) | undefined,
  back: (() => void) | undefined,
  leave: () => void,
): void {
  // before the next step is shown: a press that comes at once must not count for the one before
  useLayoutEffect(() => {
    const onKey = (e: KeyboardEvent) => {
      const on = e.target instanceof HTMLElement ? e.target : undefined;
      if (document.querySelector('dialog[open]')) return;
      if (on?.matches('input:not([type=checkbox]), textarea, select')) return;
      if (e.key === ' ' && on?.closest('button, a, input, summary, label')) return;
      const act = { ' ': go, ArrowRight: go, PageDown: go, ArrowLeft: back, PageUp: back, Escape: leave }[
        e.key
      ];
      if (!act) return;
      e.preventDefault();
      if (isKeyAct(e, document.querySelector(answers))) act();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [go, back, leave]);
}
