import { z } from 'zod';
import { SupplyError } from './error.js';

/**
 * The open form of what is to be bought and who sells it. All money in one currency.
 *
 * - `need`: part and number.
 * - An offer is bought a whole number of times; a kit `contains` several parts. `breaks`: from so many of it on,
 *   each costs that price instead. `leadDays` left out: at hand at once.
 * - A supplier takes orders from `minimum` on, goods only. `shipping` depends on the goods ordered there: the tier
 *   with the greatest `from` not above them. The first tier begins at 0; no tiers: nothing for shipping.
 * - `delayPerDay`: what a day of waiting for the last delivery is worth.
 */
const id = z.string().min(1).max(200);
const money = z.number().min(0).max(1e7);
const number = z.number().int().min(1).max(1_000_000);

export const basketProblemSchema = z.object({
  need: z.record(id, z.number().int().min(0).max(1_000_000)),
  offers: z
    .array(
      z.object({
        id,
        supplier: id,
        price: money,
        contains: z.record(id, number),
        leadDays: z.number().min(0).max(10_000).default(0),
        breaks: z.array(z.object({ from: number, price: money })).default([]),
      }),
    )
    .max(20_000),
  suppliers: z
    .array(
      z.object({
        id,
        minimum: money.default(0),
        shipping: z.array(z.object({ from: money, cost: money })).default([]),
      }),
    )
    .max(1000),
  delayPerDay: money.default(0),
});

/** As written by a person or another program: what has a default may be left out. */
export type BasketProblem = z.input<typeof basketProblemSchema>;
/** Checked, with all defaults filled in; tiers and breaks rising. */
export type CheckedBasket = z.output<typeof basketProblemSchema>;

/** The problem, or a SupplyError that names the first place where it is wrong. */
export function readBasketProblem(given: unknown): CheckedBasket {
  const parsed = basketProblemSchema.safeParse(given);
  if (!parsed.success) throw shapeError(parsed.error);
  const problem = rising(parsed.data);
  uniqueIds(problem.offers, 'offers');
  const suppliers = uniqueIds(problem.suppliers, 'suppliers');
  for (const [i, { supplier, breaks }] of problem.offers.entries()) {
    if (!suppliers.has(supplier))
      throw new SupplyError('unknown', `there is no supplier “${supplier}”`, {
        place: `offers[${i}].supplier`,
        value: supplier,
      });
    checkSteps(breaks, `offers[${i}].breaks`);
  }
  for (const [i, { shipping }] of problem.suppliers.entries())
    checkTiers(shipping, `suppliers[${i}].shipping`);
  refuseUnoffered(problem);
  return problem;
}

function shapeError(error: z.ZodError): SupplyError {
  const first = error.issues[0]!;
  const place = first.path.map((p) => (typeof p === 'number' ? `[${p}]` : `.${String(p)}`)).join('');
  return new SupplyError('shape', first.message, { place: place.replace(/^\./, '') || 'the problem' });
}

function rising(problem: CheckedBasket): CheckedBasket {
  const byFrom = <T extends { from: number }>(list: readonly T[]) => list.toSorted((a, b) => a.from - b.from);
  return {
    ...problem,
    offers: problem.offers.map((offer) => ({ ...offer, breaks: byFrom(offer.breaks) })),
    suppliers: problem.suppliers.map((supplier) => ({ ...supplier, shipping: byFrom(supplier.shipping) })),
  };
}

function uniqueIds(items: readonly { readonly id: string }[], list: string): Set<string> {
  const seen = new Set<string>();
  for (const [i, { id: name }] of items.entries()) {
    if (seen.has(name))
      throw new SupplyError('duplicate', `“${name}” is there twice`, {
        place: `${list}[${i}].id`,
        value: name,
      });
    seen.add(name);
  }
  return seen;
}

function checkTiers(tiers: readonly { readonly from: number }[], place: string): void {
  if (tiers.length > 0 && tiers[0]!.from !== 0)
    throw new SupplyError('shape', `nothing says what shipping costs below ${tiers[0]!.from}`, {
      place,
      value: tiers[0]!.from,
      bound: 'the first tier from 0',
    });
  checkSteps(tiers, place);
}

function checkSteps(steps: readonly { readonly from: number }[], place: string): void {
  const twice = steps.find((step, i) => i > 0 && step.from === steps[i - 1]!.from);
  if (twice)
    throw new SupplyError('duplicate', `two steps begin at ${twice.from}`, { place, value: twice.from });
}

function refuseUnoffered({ need, offers }: CheckedBasket): void {
  const offered = new Set(offers.flatMap(({ contains }) => Object.keys(contains)));
  const missing = Object.keys(need).find((part) => need[part]! > 0 && !offered.has(part));
  if (missing !== undefined)
    throw new SupplyError('not-offered', `nobody offers “${missing}”`, {
      place: `need.${missing}`,
      value: missing,
    });
}
