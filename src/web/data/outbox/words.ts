import { counted, listed, picturesAndSounds } from '../../../phrase/index.js';
import type { Held } from './kept.js';
import type { Outbox } from './outbox.js';
import type { Reach } from './rules.js';

/** What the head of every page says of the outbox: the first words always, the rest where there is room. */
export interface StateWords {
  readonly look: 'saved' | 'waiting' | 'refused';
  readonly words: string;
  readonly more?: string;
  /** there is something to look at or to decide */
  readonly isLink: boolean;
}

const whyWaiting: Readonly<Record<Reach, string>> = {
  'not asked': '',
  reached: '',
  'no network': ', no network',
  'no answer': ', no connection',
  'out of order': ', the store is out of order',
  'not paired': ', not paired',
};

const withNothing: Readonly<Record<Exclude<Reach, 'reached' | 'not paired'>, string>> = {
  'not asked': 'asking the store …',
  'no network': 'no network',
  'no answer': 'store not reached',
  'out of order': 'store out of order',
};

/** "3 lines and 1 picture" */
export const heldWords = ({ lines, pictures, sounds = 0 }: Held): string =>
  listed(
    [
      lines > 0 && counted(lines, 'line'),
      pictures > 0 && counted(pictures, 'picture'),
      sounds > 0 && counted(sounds, 'sound'),
    ].filter((w) => w !== false),
  );

const besides = ({ pictures, sounds = 0 }: Held): number => pictures + sounds;
export const howMuch = (held: Held): number => held.lines + besides(held);

export function stateWords(outbox: Outbox): StateWords {
  const { waiting, keeping, pictures, sounds, refused, reach, trouble, missing, part, unread } = outbox;
  const held = { lines: waiting.length, pictures, sounds };
  const any = howMuch(held) > 0;
  if (trouble) return { look: 'refused', words: 'cannot keep: look', isLink: true };
  if (missing) return { look: 'refused', words: `${heldWords(missing)} missing: look`, isLink: true };
  if (refused.length > 0) return { look: 'refused', words: `${refused.length} refused: look`, isLink: true };
  if (reach === 'not paired')
    return {
      look: 'waiting',
      words: 'not paired any more',
      ...(any && { more: `: ${heldWords(held)} ${isAre(held)} still on this device` }),
      isLink: any,
    };
  if (any)
    return {
      look: 'waiting',
      words: `${held.lines > 0 ? `${held.lines} waiting` : picturesAndSounds(pictures, sounds)} to send${whyWaiting[reach]}`,
      ...morePictures(held, part),
      isLink: true,
    };
  if (keeping > 0) return { look: 'waiting', words: 'keeping …', isLink: false };
  // the store may answer before this device has read what an earlier visit left on it
  if (unread) return { look: 'waiting', words: 'looking at what waits here …', isLink: false };
  if (reach === 'reached') return { look: 'saved', words: 'all saved', isLink: false };
  return {
    look: 'waiting',
    words: withNothing[reach],
    ...(reach !== 'not asked' && { more: '; nothing waits here' }),
    isLink: false,
  };
}

function morePictures(held: Held, part: number | undefined): { more?: string } {
  const { lines, pictures, sounds } = held;
  const gone = part === undefined ? '' : ` (${Math.round(100 * part)} %)`;
  if (besides(held) === 0 || (lines === 0 && !gone)) return {};
  return { more: lines > 0 ? `, ${picturesAndSounds(pictures, sounds)}${gone}` : gone };
}

export const isAre = (held: Held): string => (howMuch(held) === 1 ? 'is' : 'are');
