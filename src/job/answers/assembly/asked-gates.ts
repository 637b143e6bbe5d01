import { applies, byId, type Gate } from '../../../catalog/index.js';
import type { From } from '../../job.js';
import type { Answers } from '../answers.js';
import { piecesOf } from '../steps/taken.js';

/** A gate of the assembly: what must be proved before the next piece hides it. */
export interface AskedGate {
  /** with what it demands of this engine, in words, and the checks that this engine can have */
  readonly gate: Omit<Gate, 'demands'> & { readonly demands: readonly string[] };
  /** the handle under which the answer is logged */
  readonly step: string;
  /** not yet: its pieces are not all back; asked: to be proved now; passed: proved since they went back */
  readonly state: 'not yet' | 'asked' | 'passed';
  /** the answer, when there is one */
  readonly answer?: From<'step'>;
}

const gateHandle = (id: string): string => `gate-${id}`;

/**
 * The gates of what was taken off, in the order of the catalog. One whose pieces came off again after it was passed
 * is asked again. Gates at the very end (plugs and leftovers counted) are worked out from the counts, see `tally`.
 */
export function assemblyGates(answers: Answers): AskedGate[] {
  const { job, catalog, takenOff, putBack, offNow: off, engine } = answers;
  const pieces = new Map(takenOff.map((s) => [s.step, piecesOf(answers, s)]));
  const ever = new Set([...pieces.values()].flat());
  // bolts shared with another piece are not tight before that one is on too
  const sharing = (gate: Gate): string[] =>
    [...answers.components.values()]
      .filter((c) => c.sharesBoltsOf !== undefined && gate.after.includes(c.sharesBoltsOf))
      .map((c) => c.id);
  return catalog.gates
    .filter(
      (gate) => gate.stage === 'assembly' && engine.concerns(gate) && gate.after.some((id) => ever.has(id)),
    )
    .map((gate): AskedGate => {
      const step = gateHandle(gate.id);
      const answer = job.steps.get(step);
      const back = backSince(putBack, gate, pieces);
      const passed = answer?.state === 'done' && Date.parse(answer.at) >= back;
      const state = [...gate.after, ...sharing(gate)].some((id) => off.has(id))
        ? 'not yet'
        : passed
          ? 'passed'
          : 'asked';
      return { gate: onThisEngine(answers, gate), step, state, ...(answer && { answer }) };
    });
}

function onThisEngine({ catalog, engine }: Answers, gate: Gate): AskedGate['gate'] {
  const { demands, checks, ...rest } = gate;
  const known = byId(catalog.checks);
  const own = checks?.filter((id) => engine.concerns(known.get(id)!));
  return {
    ...rest,
    demands: demands.filter(({ when }) => applies(when, engine.facts) !== 'no').map(({ words }) => words),
    ...(own && own.length > 0 && { checks: own }),
  };
}

/** When the last of a gate's pieces went back. */
function backSince(
  putBack: Answers['putBack'],
  gate: Gate,
  pieces: ReadonlyMap<string, readonly string[]>,
): number {
  const times = putBack
    .filter((s) => (pieces.get(s.putsBack ?? '') ?? []).some((id) => gate.after.includes(id)))
    .map((s) => Date.parse(s.at));
  return Math.max(Number.NEGATIVE_INFINITY, ...times);
}
