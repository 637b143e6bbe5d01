import { useEffect, useState } from 'react';

/** How safe this page's storage is from the browser itself: "best effort" goes when the device runs short of room. */
export type KeepsFor = 'for good' | 'while there is room' | 'not known';

let asked: Promise<KeepsFor> | undefined;

/** Asks the browser to keep what is stored here until the person clears it. Some ask the person; some decide alone. */
export function askToKeep(): Promise<KeepsFor> {
  asked ??= ask().catch(() => 'not known' as const);
  return asked;
}

async function ask(): Promise<KeepsFor> {
  // plain HTTP has no such question, and no such promise
  if (!navigator.storage?.persist) return 'while there is room';
  const already = await navigator.storage.persisted();
  return already || (await navigator.storage.persist()) ? 'for good' : 'while there is room';
}

export function useKeepsFor(): KeepsFor {
  const [keeps, setKeeps] = useState<KeepsFor>('not known');
  useEffect(() => {
    let here = true;
    void askToKeep().then((answer) => here && setKeeps(answer));
    return () => {
      here = false;
    };
  }, []);
  return keeps;
}
