/**
 * Which touches count. A finger bounces, a pedal bounces, a key is held down, a row moves under a thumb: none of these is
 * an act. One place decides it for every button, tick and key of the application, before any of them hears of it.
 *
 * No act is taken from a held key, from a second touch within 300 ms, or on what appeared less than 400 ms ago. A bouncing
 * contact comes again after 60 to 250 ms; somebody who reads what has appeared takes longer than 400.
 */
const standard = { bounceMs: 300, freshMs: 400 };

/** For tests, whose hands are quicker than a person's. */
declare global {
  var quickHands: typeof standard | undefined;
}

const limits = () => globalThis.quickHands ?? standard;

export interface Touch {
  readonly atMs: number;
  /** what is acted on; the same thing again is the same object */
  readonly on: unknown;
  readonly x?: number;
  readonly y?: number;
  /** when what is acted on appeared */
  readonly appearedMs: number;
  /** typed into or ticked: nothing is written by it, and two of them are touched in quick turn */
  readonly isField?: boolean;
  /** meant to be touched in quick turn: a counter's plus */
  readonly isQuick?: boolean;
}

const samePlacePx = 24;

/** Whether a touch is an act, after the last one that was. */
export function isAct(touch: Touch, last: Touch | undefined): boolean {
  const { bounceMs, freshMs } = limits();
  if (touch.atMs - touch.appearedMs < freshMs) return false;
  if (!last || touch.isQuick || touch.atMs - last.atMs >= bounceMs) return true;
  const near =
    Math.hypot((touch.x ?? 0) - (last.x ?? 0), (touch.y ?? 0) - (last.y ?? 0)) < samePlacePx &&
    touch.x !== undefined;
  return touch.isField === true && touch.on !== last.on && !near;
}

/** Whether words on a control say another thing now. A clock that runs on, a count that grows: it is still the same thing. */
export function isReworded(before: string | null, now: string | null): boolean {
  const words = (text: string) => text.replace(/\d/g, '');
  return before !== null && now !== null && words(before) !== words(now);
}

const controls = 'button, a, summary, label, input, select, [role="button"], .tap';
const ticks = 'input[type="checkbox"], input[type="radio"], summary, select';
const typed = 'input:not([type="checkbox"], [type="radio"], [type="file"], [type="submit"]), textarea';

/** When parts of the page came to stand there. What is written into the page at once is one part. */
const appeared = new WeakMap<Node, number>();
/** When the words on a control became others: it does another thing now, at the same place. */
const reworded = new WeakMap<Node, number>();
let last: Touch | undefined;

/** Watches over this page from now on. */
export function steadyHands(): void {
  new MutationObserver((changes) => {
    const now = performance.now();
    for (const { addedNodes, target, oldValue } of changes) {
      for (const node of addedNodes) appeared.set(node, now);
      const control = isReworded(oldValue, target.nodeValue) && target.parentElement?.closest(controls);
      if (control) reworded.set(control, now);
    }
  }).observe(document.body, {
    ...{ childList: true, subtree: true, characterData: true, characterDataOldValue: true },
  });
  window.addEventListener('click', onClick, true);
  window.addEventListener('keydown', onHeldKey, true);
}

/** Whether a key that drives `page` as a whole is an act now: one that is held, bounces or comes too early is none. */
export function isKeyAct(event: KeyboardEvent, page: Element | null): boolean {
  if (event.repeat) return false;
  const words = [...(page?.querySelectorAll(controls) ?? [])].map((control) => reworded.get(control) ?? 0);
  return taken({ atMs: event.timeStamp, on: event.key, appearedMs: Math.max(appearedAt(page), ...words) });
}

function onClick(event: MouseEvent): void {
  const target = event.target instanceof Element ? event.target : undefined;
  const found = target?.closest(controls);
  if (!event.isTrusted || !found || found.matches(typed)) return;
  const on = (found instanceof HTMLLabelElement && found.control) || found;
  if (on.matches(typed)) return;
  // a label passes the touch on to its field at once: that is the same touch
  if (last?.on === on && event.timeStamp - last.atMs < 5) return;
  const isPlaced = event.detail > 0; // not from a key
  const isTaken = taken({
    atMs: event.timeStamp,
    on,
    ...(isPlaced && { x: event.clientX, y: event.clientY }),
    appearedMs: Math.max(appearedAt(found), isPlaced ? (reworded.get(found) ?? 0) : 0),
    isField: on.matches(ticks),
    isQuick: found.closest('[data-quick]') !== null,
  });
  if (!isTaken) stop(event);
}

/** Enter held on a button presses it again and again. */
function onHeldKey(event: KeyboardEvent): void {
  const on = event.target instanceof Element ? event.target : undefined;
  if (event.repeat && ['Enter', ' '].includes(event.key) && on?.closest(controls) && !on.matches('textarea'))
    stop(event);
}

function taken(touch: Touch): boolean {
  const isOne = isAct(touch, last);
  if (isOne) last = touch;
  return isOne;
}

function appearedAt(element: Element | null): number {
  let latest = Number.NEGATIVE_INFINITY;
  for (let node: Node | null = element; node; node = node.parentNode)
    latest = Math.max(latest, appeared.get(node) ?? Number.NEGATIVE_INFINITY);
  return latest;
}

function stop(event: Event): void {
  event.preventDefault();
  event.stopImmediatePropagation();
}
