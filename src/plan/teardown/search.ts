import { type Choice, copy, emptyChoice, type Numbered, need, open, takeAlone, takeIn } from './choice.js';
import { type Act, acts } from './removals.js';

export interface Found {
  readonly acts: readonly Act[];
  readonly minutes: number;
  /** no way takes less than this */
  readonly bound: number;
  readonly optimal: boolean;
}

/** Sums of minutes in another order differ by less than this. */
const same = 1e-9;

/**
 * The cheapest complete choice: least minutes, then fewest acts, then fewest pieces off: what need not move stays.
 *
 * Method: depth-first branch and bound. What must go follows from the targets without choice, except how a piece
 * of an assembly goes: alone, or in one of the assemblies it belongs to. That is branched on. Bound: the minutes
 * decided so far, and for each piece still open the least of its own minutes and its equal share of an assembly
 * not yet paid for. The search is complete, so what it ends with is proved; cut off by `limit` (choices looked
 * at) it says the least bound among those not looked into.
 */
export function search(
  graph: Numbered,
  reach: readonly number[],
  clear: readonly number[],
  limit: number,
): Found {
  const start = emptyChoice(graph);
  for (const piece of reach) takeAlone(graph, start, piece);
  for (const piece of clear) need(graph, start, piece);
  let best = allAlone(graph, start);
  let bestActs = acts(graph, best)!;
  let cutOff = Number.POSITIVE_INFINITY;
  let looked = 0;
  const visit = (choice: Choice): void => {
    const bound = leastMinutes(graph, choice);
    if (!mayBeat(bound, choice, best)) return;
    looked += 1;
    if (looked > limit) {
      cutOff = Math.min(cutOff, bound);
      return;
    }
    const piece = choice.way.indexOf(open);
    if (piece >= 0) {
      branch(graph, choice, piece, visit);
      return;
    }
    const found = acts(graph, choice);
    if (found) [best, bestActs] = [choice, found];
  };
  visit(start);
  const bound = Math.min(best.minutes, cutOff);
  return { acts: bestActs, minutes: best.minutes, bound, optimal: bound >= best.minutes - same };
}

function mayBeat(minutes: number, { steps, leaving }: Choice, best: Choice): boolean {
  if (minutes < best.minutes - same) return true;
  if (minutes >= best.minutes + same) return false;
  return steps < best.steps || (steps === best.steps && leaving < best.leaving);
}

/** Whole first: it is the cheaper one as a rule, and an early good answer cuts off the rest. */
function branch(graph: Numbered, choice: Choice, piece: number, visit: (next: Choice) => void): void {
  for (const whole of graph.in[piece]!) {
    const next = copy(choice);
    takeIn(graph, next, piece, whole);
    visit(next);
  }
  const next = copy(choice);
  takeAlone(graph, next, piece);
  visit(next);
}

/** Everything by itself: always possible, and the first answer. */
function allAlone(graph: Numbered, start: Choice): Choice {
  const choice = copy(start);
  for (let piece = choice.way.indexOf(open); piece >= 0; piece = choice.way.indexOf(open))
    takeAlone(graph, choice, piece);
  return choice;
}

function leastMinutes(graph: Numbered, { way, whole, minutes }: Choice): number {
  let least = minutes;
  for (let piece = 0; piece < way.length; piece += 1)
    if (way[piece] === open) least += leastFor(graph, whole, piece);
  return least;
}

function leastFor(graph: Numbered, used: Uint8Array, piece: number): number {
  let least = graph.minutes[piece]!;
  for (const whole of graph.in[piece]!) {
    const { minutes, pieces } = graph.together[whole]!;
    least = Math.min(least, used[whole] ? 0 : minutes / pieces.length);
  }
  return least;
}
