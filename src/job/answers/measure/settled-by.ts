import type { Measurement } from '../../../catalog/index.js';
import { type Limit as GaugeLimit, noNumberOfRepeats, settle, standardU } from '../../../gauge/index.js';
import { findUnit, of, type Quantity, show } from '../../../quantity/index.js';
import type { From, Shop } from '../../job.js';
import { gaugeInstrument, inUnit, type ReadingGroup } from './readings.js';

/** What would settle a reading that cannot be decided, if its value stays where it is. */
export interface SettledBy {
  /** largest standard uncertainty that decides, in the unit of the reading; 0 when none would */
  readonly neededU: number;
  readonly inShop: readonly From<'instrument'>[];
  /** readings in all; only where repeats were taken and their scatter is known */
  readonly repeats?: number;
  readonly words: string;
}

/** For a single reading or a mean of repeats against a limit in `unit`. */
export function settledBy(group: ReadingGroup, limit: GaugeLimit, unit: string, tools: Tools): SettledBy {
  const { value, u } = inUnit(group, unit);
  const factor = findUnit(unit).factor;
  const many = group.readings.length > 1;
  const systematic = group.instrument ? standardU(gaugeInstrument(group.instrument)) / factor : 0;
  const scatter = group.scatter / factor;
  const found = settle({ value, u, limit, unit, ...(many && { scatter, systematic }) });
  const repeats = found.repeats === noNumberOfRepeats ? undefined : found.repeats;
  const more = repeats !== undefined && repeats > group.readings.length ? repeats : undefined;
  return settledWith(found.neededU, unit, tools, more);
}

/** What could measure it: the shop's instruments, and what the catalog says measures this. */
export interface Tools {
  readonly shop: Shop | undefined;
  readonly measure: Measurement | undefined;
  readonly kind: Quantity['kind'];
}

/** For any figure: the tools whose standard uncertainty is at most `neededU`. */
export function settledWith(neededU: number, unit: string, tools: Tools, repeats?: number): SettledBy {
  const factor = findUnit(unit).factor;
  const fine = (u: number) => neededU > 0 && u <= neededU * factor * (1 + 1e-9);
  const inShop = (tools.shop?.instruments ?? [])
    .filter((i) => i.uncertainty.kind === tools.kind && !i.retired && measures(i.name, tools.measure))
    .filter((i) => fine(standardU(gaugeInstrument(i))))
    .sort((a, b) => b.uncertainty.si - a.uncertainty.si);
  const elsewhere = catalogTools(tools.measure).filter((t) => fine(t.expanded.si / 2));
  const words = [toolWords(neededU, unit, inShop, elsewhere), repeatWords(repeats)].filter(Boolean).join(' ');
  return { neededU, inShop, ...(repeats !== undefined && { repeats }), words };
}

interface CatalogTool {
  readonly name: string;
  readonly expanded: Quantity;
}

function catalogTools(measure: Measurement | undefined): CatalogTool[] {
  return (measure?.instruments ?? []).flatMap(({ name, uncertainty }) =>
    uncertainty?.to === undefined ? [] : [{ name, expanded: of(uncertainty.to, uncertainty.unit) }],
  );
}

const idle = new Set([
  'and',
  'the',
  'for',
  'with',
  'from',
  'gauge',
  'gage',
  'set',
  'leaf',
  'taken',
  'new',
  'old',
]);
const tokensOf = (words: string) =>
  words
    .toLowerCase()
    .split(/[^a-z]+/)
    .map((word) => word.replace(/s$/, ''))
    .filter((word) => word.length > 2 && !idle.has(word));

/**
 * Whether a tool of this name measures such a thing: it has every telling word of one of the ways that the catalog
 * names for it. A gauge for holes is none for shafts, so that word must stand on both sides.
 */
function measures(name: string, measure: Measurement | undefined): boolean {
  if (!measure) return true;
  const mine = new Set(tokensOf(name));
  const ways = measure.instruments.flatMap((i) => i.name.split(/,|;| or /)).map(tokensOf);
  return ways.some(
    (way) =>
      way.length > 0 && way.every((word) => mine.has(word)) && mine.has('bore') === way.includes('bore'),
  );
}

function toolWords(
  neededU: number,
  unit: string,
  inShop: readonly From<'instrument'>[],
  elsewhere: readonly CatalogTool[],
): string {
  if (neededU === 0) return 'It lies on the limit itself: no tool settles it there.';
  const [mine] = inShop;
  if (mine) return `The ${mine.name} (± ${mine.uncertainty.written}) would settle it.`;
  const [other] = elsewhere;
  if (other)
    return `Nothing on the shop’s list is fine enough; a ${other.name} (± ${show(other.expanded)}) would settle it.`;
  return `Nothing on the shop’s list is fine enough: it takes ± ${downTo2(2 * neededU)} ${unit}.`;
}

/** Two significant digits, never above x: a bound must stay under. */
function downTo2(x: number): string {
  const step = 10 ** (Math.floor(Math.log10(x)) - 1);
  return String(Number((Math.floor(x / step + 1e-9) * step).toPrecision(2)));
}

const repeatWords = (repeats: number | undefined) =>
  repeats === undefined ? '' : `Or ${repeats} readings in all, if they go on scattering like these.`;
