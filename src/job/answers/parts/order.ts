import { price } from '../../../phrase/index.js';
import { type Basket, type BasketProblem, exactMoney } from '../../../supply/index.js';
import type { Body, EntryKind } from '../../entry.js';
import type { From, Job, Shop } from '../../job.js';
import type { Answers } from '../answers.js';
import { wallMinute, wallTime } from '../shop/working-hours.js';

/** What is to be bought now, as the solver takes it, and what had to be left out of it, in words. */
export interface BasketAsked {
  readonly problem: BasketProblem;
  readonly currency: string;
  /** parts that are wanted and that no offer holds */
  readonly unoffered: readonly From<'part'>[];
  readonly leftOut: readonly string[];
}

export interface BasketChoice {
  /** the least sure fit that is bought; usually "likely" */
  readonly fit?: Body<'offer'>['fit'];
  /** only these parts, by handle */
  readonly only?: readonly string[];
  /** offers that have been tried, by handle */
  readonly without?: readonly string[];
}

/** Parts that have still to be ordered: wanted, or come and found wrong. */
export function toBuy(job: Job): From<'part'>[] {
  return [...job.parts.values()].filter((p) => p.state === 'wanted' || p.state === 'mismatch');
}

/** The least sure first. */
const fits: readonly Body<'offer'>['fit'][] = ['unsure', 'likely', 'sure'];

/** The wanted parts, the offers for them and the suppliers’ terms as one problem for the solver. */
export function basketProblemOf({ job, shop, toBuy }: Answers, choice: BasketChoice): BasketAsked {
  const currency = shop.settings.currency ?? '$';
  const leftOut: string[] = [];
  const wanted = toBuy.filter(({ part }) => !choice.only || choice.only.includes(part));
  const offers = offersFor(job, shop, choice, leftOut);
  const offered = new Set(offers.flatMap(({ contains }) => Object.keys(contains)));
  return {
    problem: {
      need: Object.fromEntries(
        wanted.filter(({ part }) => offered.has(part)).map(({ part, count }) => [part, count]),
      ),
      offers: offers.map(({ offer, supplier, price, contains, leadDays, breaks }) => ({
        id: offer,
        supplier,
        price: price.amount,
        contains,
        ...(leadDays !== undefined && { leadDays }),
        ...(breaks && { breaks }),
      })),
      suppliers: shop.suppliers.map(({ supplier, minimum, shipping }) => ({
        id: supplier,
        ...(minimum !== undefined && { minimum }),
        shipping:
          shipping.length > 0 && shipping.every(({ from }) => from > 0)
            ? [{ from: 0, cost: 0 }, ...shipping]
            : shipping,
      })),
      delayPerDay: delayPerDay(shop, leftOut),
    },
    currency,
    unoffered: wanted.filter(({ part }) => !offered.has(part)),
    leftOut,
  };
}

function offersFor(job: Job, shop: Shop, choice: BasketChoice, leftOut: string[]): From<'offer'>[] {
  const currency = shop.settings.currency ?? '$';
  const suppliers = new Set(shop.suppliers.map(({ supplier }) => supplier));
  const least = fits.indexOf(choice.fit ?? 'likely');
  return [...job.offers.values()].filter((offer) => {
    if (offer.withdrawn || choice.without?.includes(offer.offer)) return false;
    if (fits.indexOf(offer.fit) < least) {
      leftOut.push(`${offer.name}: not sure that it fits`);
      return false;
    }
    if (offer.price.currency !== currency) {
      leftOut.push(`${offer.name}: in ${offer.price.currency}, the shop counts in ${currency}`);
      return false;
    }
    if (!suppliers.has(offer.supplier)) {
      leftOut.push(`${offer.name}: the shop has no supplier “${offer.supplier}” any more`);
      return false;
    }
    return true;
  });
}

function delayPerDay(shop: Shop, leftOut: string[]): number {
  const written = shop.settings['delay-per-day']?.trim() ?? '';
  const value = Number(written.replace(shop.settings.currency ?? '$', '').trim());
  if (value >= 0 && Number.isFinite(value)) return value;
  leftOut.push(`the value of a day, “${written}”, is not a number`);
  return 0;
}

/** A basket as a person orders it: one list a supplier. */
export interface Orders {
  readonly total: number;
  readonly goods: number;
  readonly shipping: number;
  /** what the waiting is worth; not paid to anybody */
  readonly delay: number;
  /** the day of the last delivery */
  readonly arrives: string;
  readonly orders: readonly SupplierOrder[];
  /** what comes beyond the need, by name */
  readonly leftOver: readonly { readonly name: string; readonly count: number }[];
  readonly optimal: boolean;
}

export interface SupplierOrder {
  readonly supplier: string;
  readonly name: string;
  readonly arrives: string;
  readonly goods: number;
  readonly lines: readonly {
    readonly offer: From<'offer'>;
    readonly count: number;
    readonly each: number;
  }[];
}

