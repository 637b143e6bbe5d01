import { attachedTo, type RawEntry } from '../../../job/index.js';
import { NotPaired, ServerError, Unreachable } from '../api.js';
import type { Kept, KeptLine, KeptPicture } from './kept.js';

/** How the shop's store was found when it was last asked for anything. */
export type Reach = 'not asked' | 'reached' | 'no network' | 'no answer' | 'out of order' | 'not paired';

export type Sending =
  | { readonly what: 'lines'; readonly lines: readonly KeptLine[] }
  | { readonly what: 'picture'; readonly picture: KeptPicture };

const mostTogether = 200;
/** characters of JSON, well under what the server takes at once */
const longestTogether = 500_000;

/**
 * What is to be sent now: lines before pictures, for they are small and others work by them; but never a line that shows a
 * picture before the store holds that picture, nor the strike of such a line. Lines of one job go together, in the order in
 * which they were written.
 */
export function nextToSend(kept: Kept): Sending | undefined {
  const held = heldBack(kept);
  const free = inOrder(kept.lines).filter((line) => line.refused === undefined && !held.has(line.entry.id));
  if (free[0]) return { what: 'lines', lines: together(free, free[0].entry.job) };
  const picture = kept.pictures.find(({ refused }) => refused === undefined);
  return picture && { what: 'picture', picture };
}

export const inOrder = (lines: readonly KeptLine[]): KeptLine[] =>
  [...lines].sort((a, b) => a.n - b.n || (a.entry.id < b.entry.id ? -1 : 1));

function together(lines: readonly KeptLine[], job: string): KeptLine[] {
  const batch: KeptLine[] = [];
  let length = 0;
  for (const line of lines) {
    if (line.entry.job !== job) continue;
    length += JSON.stringify(line.entry).length;
    if (batch.length === mostTogether || (batch.length > 0 && length > longestTogether)) break;
    batch.push(line);
  }
  return batch;
}

/** Lines that wait for a picture, and those that strike one of them. */
function heldBack({ lines, pictures }: Kept): Set<string> {
  const notSafe = new Set(pictures.map(({ sha256 }) => sha256));
  const held = new Set<string>();
  for (const { entry } of inOrder(lines)) {
    const struck = entry.kind === 'strike' ? fieldOf(entry.body, 'entry') : undefined;
    if (notSafe.has(attachedTo(entry) ?? '') || held.has(struck ?? '')) held.add(entry.id);
  }
  return held;
}

function fieldOf(value: unknown, name: string): string | undefined {
  const found =
    typeof value === 'object' && value !== null ? (value as Record<string, unknown>)[name] : undefined;
  return typeof found === 'string' ? found : undefined;
}

/** What will not be sent until the person decides: refused lines, and lines whose picture was refused. */
export interface Refused {
  readonly reason: string;
  readonly entry?: RawEntry;
  readonly picture?: KeptPicture;
}

export function refusedIn({ lines, pictures }: Kept): Refused[] {
  const bad = new Map(pictures.filter((p) => p.refused !== undefined).map((p) => [p.sha256, p]));
  const named = new Set<string>();
  const refused = inOrder(lines).flatMap(({ entry, refused }): Refused[] => {
    const picture = bad.get(attachedTo(entry) ?? '');
    if (picture) named.add(picture.sha256);
    const reason = refused ?? picture?.refused;
    return reason === undefined ? [] : [{ entry, reason, ...(picture && { picture }) }];
  });
  const alone = [...bad.values()].filter(({ sha256 }) => !named.has(sha256));
  return [...refused, ...alone.map((picture) => ({ reason: picture.refused!, picture }))];
}

/** Lines that are on their way. */
export function waitingIn(kept: Kept): RawEntry[] {
  const refused = new Set(refusedIn(kept).map(({ entry }) => entry?.id));
  return inOrder(kept.lines).flatMap(({ entry }) => (refused.has(entry.id) ? [] : [entry]));
}

/**
 * What an answer that is no "yes" means for what was sent. Only what the content itself is refused for is refused for good;
 * anything else, known or not, is waited out.
 */
export function meaningOf(error: unknown): { readonly refused: string } | { readonly reach: Reach } {
  if (error instanceof NotPaired) return { reach: 'not paired' };
  if (error instanceof Unreachable) return { reach: 'no answer' };
  if (!(error instanceof ServerError)) return { reach: 'out of order' };
  const { status, code, message } = error;
  const forGood = [400, 409, 413, 422].includes(status) || (status === 404 && code === 'no-such-job');
  return forGood && code !== damagedOnTheWay ? { refused: message } : { reach: 'out of order' };
}

/** Said of a picture that did not arrive as it was sent. */
export const damagedOnTheWay = 'damaged-on-the-way';

/** How long is waited after so many tries that failed one after the other: 1, 2, 4 … 30 seconds. */
export const pauseMs = (failures: number): number => Math.min(30_000, 500 * 2 ** Math.min(failures, 10));
