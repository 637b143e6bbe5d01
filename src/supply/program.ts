import type { CheckedBasket } from './basket-problem.js';

type Offer = CheckedBasket['offers'][number];
type Supplier = CheckedBasket['suppliers'][number];

/** One price of an offer: bought `least` to `most` times, or not. */
export interface Line {
  readonly name: string;
  readonly offer: Offer;
  readonly price: number;
  readonly least: number;
  readonly most: number;
}

/** The basket as an integer program in the text form that solvers read (CPLEX LP format). */
export interface Program {
  readonly text: string;
  readonly lines: readonly Line[];
}

/** Sums that grow while the program is written. */
interface Writing {
  readonly cost: string[];
  readonly rows: string[];
  readonly bounds: string[];
  readonly general: string[];
  readonly binary: string[];
}

/**
 * Whole numbers of each offer that cover the need at the least price with shipping and delay.
 *
 * A supplier gets yes-or-no variables only if it has a minimum, shipping, or the number of suppliers is limited;
 * an offer only if its lead time or a price break asks for one. A plain covering problem stays plain.
 */
export function programOf(problem: CheckedBasket, mostSuppliers?: number): Program {
  const to: Writing = { cost: [], rows: [], bounds: [], general: [], binary: [] };
  const lines = problem.offers.flatMap((offer, i) => linesOf(problem, offer, i));
  for (const line of lines) writeLine(to, line);
  writeNeed(to, problem, lines);
  writeOneBreak(to, problem, lines);
  for (const [s, supplier] of problem.suppliers.entries())
    writeSupplier(to, problem, supplier, s, lines, mostSuppliers !== undefined);
  if (mostSuppliers !== undefined)
    to.rows.push(`${sum(problem.suppliers.map((_, s) => term(1, `y${s}`)))} <= ${mostSuppliers}`);
  writeDelay(to, problem, lines);
  return { text: textOf(to), lines };
}

/** Where the need is covered and the highest threshold of the supplier is passed, more of it can only cost. */
function mostOf(problem: CheckedBasket, { contains, supplier, price, breaks }: Offer): number {
  const { minimum, shipping } = problem.suppliers.find(({ id }) => id === supplier)!;
  const covers = Object.entries(contains).map(([part, n]) => Math.ceil((problem.need[part] ?? 0) / n));
  const threshold = Math.max(minimum, ...shipping.map(({ from }) => from));
  const cheapest = Math.min(price, ...breaks.map((step) => step.price));
  const padding = cheapest > 0 ? Math.ceil(threshold / cheapest) : 0;
  // a price break can make more cheaper than fewer
  return Math.max(0, ...covers) + padding + Math.max(0, ...breaks.map(({ from }) => from));
}

function linesOf(problem: CheckedBasket, offer: Offer, i: number): Line[] {
  const most = mostOf(problem, offer);
  const steps = [{ from: 1, price: offer.price }, ...offer.breaks.filter(({ from }) => from > 1)];
  const first = offer.breaks.find(({ from }) => from === 1);
  if (first) steps[0] = first;
  return steps.map(({ from, price }, k) => ({
    name: `x${i}_${k}`,
    offer,
    price,
    least: from,
    most: Math.min(most, (steps[k + 1]?.from ?? Number.POSITIVE_INFINITY) - 1),
  }));
}

function writeLine({ cost, bounds, general }: Writing, { name, price, most }: Line): void {
  cost.push(term(price, name));
  bounds.push(`0 <= ${name} <= ${most}`);
  general.push(name);
}

function writeNeed({ rows }: Writing, { need }: CheckedBasket, lines: readonly Line[]): void {
  for (const [part, wanted] of Object.entries(need)) {
    if (wanted === 0) continue;
    const holding = lines.filter(({ offer }) => offer.contains[part]);
    rows.push(`${sum(holding.map(({ name, offer }) => term(offer.contains[part]!, name)))} >= ${wanted}`);
  }
}

/** One price of an offer at a time, and only in its span. */
function writeOneBreak({ rows, binary }: Writing, { offers }: CheckedBasket, lines: readonly Line[]): void {
  for (const offer of offers) {
    const steps = lines.filter((line) => line.offer === offer);
    if (steps.length < 2) continue;
    for (const { name, least, most } of steps) {
      binary.push(`b${name}`);
      rows.push(`${name} - ${most} b${name} <= 0`, `${name} - ${least} b${name} >= 0`);
    }
    rows.push(`${sum(steps.map(({ name }) => term(1, `b${name}`)))} <= 1`);
  }
}

