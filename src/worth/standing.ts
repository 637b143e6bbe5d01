import { byId, type Catalog, type Fault, judgementOf } from '../catalog/index.js';
import { matters } from '../diagnose/index.js';
import { type Inference, infer } from '../infer/index.js';

/**
 * Where a fault stands in what it will take. `found`: seen with one's own eyes, or decided. `likely`: what was seen or
 * said has made it much likelier than in any machine of the kind. `service`: one would do it anyway, if the owner wants
 * it. `open`: it matters and nobody knows. `aside`: it neither matters nor was anything seen of it.
 */
export type Place = 'found' | 'likely' | 'service' | 'open' | 'aside';

export interface Standing {
  /** in the network */
  readonly id: string;
  readonly fault: Fault;
  /** place in the inference */
  readonly at: number;
  /** probability that it is there */
  readonly present: number;
  readonly place: Place;
}

/** From this probability on a fault counts as found, as if somebody had said so. */
const established = 0.9;

/**
 * Every fault of the network that still has to be made right, with where it stands.
 *
 * Method: the odds of each fault after all that was seen and said are held against those of the same machine with only
 * what is found by now, and nothing else seen. A fault that is there in six of ten such machines anyway is no news at
 * six of ten; what may have brought a found fault about, or may follow from it, has to be looked for and is not quoted.
 * @param standing fault of the network → fault of the catalog; by id when left out
 * @param chosen service that the owner wants done
 */
export function standingOf(
  catalog: Catalog,
  inference: Inference,
  standing: ReadonlyMap<string, string> | undefined,
  chosen: ReadonlySet<string>,
): Standing[] {
  const faults = byId(catalog.faults);
  const known = new Set(inference.network.known.filter((k) => k.present).map((k) => k.fault));
  const all = inference.faults.flatMap((id, at) => {
    const fault = faults.get(standing ? (standing.get(id) ?? '') : id);
    return fault ? [{ id, fault, at, present: inference.posterior[at]! }] : [];
  });
  const found = all.filter(
    ({ id, fault, present }) =>
      known.has(id) || chosen.has(fault.id) || (!fault.service && present >= established),
  );
  const before = unseen(
    inference,
    found.map((f) => f.id),
  );
  const judged = judge(catalog);
  return all.map((one) => {
    const { id, fault, at, present } = one;
    const place = found.includes(one) ? 'found' : judged(fault, present, before.get(id)!);
    return { id, fault, at, present: chosen.has(fault.id) ? 1 : present, place };
  });
}

/** By fault: how likely it would be with these found and nothing seen. */
function unseen({ network }: Inference, found: readonly string[]): ReadonlyMap<string, number> {
  const said = new Set(network.known.map((k) => k.fault));
  const more = found.filter((fault) => !said.has(fault)).map((fault) => ({ fault, present: true }));
  const { faults, posterior } = infer({ ...network, seen: [], known: [...network.known, ...more] });
  return new Map(faults.map((id, i) => [id, posterior[i]!]));
}

function judge(catalog: Catalog) {
  const likelyFrom = judgementOf(catalog, 'likely-from');
  const raisedBy = judgementOf(catalog, 'likely-raised');
  const seenFrom = judgementOf(catalog, 'service-seen-from');
  return (fault: Fault, now: number, before: number): Place => {
    const raised = odds(now) >= raisedBy * odds(before);
    if (raised && now >= (fault.service ? seenFrom : likelyFrom)) return 'likely';
    if (fault.service) return 'service';
    return matters(catalog, fault) ? 'open' : 'aside';
  };
}

const odds = (p: number): number => p / (1 - p);
