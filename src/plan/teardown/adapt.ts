import { PlanError } from '../error.js';
import { checkGraph, checkIds, type Piece, type TeardownGraph, without } from './graph.js';

/** What the engine in front of one has otherwise than the catalog. */
export type GraphChange =
  | { readonly kind: 'add'; readonly piece: Piece }
  /** it is not on this engine: what waited for it waits for what it waited for */
  | { readonly kind: 'remove'; readonly piece: string }
  /** it waits for these instead */
  | { readonly kind: 'retie'; readonly piece: string; readonly before: readonly string[] }
  | { readonly kind: 'minutes'; readonly piece: string; readonly minutes: number };

/**
 * The graph with the changes done one after the other.
 * @throws PlanError for a piece that is not there, or is there already, or where the outcome is no graph
 */
export function adapted(graph: TeardownGraph, changes: readonly GraphChange[]): TeardownGraph {
  const changed = changes.reduce((at, change, i) => changedBy(at, change, `changes[${i}]`), graph);
  checkGraph(changed);
  return changed;
}

function changedBy(graph: TeardownGraph, change: GraphChange, place: string): TeardownGraph {
  const known = new Set(graph.pieces.map(({ id }) => id));
  if (change.kind === 'add')
    return { ...graph, pieces: [...graph.pieces, fresh(change.piece, known, place)] };
  checkIds([change.piece], known, `${place}.piece`);
  if (change.kind === 'remove') return bridged(graph, change.piece);
  const fields = change.kind === 'retie' ? { before: change.before } : { minutes: change.minutes };
  return {
    ...graph,
    pieces: graph.pieces.map((piece) => (piece.id === change.piece ? { ...piece, ...fields } : piece)),
  };
}

/** Dropping the ties with the piece could leave a joint out of reach in a plan that looks right. */
function bridged(graph: TeardownGraph, id: string): TeardownGraph {
  const through = graph.pieces.find((piece) => piece.id === id)!.before;
  const pieces = graph.pieces.map((piece) =>
    piece.before.includes(id) ? { ...piece, before: [...new Set([...piece.before, ...through])] } : piece,
  );
  return without({ ...graph, pieces }, new Set([id]));
}

function fresh(piece: Piece, known: ReadonlySet<string>, place: string): Piece {
  if (!known.has(piece.id)) return piece;
  throw new PlanError('duplicate', `“${piece.id}” is on this engine already`, {
    place: `${place}.piece.id`,
    value: piece.id,
  });
}
