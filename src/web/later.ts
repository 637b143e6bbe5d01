import { type ComponentType, lazy } from 'react';

type Load<P> = () => Promise<ComponentType<P>>;

const loads: Load<never>[] = [];

/** A part of the page that is fetched when it is first shown, or before that by `fetchAhead`. */
export function later<P>(load: Load<P>): ComponentType<P> {
  loads.push(load as unknown as Load<never>);
  return lazy(() => load().then((part) => ({ default: part }))) as unknown as ComponentType<P>;
}

/** Once the first screen stands, everything else is fetched, so that no sheet hangs on the network later. */
export function fetchAhead(): void {
  const whenIdle = window.requestIdleCallback ?? ((work: () => void) => setTimeout(work, 1000));
  whenIdle(() => void fetchAll());
}

/** What is fetched may name more to fetch. */
async function fetchAll(): Promise<void> {
  for (let i = 0; i < loads.length; i += 1) await loads[i]!().catch(() => undefined); // once more when it is opened
}
