import { api, found, Unreachable } from './api.js';

const againMs = 10_000;
const listeners: [name: string, tell: (data: string) => void][] = [];
let events: EventSource | undefined;

/** Hears what the server tells of by itself, for as long as the page is open. */
export function followEvents(name: string, tell: (data: string) => void): void {
  listeners.push([name, tell]);
  if (!events) open();
  else listen(events, name, tell);
}

function listen(to: EventSource, name: string, tell: (data: string) => void): void {
  to.addEventListener(name, (event) => tell((event as MessageEvent<string>).data));
}

/** The line says in both directions whether the store is there: a page that asks nothing knows it too. */
function open(): void {
  const line = new EventSource('/api/events');
  events = line;
  for (const [name, tell] of listeners) listen(line, name, tell);
  line.addEventListener('open', () => void found('reached'));
  line.addEventListener('error', () => {
    // a line that broke is opened again by the browser; one that was answered with a "no" is not
    if (line.readyState !== EventSource.CLOSED)
      return void found(new Unreachable('The line to the store broke.'));
    api.health().catch(() => {}); // it is told of by the one who asked
    setTimeout(open, againMs);
  });
}
