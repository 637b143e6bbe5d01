import { useEffect } from 'react';

/** So long a press is meant to be held; a tap or the beginning of a scroll is over before. */
export const holdMs = 350;
const stillPx = 12;
const controls = 'button, a, summary, label, input, select, textarea, dialog';

/** A finger held still on the lower half of the screen, beside its buttons, talks until it is lifted. */
export function useHoldBelow({ begin, end }: { begin: () => void; end: () => void }): void {
  useEffect(() => {
    let press: { x: number; y: number; timer: ReturnType<typeof setTimeout>; talks: boolean } | undefined;
    const drop = () => {
      if (!press) return;
      clearTimeout(press.timer);
      if (press.talks) end();
      press = undefined;
    };
    const onDown = (e: PointerEvent) => {
      const on = e.target instanceof Element ? e.target : undefined;
      if (!e.isPrimary || e.button !== 0 || e.clientY < innerHeight / 2 || on?.closest(controls)) return;
      drop();
      const timer = setTimeout(() => {
        if (!press) return;
        press.talks = true;
        begin();
      }, holdMs);
      press = { x: e.clientX, y: e.clientY, timer, talks: false };
    };
    const onMove = (e: PointerEvent) => {
      if (press && !press.talks && Math.hypot(e.clientX - press.x, e.clientY - press.y) > stillPx) drop();
    };
    // what a browser does with a finger that rests: scroll, mark words, open its own menu
    const onlyTalk = (e: Event) => press && (press.talks || e.type !== 'touchmove') && e.preventDefault();
    const own = ['touchmove', 'contextmenu', 'selectstart'] as const;
    window.addEventListener('pointerdown', onDown);
    window.addEventListener('pointermove', onMove);
    window.addEventListener('pointerup', drop);
    window.addEventListener('pointercancel', drop);
    for (const each of own) window.addEventListener(each, onlyTalk, { passive: false });
    return () => {
      drop();
      window.removeEventListener('pointerdown', onDown);
      window.removeEventListener('pointermove', onMove);
      window.removeEventListener('pointerup', drop);
      window.removeEventListener('pointercancel', drop);
      for (const each of own) window.removeEventListener(each, onlyTalk);
    };
  }, [begin, end]);
}
