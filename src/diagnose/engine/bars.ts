import {
  applies,
  byId,
  type Catalog,
  type Check,
  type Component,
  componentsOf,
  type Hazard,
} from '../../catalog/index.js';
import { capital, listed, lowerFirst, plural } from '../../phrase/index.js';
import { withWhatStandsBefore } from '../advice/access.js';
import { architectureOf } from '../machine/architecture.js';
import { standingHazards } from './hazards.js';
import type { KnownOfEngine } from './known.js';
import { type EnginePiece, type Pieces, piecesOf } from './pieces.js';
import { type EngineState, stateOf } from './state.js';

/** Something done to an engine, with what it needs: a check, a step of the run-up. */
export type Act = Pick<Check, 'when' | 'needs'> &
  Partial<Pick<Check, 'engine' | 'needsOff' | 'whenLocked'>> & { readonly id?: string };

/** One engine, here and now: what it has, how it stands, what cannot and what must not be done to it. */
export interface EngineNow extends Pieces {
  readonly state: EngineState;
  readonly hazards: readonly Hazard[];
  /** whether it belongs to this engine at all: its pieces may be fitted, and what was to be renewed or opened for it was */
  readonly concerns: (act: Pick<Act, 'when' | 'needs'>) => boolean;
  /** why it cannot be done now, in words; undefined where it can */
  readonly cannot: (act: Act) => string | undefined;
  /** why it must not be done now */
  readonly mustNot: (act: Act) => string | undefined;
  /** one or the other: it is not to be offered */
  readonly barred: (act: Act) => string | undefined;
  /** "there is fuel in the crankcase: drain the oil …", while anything stands against pulling or running it */
  readonly stop?: string;
  /** the least that is not to be done while it stands: pulling bars running as well */
  readonly stopsFrom?: Hazard['bars'];
}

/**
 * This engine, on this bench, now. A pure function of the catalog and of what is known, so that a job's log and a case
 * out of a file get the same answer.
 */
export function engineNow(catalog: Catalog, known: KnownOfEngine): EngineNow {
  const had = piecesOf(catalog, known);
  const state = stateOf(catalog, known, had);
  const hazards = standingHazards(catalog, known, had);
  const here = { catalog, known, had, state, hazards };
  const cannot = (act: Act): string | undefined => cannotBeDone(here, act);
  const mustNot = (act: Act): string | undefined => mustNotBeDone(here, act);
  const stop = stopWords(hazards);
  return {
    ...had,
    state,
    hazards,
    concerns: (act) => applies(act.when, had.facts) !== 'no' && wasDone(known, act),
    cannot,
    mustNot,
    barred: (act) => mustNot(act) ?? cannot(act),
    ...(stop !== undefined && {
      stop,
      stopsFrom: hazards.some((h) => h.bars === 'pulling') ? 'pulling' : 'running',
    }),
  };
}

function wasDone({ renewed, opened }: KnownOfEngine, { needs = {} }: Pick<Act, 'needs'>): boolean {
  const news = needs.renewed ?? [];
  const openings = needs.opened ?? [];
  return (
    news.every((id) => renewed?.has(id)) && (openings.length === 0 || openings.some((id) => opened?.has(id)))
  );
}

interface Here {
  readonly catalog: Catalog;
  readonly known: KnownOfEngine;
  readonly had: Pieces;
  readonly state: EngineState;
  readonly hazards: readonly Hazard[];
}

const levels = ['still', 'turned by hand', 'pulled', 'running', 'hot'] as const;
type Level = (typeof levels)[number];

const levelOf = ({ engine = 'still', needs }: Act): Level =>
  needs?.firing && engine === 'pulled' ? 'running' : engine;
const reaches = (level: Level, least: Level): boolean => levels.indexOf(level) >= levels.indexOf(least);