/** `today` is a date, "2026-11-25". */
export function ordersOf({ job, shop }: Answers, basket: Basket, today: string): Orders {
  const bought = basket.lines.flatMap(({ offer: id, count }) => {
    const offer = job.offers.get(id);
    return offer ? [{ offer, count, each: priceAt(offer, count) }] : [];
  });
  const orders = basket.suppliers.map((supplier): SupplierOrder => {
    const lines = bought.filter(({ offer }) => offer.supplier === supplier);
    return {
      supplier,
      name: shop.suppliers.find((s) => s.supplier === supplier)?.name ?? supplier,
      arrives: dayAfter(today, Math.max(0, ...lines.map(({ offer }) => offer.leadDays ?? 0))),
      goods: exactMoney(lines.map(({ each, count }) => each * count)),
      lines,
    };
  });
  const { total, goods, shipping, delay, days, leftOver, optimal } = basket;
  return {
    total,
    goods,
    shipping,
    delay,
    arrives: dayAfter(today, days),
    orders,
    leftOver: Object.entries(leftOver).map(([part, count]) => ({ name: partName(job, part), count })),
    optimal,
  };
}

export function partName(job: Job, part: string): string {
  return job.parts.get(part)?.name ?? part.replaceAll('-', ' ');
}

/** The price of each when so many are bought at once. */
function priceAt({ price, breaks = [] }: From<'offer'>, count: number): number {
  const reached = breaks.filter(({ from }) => from <= count).sort((a, b) => b.from - a.from)[0];
  return reached?.price ?? price.amount;
}

/** A date so many days on, part of a day counted as a whole one. */
export function dayAfter(date: string, days: number): string {
  return wallTime(wallMinute(`${date}T00:00`) + Math.ceil(days) * 24 * 60).slice(0, 10);
}

interface Share {
  readonly offer: From<'offer'>;
  readonly supplier: string;
  readonly arrives: string;
  readonly pieces: number;
  readonly cost: number;
}

/** The lines of the log that say that a basket was ordered: each part with its due day, and a note for each order. */
export function orderEntries(
  answers: Answers,
  basket: Basket,
  today: string,
): { kind: EntryKind; body: Body<'part'> | Body<'note'> }[] {
  const { job, shop } = answers;
  const { orders } = ordersOf(answers, basket, today);
  const currency = shop.settings.currency ?? '$';
  const shares = sharesOf(answers.toBuy, orders, today);
  const parts = [...shares].map(([part, list]) => ({
    kind: 'part' as const,
    body: orderedPart(job.parts.get(part)!, list, currency),
  }));
  const notes = orders.map((order) => ({
    kind: 'note' as const,
    body: { words: orderWords(order, currency), stage: 'parts' as const },
  }));
  return [...parts, ...notes];
}

/** Which offer brings how many of each wanted part; a kit’s price is shared evenly over the wanted pieces in it. */
function sharesOf(
  wanted: readonly From<'part'>[],
  orders: readonly SupplierOrder[],
  today: string,
): Map<string, Share[]> {
  const left = new Map(wanted.map(({ part, count }) => [part, count]));
  const shares = new Map<string, Share[]>();
  for (const { name: supplier, lines } of orders)
    for (const { offer, count, each } of lines) {
      const taken = Object.entries(offer.contains).flatMap(([part, n]) => {
        const pieces = Math.min(left.get(part) ?? 0, n * count);
        left.set(part, (left.get(part) ?? 0) - pieces);
        return pieces > 0 ? [{ part, pieces }] : [];
      });
      const all = taken.reduce((sum, { pieces }) => sum + pieces, 0);
      const arrives = dayAfter(today, offer.leadDays ?? 0);
      for (const { part, pieces } of taken) {
        const share = { offer, supplier, arrives, pieces, cost: (each * count * pieces) / all };
        shares.set(part, [...(shares.get(part) ?? []), share]);
      }
    }
  return shares;
}

/** The price is rounded to a hundredth of the smallest coin: each of three for 10.00 costs 3.3333. */
function orderedPart(part: From<'part'>, shares: readonly Share[], currency: string): Body<'part'> {
  const pieces = shares.reduce((sum, share) => sum + share.pieces, 0);
  const cost = shares.reduce((sum, share) => sum + share.cost, 0);
  const last = shares.reduce((a, b) => (b.arrives > a.arrives ? b : a));
  const { entry: _entry, at: _at, by: _by, number: _number, words: _words, ...body } = part;
  const number = shares.length === 1 ? shares[0]!.offer.number : undefined;
  const kit = shares.find(({ offer }) => Object.keys(offer.contains).length > 1);
  return {
    ...body,
    state: 'ordered',
    supplier: [...new Set(shares.map(({ supplier }) => supplier))].join(', ').slice(0, 120),
    offer: last.offer.offer,
    price: { amount: Number((cost / pieces).toFixed(4)), currency },
    due: last.arrives,
    ...(number !== undefined && { number }),
    ...(kit && { words: `in the kit ${kit.offer.name}` }),
  };
}

function orderWords({ name, lines, goods, arrives }: SupplierOrder, currency: string): string {
  const items = lines.map(({ offer, count }) =>
    [count > 1 && `${count} ×`, offer.name, offer.number && `(${offer.number})`].filter(Boolean).join(' '),
  );
  return `Ordered from ${name}: ${items.join(', ')}. Goods ${price(currency, goods)}, expected ${arrives}.`;
}
