import { PlanError } from '../error.js';

/** One thing that comes off, or is done, by itself. */
export interface Piece {
  readonly id: string;
  /** to take it off by itself, once everything before it is off */
  readonly minutes: number;
  /** what must be off first */
  readonly before: readonly string[];
}

/** Pieces that can leave in one piece. */
export interface Together {
  readonly id: string;
  readonly pieces: readonly string[];
  /** to take off as one what is still there of it */
  readonly minutes: number;
}

/** How one engine comes apart: the catalog's components that are on it, and what the person at the bench changed. */
export interface TeardownGraph {
  readonly pieces: readonly Piece[];
  readonly together: readonly Together[];
}

/** @throws PlanError for an id there twice, an id that nothing has, minutes that are none, or a round of "before" */
export function checkGraph(graph: TeardownGraph): void {
  const known = new Set<string>();
  addIds(graph.pieces, 'pieces', known);
  // removals are named by both, so an assembly may not be called like a piece
  const pieces = new Set(known);
  addIds(graph.together, 'together', known);
  for (const [i, piece] of graph.pieces.entries()) {
    checkMinutes(piece.minutes, `pieces[${i}].minutes`);
    checkIds(piece.before, pieces, `pieces[${i}].before`);
  }
  for (const [i, together] of graph.together.entries()) {
    checkMinutes(together.minutes, `together[${i}].minutes`);
    checkIds(together.pieces, pieces, `together[${i}].pieces`);
  }
  refuseRounds(graph.pieces);
}

/** @throws PlanError for an id that no piece has */
export function checkIds(ids: readonly string[], known: ReadonlySet<string>, place: string): void {
  for (const [i, id] of ids.entries())
    if (!known.has(id))
      throw new PlanError('unknown', `there is no “${id}” on this engine`, {
        place: `${place}[${i}]`,
        value: id,
      });
}

function addIds(items: readonly { readonly id: string }[], list: string, seen: Set<string>): void {
  for (const [i, { id }] of items.entries()) {
    if (seen.has(id))
      throw new PlanError('duplicate', `“${id}” is there twice`, { place: `${list}[${i}].id`, value: id });
    seen.add(id);
  }
}

function checkMinutes(minutes: number, place: string): void {
  if (!(minutes >= 0 && Number.isFinite(minutes)))
    throw new PlanError('shape', `${minutes} is no number of minutes`, {
      place,
      value: minutes,
      bound: 'finite, ≥ 0',
    });
}

function refuseRounds(pieces: readonly Piece[]): void {
  const at = new Map(pieces.map((piece) => [piece.id, piece]));
  const done = new Set<string>();
  const path: string[] = [];
  const visit = (id: string): void => {
    if (done.has(id)) return;
    if (path.includes(id)) {
      const round = [...path.slice(path.indexOf(id)), id];
      throw new PlanError('cycle', `each waits for the next: ${round.join(' → ')}`, {
        place: `pieces[${pieces.findIndex((piece) => piece.id === id)}].before`,
        value: round,
      });
    }
    path.push(id);
    for (const before of at.get(id)!.before) visit(before);
    path.pop();
    done.add(id);
  };
  for (const { id } of pieces) visit(id);
}

/** The graph once these are off: nothing waits for them, and what is left of an assembly can still leave as one. */
export function without(graph: TeardownGraph, off: ReadonlySet<string>): TeardownGraph {
  const left = (ids: readonly string[]) => ids.filter((id) => !off.has(id));
  return {
    pieces: graph.pieces
      .filter(({ id }) => !off.has(id))
      .map((piece) => ({ ...piece, before: left(piece.before) })),
    together: graph.together
      .map((together) => ({ ...together, pieces: left(together.pieces) }))
      .filter(({ pieces }) => pieces.length > 1),
  };
}
