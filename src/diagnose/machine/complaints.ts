import { applies, byId, type Catalog } from '../../catalog/index.js';
import type { Network } from '../network.js';
import type { MachineFacts } from './case.js';

/**
 * The owner's complaint as a sign like any other: said, with the faults that commonly stand behind it as causes.
 *
 * The sheet ranks them without figures. The commonest two make an owner say it with chance 0.45, the next two 0.3, the
 * others 0.15; 1 in 25 owners says it of a machine with none of them. Trade judgement, no source. A complaint that was
 * not said is not evidence: owners do not tell everything.
 */
const byRank = [0.45, 0.45, 0.3, 0.3];
const fartherDown = 0.15;
const saidAnyhow = 0.04;

export const complaintSign = (complaint: string): string => `complaint/${complaint}`;

export function complaintSigns(
  catalog: Catalog,
  facts: MachineFacts,
  said: readonly string[],
  concerned: ReadonlySet<string>,
): { signs: Network['signs']; seen: Network['seen'] } {
  const known = byId(catalog.complaints);
  const heard = [...new Set(said)].filter(
    (id) => known.has(id) && applies(known.get(id)!.when, facts) !== 'no',
  );
  const signs = heard.map((id) => ({
    id: complaintSign(id),
    outcomes: ['not said', 'said'],
    leak: [1 - saidAnyhow, saidAnyhow],
    causes: known
      .get(id)!
      .commonFaults.filter((c) => concerned.has(c.fault))
      .map((c, rank) => ({ fault: c.fault, outcome: saidWith(byRank[rank] ?? fartherDown) })),
  }));
  return { signs, seen: signs.map((s) => ({ sign: s.id, outcome: 'said' })) };
}

const saidWith = (p: number): number[] => [1 - p, p];
