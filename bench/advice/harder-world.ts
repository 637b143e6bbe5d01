import { applies, type Catalog } from '../../src/catalog/index.js';
import { type MachineFacts, machineNetwork } from '../../src/diagnose/index.js';
import { atOdds } from '../../src/diagnose/learning/learn.js';
import { drawSigns } from './draw-signs.js';
import { boundTogether, type DrawnMachine, drawFacts, laidOut, type Next } from './machines.js';

/** How the world is other than the model that advises in it. */
export interface World {
  /** how many times as likely a fault is there as the catalog has it: its odds */
  readonly odds: (fault: string, next: Next) => number;
  /** part of the readings that show anything */
  readonly falseReadings: number;
}

/** Every fault's frequency is up to three times off, either way, anew on every machine. */
export const harder: World = { odds: (_, next) => 3 ** (2 * next() - 1), falseReadings: 0.05 };

/** An owner who tells what he noticed tells one thing in two of three cases, two in one; one in eight has it wrong. */
const owners = { tellsTwo: 1 / 3, hasItWrong: 1 / 8 };

/**
 * A machine as it comes to a shop of another world: faults come each by itself, as often as that world has them, those
 * that others bring about after them; the owner comes because he noticed something, and says it or something else. Uses and
 * releases are any that the catalog has.
 */
export function drawHarder(catalog: Catalog, next: Next, world: World = harder): DrawnMachine {
  const { facts, asTold } = anyFacts(catalog, next);
  const frequencies = new Map(
    machineNetwork(catalog, facts, []).faults.map(({ id, frequency }) => [
      id,
      atOdds(frequency, world.odds(id, next)),
    ]),
  );
  const could = catalog.complaints.filter((c) => applies(c.when, facts) !== 'no').map((c) => c.id);
  const network = boundTogether(catalog, facts, { complaints: could, frequencies });
  for (;;) {
    const present = new Set<string>();
    for (const { id, prior } of network.faults) if (next() < prior) present.add(id);
    for (const { from, to, p } of network.links) if (present.has(from) && next() < p) present.add(to);
    const levels = drawSigns(network, present, next);
    const noticed = could.filter((id) => levels.get(`complaint/${id}`) === 1);
    // nobody brings a machine on which he noticed nothing
    if (noticed.length === 0) continue;
    const complaints = told(noticed, could, next);
    const history = { complaints };
    const drawn = laidOut(catalog, { facts: asTold, history, network, present }, next);
    return { ...drawn, shows: falsely(drawn.shows, world.falseReadings, next) };
  }
}

/** Any use of the catalog that the kind of engine drives; a release that is there or not, and not known of in one of three. */
function anyFacts(catalog: Catalog, next: Next): { facts: MachineFacts; asTold: MachineFacts } {
  const drawn = drawFacts(next);
  const handheld = ['saw', 'trimmer', 'blower'];
  const uses = catalog.uses
    .map((u) => u.id)
    .filter((u) => u === 'other' || (drawn.architecture === 'two-stroke') === handheld.includes(u));
  const use = uses[Math.floor(next() * uses.length)];
  const facts = { ...drawn, use, variants: { 'automatic-release': next() < 0.5 } };
  return { facts, asTold: next() < 1 / 3 ? { ...facts, variants: {} } : facts };
}

function told(noticed: readonly string[], could: readonly string[], next: Next): string[] {
  const one = (list: readonly string[]): string => list[Math.floor(next() * list.length)]!;
  const first = next() < owners.hasItWrong ? one(could) : one(noticed);
  const second = one(noticed);
  return next() < owners.tellsTwo && second !== first ? [first, second] : [first];
}

/** A false reading shows any of the check's outcomes. */
function falsely(shows: DrawnMachine['shows'], share: number, next: Next): DrawnMachine['shows'] {
  return (check, spoiled) => {
    const seen = shows(check, spoiled);
    if (next() >= share) return seen;
    const { outcomes } = check.check;
    return [outcomes[Math.floor(next() * outcomes.length)]!.id];
  };
}