function cannotBeDone(here: Here, act: Act): string | undefined {
  const { had, state } = here;
  const { facts } = had;
  if (applies(act.when, facts) === 'no') return lackWords(had, act) ?? 'not on such an engine';
  const lying = here.state.off.filter(({ id }) => !ownPieces(here, act).has(id));
  const wanted = lying.filter(({ id }) => act.needs?.inPlace?.includes(id));
  if (wanted.length > 0) return offWords(here, wanted);
  const level = levelOf(act);
  if (reaches(level, 'turned by hand') && state.turns === 'no' && !act.whenLocked) return 'it is locked';
  const held = lying.filter(({ id }) => holdsUp(here, id, level));
  if (held.length > 0) return offWords(here, held);
  if (act.needs?.dead && state.runs === 'yes')
    return state.off.length > 0 ? 'it ran before it came apart' : 'it runs';
  if (act.needs?.fuel && state.fuel === 'none') return 'there is no fuel in it';
  if ((level === 'running' || level === 'hot') && state.fuel === 'none' && act.needs?.firing === undefined)
    return 'there is no fuel in it';
  return undefined;
}

/** What the act itself takes off, with what lies over that. */
function ownPieces({ catalog, had }: Here, { needsOff = [] }: Act): ReadonlySet<string> {
  const named = needsOff.flatMap(({ component }) => component ?? []);
  return new Set([...named, ...withWhatStandsBefore(catalog, had.facts, named).map((c) => c.id)]);
}

/** Whether a piece that is off keeps the engine from what the act does with it. */
function holdsUp({ catalog, had }: Here, id: string, level: Level): boolean {
  const architecture = architectureOf(had.facts);
  const component = architecture && byId(componentsOf(catalog, architecture)).get(id);
  const least = component ? leastFor(component) : 'running';
  return least !== undefined && reaches(level, least);
}

function leastFor({ whileOff }: Component): Level | undefined {
  if (whileOff === 'runs') return undefined;
  if (whileOff === 'cannot turn') return 'turned by hand';
  return whileOff === 'cannot be pulled' ? 'pulled' : 'running';
}

const isAct = ({ catalog, had }: Here, id: string): boolean => {
  const architecture = architectureOf(had.facts);
  return (
    architecture !== undefined && byId(componentsOf(catalog, architecture)).get(id)?.comesOffAs === 'action'
  );
};

/** "the carburetor and the fuel tank are off"; of many, the first few. */
function offWords(here: Here, all: readonly EngineState['off'][number][]): string {
  // "fuel drained" lies on no bench: it is named where nothing else stands in the way
  const lying = all.filter(({ id }) => !isAct(here, id));
  if (lying.length === 0) return listed(all.map(({ name }) => lowerFirst(name)));
  const names = lying.slice(0, 3).map(({ name }) => `the ${lowerFirst(name)}`);
  const more = lying.length > 3 ? [...names.slice(0, 2), `${lying.length - 2} other pieces`] : names;
  return `${listed(more)} ${plural(lying.length, 'is', 'are')} off`;
}

function lackWords({ pieces }: Pieces, { when }: Act): string | undefined {
  const lacking = [...(when?.pieces ?? []), ...(when?.anyPiece ?? [])]
    .map((id) => pieces.get(id))
    .filter((p): p is EnginePiece => p?.fitted === 'not fitted');
  return lacking.length === 0
    ? undefined
    : `this engine has no ${listed(lacking.map((p) => lowerFirst(p.name)))}`;
}

function mustNotBeDone({ hazards, state, had }: Here, act: Act): string | undefined {
  const level = levelOf(act);
  if (!reaches(level, 'pulled')) return undefined;
  const standing = hazards.filter(({ bars }) => bars === 'pulling' || reaches(level, 'running'));
  if (standing.length > 0) return clauses(standing);
  const fourStroke = had.facts.architecture !== 'two-stroke';
  if (!reaches(level, 'running') || !fourStroke) return undefined;
  if (state.oil === 'none') return 'there is no oil in it';
  return state.oil === 'foul' ? 'there is fuel or water in the oil' : undefined;
}

/** "a guard or the shroud is off, and the muffler or a mount is loose": each is a sentence of its own. */
function clauses(hazards: readonly Hazard[]): string {
  const said = hazards.map(({ words }) => words);
  return said.length < 2 ? said.join('') : `${said.slice(0, -1).join(', ')}, and ${said.at(-1)}`;
}

function stopWords(hazards: readonly Hazard[]): string | undefined {
  if (hazards.length === 0) return undefined;
  const [first] = hazards;
  return `${capital(clauses(hazards))}. First: ${first!.first}.`;
}
