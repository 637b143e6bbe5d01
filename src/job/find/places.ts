import type { Entry, EntryKind, Stage } from '../entry.js';
import type { Job } from '../job.js';
import { lineWords } from '../line-words.js';
import { whenOf } from '../order.js';
import { type Asked, holds } from './asked.js';
import { dayTokens, glued, plain, tokensOf } from './tokens.js';

/** A line of a job that may be found, in words, and the sheet on which it stands. */
export interface FoundPlace {
  /** the line's id */
  readonly entry: string;
  /** the day on which it was written: "2026-11-29" */
  readonly day: string;
  readonly kind: EntryKind;
  readonly stage: Stage;
  readonly title: string;
  readonly value?: string;
  readonly detail?: string;
}

/** Where a line's thing stands, and under which words of the trade it is found beside its own. */
const homes: { readonly [K in EntryKind]?: readonly [stage: Stage, words: string] } = {
  open: ['intake', 'tag'],
  intake: ['intake', ''],
  identity: ['intake', 'plate'],
  spec: ['intake', 'spec'],
  observation: ['findings', 'check'],
  measurement: ['measure', 'measured'],
  photograph: ['intake', 'picture'],
  decision: ['worth-it', 'decided'],
  part: ['parts', 'part'],
  offer: ['parts', 'offer'],
  goal: ['teardown', ''],
  differs: ['teardown', ''],
  cleaning: ['measure', 'cleaning'],
  recording: ['run-up', 'recording'],
  step: ['teardown', ''],
  joint: ['assembly', 'torque'],
  torque: ['assembly', 'torque'],
  'run-up': ['run-up', ''],
  stage: ['intake', 'stage'],
  note: ['intake', 'note'],
  'spoken-note': ['intake', 'note spoken'],
  'hand-over': ['hand-over', ''],
};

/** The sheet on which a line's thing stands; none for what stands on no sheet. */
export function stageOf({ kind, body }: Entry): Stage | undefined {
  return ('stage' in body ? body.stage : undefined) ?? homes[kind]?.[0];
}

/** All that stands in a job, in the order of its log. What is struck is not found, nor are strikes. */
export function placesOf(job: Job): FoundPlace[] {
  return job.log.flatMap((line): FoundPlace[] => {
    const { known, struck, entry } = line;
    const stage = known && !struck ? stageOf(known) : undefined;
    if (!known || !stage) return [];
    return [
      { entry: entry.id, day: whenOf(entry).slice(0, 10), kind: known.kind, stage, ...lineWords(line) },
    ];
  });
}

/** What is searched of a place, in its parts: tokens do not reach from one into the next. */
function partsOf({ kind, title, value = '', detail = '' }: FoundPlace): string[] {
  return [title, kind === 'open' ? `tag ${value}` : value, detail, homes[kind]?.[1] ?? ''].filter(Boolean);
}

function placeTokens(place: FoundPlace): string[] {
  const { kind, day, value } = place;
  const inOne = kind === 'identity' && value ? [glued(plain(value))] : []; // a plate's number, typed without its spaces
  return [...dayTokens(day), ...partsOf(place).flatMap(tokensOf), ...inOne];
}

/** Whether it can hold any of the words at all: told without cutting it into tokens, for a job has hundreds of places. */
function mayHold(place: FoundPlace, bare: readonly string[]): boolean {
  const text = bareOf(plain([place.day, ...partsOf(place)].join(' ')));
  return bare.some((word) => text.includes(word));
}

/** Letters and digits alone; the nought before a point is not always written. */
const bareOf = (text: string): string =>
  text.replace(/(^|[^\p{N}])0\./gu, '$1').replace(/[^\p{L}\p{N}]+/gu, '');

/** Under which a job is found: each token once. */
export const jobTokens = (places: readonly FoundPlace[]): string[] => [
  ...new Set(places.flatMap(placeTokens)),
];

/**
 * Of a job that was found, the places that show it: those that hold the most of what was asked, the latest first, until
 * each word is shown; at most `most`. Where one place holds every word, others that do stand beside it. What was said
 * twice of one thing is shown as it was said last, and of a long line the pieces that hold what was asked.
 */
export function placesFound(places: readonly FoundPlace[], asked: Asked, most: number): FoundPlace[] {
  const bare = asked.map(({ token }) => bareOf(token));
  const candidates = places.filter((place) => mayHold(place, bare));
  const held = candidates.map((place) => {
    const tokens = placeTokens(place);
    return { place, words: asked.filter((word) => holds(tokens, word)) };
  });
  const best = held
    .filter(({ words }) => words.length > 0)
    .toReversed()
    .filter(latestOfEach())
    .sort((a, b) => b.words.length - a.words.length);
  const whole = best.filter(({ words }) => words.length === asked.length);
  const shownOf = (chosen: typeof held) => chosen.slice(0, most).map(({ place }) => shortened(place, asked));
  if (whole.length > 0) return shownOf(whole);
  const shown = new Set<Asked[number]>();
  const chosen = best.filter(({ words }) => {
    const more = words.some((word) => !shown.has(word));
    for (const word of words) shown.add(word);
    return more;
  });
  return shownOf(chosen);
}

function latestOfEach() {
  const seen = new Set<string>();
  return ({ place: { kind, title } }: { place: FoundPlace }) => {
    const name = `${kind} ${title}`;
    return !ofOneThing.has(kind) || (!seen.has(name) && seen.add(name));
  };
}

/** Kinds of which a later line of the same title says how the same thing stands now. */
const ofOneThing: ReadonlySet<EntryKind> = new Set(['part', 'step', 'offer', 'cleaning', 'joint', 'run-up']);

const long = 90;

function shortened(place: FoundPlace, asked: Asked): FoundPlace {
  const { detail = '' } = place;
  if (detail.length <= long) return place;
  const holding = detail.split(' · ').filter((piece) => {
    const tokens = tokensOf(piece);
    return asked.some((word) => holds(tokens, word));
  });
  return holding.length === 0 ? place : { ...place, detail: holding.join(' · ') };
}
