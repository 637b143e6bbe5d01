import { useEffect } from 'react';

/** Brings a section into sight when the address names it; the page was not there when the address changed. */
export function useArrival(id: string): void {
  useEffect(() => {
    if (window.location.hash === `#${id}`) document.getElementById(id)?.scrollIntoView();
  }, [id]);
}
