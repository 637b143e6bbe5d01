import { type ComponentType, createElement, use } from 'react';

type Load<P> = () => Promise<ComponentType<P>>;

/** A part of the program that has not come over the network. */
export class NotFetched extends Error {
  constructor(
    readonly hasComeSince: () => boolean,
    options: ErrorOptions,
  ) {
    super('This part of the program has not reached this device yet.', options);
  }
}

interface Part {
  fetching?: Promise<unknown> | undefined;
  here?: ComponentType<never>;
  readonly load: () => Promise<ComponentType<never>>;
}

const parts: Part[] = [];

function fetchPart(part: Part): Promise<unknown> {
  part.fetching ??= part.load().then(
    (component) => {
      part.here = component;
    },
    (cause) => {
      throw new NotFetched(() => part.here !== undefined, { cause });
    },
  );
  return part.fetching;
}

/** A part of the page that is fetched when it is first shown, or before that by `fetchAhead`. */
export function later<P>(load: Load<P>): ComponentType<P> {
  const part: Part = { load: load as unknown as Part['load'] };
  parts.push(part);
  // biome-ignore lint/correctness/noComponentHookFactories: each part is made once, at the top of its file
  return function Later(props) {
    if (!part.here) use(fetchPart(part));
    return createElement(part.here as unknown as ComponentType<object>, props as object);
  };
}

/** What could not be fetched is asked for anew: one break of the network must not last as long as the page. */
export async function fetchAgain(): Promise<void> {
  for (const part of parts) if (!part.here) part.fetching = undefined;
  await fetchAll();
}

/** Once the first screen stands, everything else is fetched, so that no sheet hangs on the network later. */
export function fetchAhead(): void {
  const whenIdle = window.requestIdleCallback ?? ((work: () => void) => setTimeout(work, 1000));
  whenIdle(() => void fetchAgain().then(fetchFiles));
}

/** What is fetched may name more to fetch. */
async function fetchAll(): Promise<void> {
  for (let i = 0; i < parts.length; i += 1) await fetchPart(parts[i]!).catch(() => undefined); // once more when it is opened
}

let all = false;

/** Workers and what they run lie in no chunk of the page: the browser is asked to have them at hand. */
async function fetchFiles(): Promise<void> {
  if (all || navigator.serviceWorker?.controller) return; // it has them
  try {
    const files = (await (await fetch('/files.json')).json()) as string[];
    for (const file of files) {
      const answer = await fetch(file, { cache: 'force-cache' });
      if (!answer.ok) return;
      await answer.arrayBuffer();
    }
    all = true;
  } catch {
    // once more when the bench is there again
  }
}
