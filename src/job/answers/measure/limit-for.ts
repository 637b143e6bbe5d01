import { applies, type Catalog, type Facts, type Figure, type Measurement } from '../../../catalog/index.js';
import { notThisEngines } from '../../../gauge/index.js';
import { parse } from '../../../quantity/index.js';
import type { Limit, Written } from '../../entry.js';
import type { From, Job } from '../../job.js';

/** What the limits ask of the catalog. */
export type Sized = Pick<Catalog, 'measurements' | 'specs'>;

/**
 * The limit of the maker's confirmed sheet for a measure, if the sheet has one: its reject size before its range for
 * a new part. A size that only says what is nominal binds nothing.
 */
export function sheetLimit(
  job: Job,
  catalog: Sized,
  measure: Measurement,
  place?: string,
): Limit | undefined {
  const ids = [measure.rejectSpec, specAt(measure, place)].filter((id) => id !== undefined);
  for (const id of ids) {
    const limit = boundOf(job.specs.get(id), catalog.specs.find((s) => s.id === id)?.binds);
    if (limit) return limit;
  }
  return undefined;
}

/** Intake and exhaust may have a line each. */
const specAt = ({ spec, exhaustSpec }: Measurement, place = ''): string | undefined =>
  exhaustSpec !== undefined && /exh/i.test(place) ? exhaustSpec : spec;

function boundOf(spec: From<'spec'> | undefined, binds: string | undefined): Limit | undefined {
  if (!spec?.value) return undefined;
  const { value, upTo, origin } = spec;
  if (upTo) return { min: value, max: upTo, origin };
  if (binds === 'at most') return { max: value, origin };
  return binds === 'at least' ? { min: value, origin } : undefined;
}

/** What bounds this reading: the maker's sheet before anything that was written beside it by rule of thumb. */
export function standingLimit(job: Job, catalog: Sized, m: From<'measurement'>): Limit | undefined {
  const own = m.limit;
  if (own && own.origin.from !== 'rule of thumb') return own;
  const measure = catalog.measurements.find(({ id }) => id === m.measure);
  const sheet = measure && sheetLimit(job, catalog, measure, m.place);
  const fits = sheet && [sheet.min, sheet.max].every((w) => w === undefined || w.kind === m.value.kind);
  return fits ? sheet : own;
}

/** A figure of the class that a person may hold a reading against, marked as what it is. */
export interface ClassLimit {
  readonly label: string;
  readonly limit: Limit;
}

/**
 * The class figures of a measure as limits. Figures that are relative ("over nominal", "off the set gap") bind no
 * reading by themselves and are left out. In a reject figure "from" is where reject begins upward, so it is the most
 * allowed; where reject begins somewhere in a span, the strict end is taken.
 */
export function classLimits(measure: Measurement, facts: Facts): ClassLimit[] {
  const fit = (f: Figure) => applies(f.when, facts) !== 'no' && !isRelative(f);
  const rejects = measure.typicalReject.filter(fit).flatMap((f) => rejectLimit(f));
  const news = measure.typicalNew.filter(fit).flatMap((f) => newLimit(f));
  return [...rejects, ...news];
}

const isRelative = ({ of = '' }: Figure) => /^(over|under|outside|off)\b/.test(of);

function rejectLimit(f: Figure): ClassLimit[] {
  const edge = f.from ?? f.to;
  if (edge === undefined) return [];
  const at = figureOf(edge, f.unit);
  return [
    {
      label: `reject ${f.from === undefined ? 'below' : 'from'} ${at.written}${about(f)}`,
      limit: { [f.from === undefined ? 'min' : 'max']: at, origin: classOriginOf(f) },
    },
  ];
}

function newLimit(f: Figure): ClassLimit[] {
  const min = f.from === undefined ? undefined : figureOf(f.from, f.unit);
  const max = f.to === undefined ? undefined : figureOf(f.to, f.unit);
  if (min && max && min.si >= max.si) return [];
  const span =
    min && max ? `${f.from} to ${max.written}` : max ? `up to ${max.written}` : `from ${min!.written}`;
  const limit = { ...(min && { min }), ...(max && { max }), origin: classOriginOf(f) };
  return [{ label: `new ${span}${about(f)}`, limit }];
}

const about = (f: Figure) => (f.of ? ` (${f.of})` : '');

function figureOf(n: number, unit: string): Written {
  const text = `${n} ${unit}`;
  const { kind, si } = parse(text);
  return { written: text, kind, si, unit };
}

function classOriginOf(f: Figure): Limit['origin'] {
  const source = [f.origin.from, f.origin.detail].filter(Boolean).join(', ');
  return { from: 'rule of thumb', detail: `${notThisEngines}; ${source}`.slice(0, 400) };
}