function writeSupplier(
  to: Writing,
  problem: CheckedBasket,
  supplier: Supplier,
  s: number,
  lines: readonly Line[],
  counted: boolean,
): void {
  const { shipping, minimum, id } = supplier;
  const own = lines.filter(({ offer }) => offer.supplier === id);
  const costly = shipping.some(({ cost }) => cost > 0);
  if (!costly && minimum === 0 && !counted) return;
  const used = `y${s}`;
  to.binary.push(used);
  for (const { name, most } of own) to.rows.push(`${name} - ${most} ${used} <= 0`);
  writeUnless(to, problem, lines, used, ({ offer }) => offer.supplier === id);
  const goods = own.map(({ name, price }) => term(price, name));
  if (minimum > 0) to.rows.push(`${sum(goods)} - ${decimal(minimum)} ${used} >= 0`);
  const wide = own.reduce((all, { price, most }) => all + price * most, 0);
  if (costly) writeShipping(to, shipping, s, goods, { cent: smallestMoney(problem), wide });
}

function writeShipping(
  { cost, rows, binary }: Writing,
  shipping: Supplier['shipping'],
  s: number,
  goods: readonly string[],
  { cent, wide }: { readonly cent: number; readonly wide: number },
): void {
  const tier = (k: number) => `t${s}_${k}`;
  for (const [k, step] of shipping.entries()) {
    binary.push(tier(k));
    cost.push(term(step.cost, tier(k)));
  }
  rows.push(`${sum(shipping.map((_, k) => term(1, tier(k))))} - y${s} = 0`);
  rows.push(`${sum(goods)} ${shipping.map(({ from }, k) => `- ${decimal(from)} ${tier(k)}`).join(' ')} >= 0`);
  // a cheaper tier below a dearer one must not be claimed above its end; where tiers fall, nobody would
  for (const [k, step] of shipping.entries()) {
    const end = shipping[k + 1];
    if (!end || shipping.slice(k + 1).every(({ cost: later }) => later <= step.cost)) continue;
    rows.push(`${sum(goods)} + ${decimal(wide)} ${tier(k)} <= ${decimal(wide + end.from - cent)}`);
  }
}

/**
 * Without these offers the others must cover the need by themselves. That follows from the rest for whole numbers;
 * said outright it cuts the solver's search to a fraction.
 */
function writeUnless(
  { rows }: Writing,
  { need }: CheckedBasket,
  lines: readonly Line[],
  decides: string,
  theirs: (line: Line) => boolean,
): void {
  for (const [part, wanted] of Object.entries(need)) {
    const holding = lines.filter(({ offer }) => wanted > 0 && offer.contains[part]);
    if (!holding.some(theirs)) continue;
    const others = holding.filter((line) => !theirs(line));
    const terms = others.map(({ name, offer }) => term(Math.min(wanted, offer.contains[part]!), name));
    rows.push(`${sum([...terms, term(wanted, decides)])} >= ${wanted}`);
  }
}

/** The smallest step in which prices differ: what lies just below a threshold. */
function smallestMoney({ offers }: CheckedBasket): number {
  const prices = offers.flatMap(({ price, breaks }) => [price, ...breaks.map((step) => step.price)]);
  const places = Math.max(0, ...prices.map((price) => decimal(price).split('.')[1]?.length ?? 0));
  return 10 ** -Math.min(places, 4);
}

/** The last delivery counts: a yes-or-no for each lead time, "something takes at least this long". */
function writeDelay(to: Writing, problem: CheckedBasket, lines: readonly Line[]): void {
  const { delayPerDay } = problem;
  const days = [...new Set(lines.map(({ offer }) => offer.leadDays))]
    .filter((d) => d > 0)
    .sort((a, b) => a - b);
  if (delayPerDay === 0 || days.length === 0) return;
  for (const [k, day] of days.entries()) {
    to.binary.push(`d${k}`);
    to.cost.push(term(delayPerDay * (day - (days[k - 1] ?? 0)), `d${k}`));
    if (k > 0) to.rows.push(`d${k - 1} - d${k} >= 0`);
    for (const { name, most, offer } of lines)
      if (offer.leadDays === day) to.rows.push(`${name} - ${most} d${k} <= 0`);
    writeUnless(to, problem, lines, `d${k}`, ({ offer }) => offer.leadDays >= day);
  }
}

const term = (factor: number, name: string) => `+ ${decimal(factor)} ${name}`;
const sum = (terms: readonly string[]) => (terms.length === 0 ? '0 nothing' : terms.join('\n  '));

/** Plain digits: the text form knows no exponents everywhere. */
function decimal(value: number): string {
  const text = String(value);
  return text.includes('e') ? value.toFixed(12) : text;
}

function textOf({ cost, rows, bounds, general, binary }: Writing): string {
  return [
    'Minimize',
    ` obj: ${sum(cost)}`,
    'Subject To',
    ...rows.map((row, i) => ` c${i}: ${row}`),
    'Bounds',
    ...bounds.map((bound) => ` ${bound}`),
    ' 0 <= nothing <= 0',
    'General',
    ...general.map((name) => ` ${name}`),
    ...(binary.length > 0 ? ['Binary', ...binary.map((name) => ` ${name}`)] : []),
    'End',
    '',
  ].join('\n');
}
