import { readJointReach, readReach, readWorth } from './exact/cluster-circuit.js';
import type { Reasoner } from './exact/reasoner.js';
import type { Network } from './network.js';

/** One finding, seen from the faults. */
export interface FindingView {
  readonly sign: string;
  /**
   * Probability that no present fault reaches what was seen, so that only the leak accounts for it. For a doubtful
   * reading: that the sign stands at a grade above any that a present fault reaches; a grade is a run of
   * outcomes that the reading does not tell apart. 0 for a normal finding.
   */
  readonly unexplained: number;
  /** faults, and functions by their ids, that may account for it, the likeliest first: probability that it is present and reaches what was seen */
  readonly reachedBy: readonly { readonly fault: string; readonly probability: number }[];
}

/** Reads what the reasoner's first pass left; any later run overwrites it. */
export function viewFindings(network: Network, reasoner: Reasoner): FindingView[] {
  const at = new Map(reasoner.model.gatherings.map((g, i) => [g.finding, i]));
  return network.seen.map(({ sign }, finding) => {
    const gathering = at.get(finding);
    if (gathering === undefined) return { sign, unexplained: 0, reachedBy: [] };
    return { sign, ...viewGathering(network, reasoner, gathering) };
  });
}

function viewGathering(network: Network, reasoner: Reasoner, g: number): Omit<FindingView, 'sign'> {
  const circuit = reasoner.circuits.find((m) => m.cluster.gatherings.includes(g))!;
  const { worth, beyond, causes, joint, grades } = reasoner.model.gatherings[g]!;
  const shares = readWorth(circuit, reasoner.model, g);
  const unexplained = shares.reduce(
    (sum, share, k) => (share > 0 ? sum + (share * beyond[k]!) / worth[k]! : sum),
    0,
  );
  const reachedBy = causes.map(({ fault }, c) => ({
    fault: network.faults[fault]!.id,
    probability: reasoner.posterior[fault]! * readReach(circuit, g, c, grades),
  }));
  const names = functionNames(reasoner);
  for (const [c, { levels }] of joint.entries()) {
    const probability =
      reasoner.posterior[levels[0]!]! * readJointReach(circuit, g, c, [levels.length, grades]);
    reachedBy.push({ fault: names.get(levels[0]!)!, probability });
  }
  return { unexplained, reachedBy: reachedBy.sort((a, b) => b.probability - a.probability) };
}

/** By first level. */
const functionNames = ({ model }: Reasoner): ReadonlyMap<number, string> =>
  new Map([...model.levels.of].map(([id, levels]) => [levels[0]!, id]));
