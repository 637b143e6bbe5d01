import { applies, byId, type Catalog, type Complaint } from '../../catalog/index.js';
import type { Network } from '../../infer/index.js';
import type { MachineFacts } from './case.js';
import { spoilersOf } from './functions.js';

export const complaintSign = (complaint: string): string => `complaint/${complaint}`;

/**
 * The owner's complaints as signs like any other: said, with the faults that commonly stand behind them as causes. The
 * sheet ranks them; the catalog has the chances by rank. A complaint that was not said is not evidence: owners do not
 * tell everything.
 */
export function complaintSigns(
  catalog: Catalog,
  facts: MachineFacts,
  said: readonly string[],
  concerned: ReadonlySet<string>,
  functionAt: (id: string) => string,
): { signs: Network['signs']; seen: Network['seen'] } {
  const known = byId(catalog.complaints);
  const heard = [...new Set(said)].filter(
    (id) => known.has(id) && applies(known.get(id)!.when, facts) !== 'no',
  );
  const signs = heard.map((id) => complaintAsSign(catalog, known.get(id)!, concerned, functionAt));
  return { signs, seen: signs.map((s) => ({ sign: s.id, outcome: 'said' })) };
}

function complaintAsSign(
  catalog: Catalog,
  complaint: Complaint,
  concerned: ReadonlySet<string>,
  functionAt: (id: string) => string,
): Network['signs'][number] {
  const chances = catalog.complaintChances[0];
  if (!chances) throw new RangeError('no pack gives the chances of complaints');
  const { byRank, fartherDown, saidAnyhow } = chances;
  return {
    id: complaintSign(complaint.id),
    outcomes: ['not said', 'said'],
    leak: saidWith(saidAnyhow),
    causes: [
      ...complaint.commonFaults
        .filter((c) => concerned.has(c.fault))
        .map(({ fault, chance }, rank) => ({
          fault,
          outcome: saidWith(chance ?? byRank[rank] ?? fartherDown),
        })),
      ...ofFunctions(catalog, complaint, functionAt),
    ],
  };
}

function ofFunctions(catalog: Catalog, { id }: Complaint, functionAt: (id: string) => string) {
  return catalog.functions.flatMap((of) => {
    const said = (of.saidBy ?? []).filter((s) => s.complaint === id);
    if (said.length === 0) return [];
    const chance = (state: string): number => said.find((s) => s.state === state)?.chance ?? 0;
    return [{ function: functionAt(of.id), outcome: of.states.slice(1).map((s) => saidWith(chance(s.id))) }];
  });
}

const saidWith = (p: number): number[] => [1 - p, p];

/** The faults that stand behind a complaint, by themselves or by a function that they spoil. */
export function behindComplaint(
  catalog: Catalog,
  facts: MachineFacts,
  id: string,
  concerned: ReadonlySet<string>,
): ReadonlySet<string> {
  const named =
    byId(catalog.complaints)
      .get(id)
      ?.commonFaults.map((f) => f.fault) ?? [];
  const spoiled = catalog.functions
    .filter((of) => of.saidBy?.some((s) => s.complaint === id))
    .flatMap((of) => spoilersOf(of, facts, concerned).map((s) => s.fault));
  return new Set([...named, ...spoiled]);
}
