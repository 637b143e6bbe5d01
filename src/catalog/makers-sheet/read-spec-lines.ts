import type { Origin } from '../../quantity/index.js';
import type { Catalog, Spec } from '../catalog.js';
import { byId } from '../lookup.js';
import { type SpecIndex, specIndex } from './label.js';
import { type Cut, cutsOf, itemsOf, likelyCut, longestLine, type SpecLine, tidyLine } from './line.js';
import { agree, printed, readSpecValue, type SpecValue } from './value.js';

/**
 * What the lines of a maker's sheet say, typed or pasted. Never throws, whatever the text.
 *
 * Tabs, dot leaders, colons, letter case and the order of a label's words do not count. A line whose label is not
 * exactly one the vocabulary knows comes back with its nearest candidates and nothing else; a value of the wrong
 * kind or out of all proportion comes back with its problem in words. A line that says two things ("oil SAE 30,
 * 20 fl oz") gives two entries with the same `line`. Blank lines give none. Past 500 lines one entry says how many are left.
 *
 * Example: "head bolts 140 in-lb" → spec head-bolt-torque, 140 in-lb.
 */
export function readSpecLines(
  catalog: Catalog,
  text: string,
  origin: Origin = { from: "maker's sheet" },
): readonly SpecLine[] {
  const reader = makeReader(catalog, origin);
  const lines = text
    .split(/\r\n|[\n\r\u2028\u2029]/)
    .map((line) => line.trim())
    .filter((line) => line !== '');
  const read = lines.slice(0, mostLines).flatMap((line) => readLine(reader, line));
  const left = lines.slice(mostLines);
  if (left.length === 0) return read;
  const problem = `Only ${mostLines} lines are read at once; ${left.length} more begin here. Paste them by themselves.`;
  return [...read, { line: left[0]!, label: left[0]!.slice(0, longestLine), candidates: [], problem }];
}

/** Far more than a sheet has; each line takes milliseconds. */
const mostLines = 500;

/** One line read as the value of a spec that a person chose for it. Throws RangeError for an unknown spec. */
export function readSpecLineAs(
  catalog: Catalog,
  spec: string,
  line: string,
  origin: Origin = { from: "maker's sheet" },
): SpecLine {
  const chosen = byId(catalog.specs).get(spec);
  if (!chosen) throw new RangeError(`there is no spec "${spec}"`);
  const tidy = tidyLine(line).slice(0, longestLine);
  const reader = makeReader(catalog, origin);
  const cuts = [...cutsOf(tidy).toReversed(), { label: '', value: tidy }];
  for (const { label, value } of cuts) {
    const read = readItems(reader, label, [chosen], value);
    const good = read?.find(({ spec: found, problem }) => found === spec && problem === undefined);
    if (good) return { ...good, line };
  }
  const { label, value } = likelyCut(tidy);
  const read = readSpecValue(value, chosen, origin) ?? {
    problem: `${chosen.name}: no value of it stands in “${line}”.`,
  };
  return entry(line, label, [chosen], read);
}

interface Reader {
  readonly index: SpecIndex;
  readonly origin: Origin;
  /** ids of specs with labels like this one; those that the value fits, where there are any */
  nearest(label: string, value: string): readonly string[];
  /** only those that the value fits */
  fitting(label: string, value: string): readonly string[];
}

function makeReader(catalog: Catalog, origin: Origin): Reader {
  const index = specIndex(catalog);
  const specs = byId(catalog.specs);
  const fits = (value: string) => (id: string) => {
    const read = readSpecValue(value, specs.get(id)!, origin);
    return read !== undefined && read.problem === undefined;
  };
  const fitting = (label: string, value: string) => index.nearest(label).filter(fits(value)).slice(0, 4);
  const nearest = (label: string, value: string) => {
    const found = fitting(label, value);
    return found.length > 0 ? found : index.nearest(label).slice(0, 4);
  };
  return { index, origin, nearest, fitting };
}

function readLine(reader: Reader, line: string): readonly SpecLine[] {
  const tidy = tidyLine(line);
  if (tidy.length > longestLine) {
    const problem = `Longer than ${longestLine} characters: not a line of a sheet.`;
    return [{ line, label: tidy.slice(0, longestLine), candidates: [], problem }];
  }
  const found = readTidy(reader, tidy);
  if (found) return found.map((each) => ({ ...each, line }));
  const { label, value } = likelyCut(tidy);
  return [{ line, label, candidates: reader.nearest(label, value) }];
}

/** The first cut with a known label whose value is good; else the first whose value is wrong, with its problem. */
function readTidy(reader: Reader, line: string): readonly SpecLine[] | undefined {
  let doubtful: readonly SpecLine[] | undefined;
  for (const { label, value } of [...cutsOf(line), ...valueFirst(line)]) {
    const specs = reader.index.exact(label);
    const read = specs.length > 0 ? readItems(reader, label, specs, value) : undefined;
    if (read && !read.some(isDoubtful)) return read;
    doubtful ??= read?.map((each) => withCandidates(reader, each, value));
  }
  return doubtful;
}

/** A value of the wrong kind may belong to a spec with a label much like this one: "spark plug 0.030 in". */
function withCandidates(reader: Reader, read: SpecLine, value: string): SpecLine {
  if (read.spec === undefined || read.problem === undefined || read.value !== undefined) return read;
  return { ...read, candidates: reader.fitting(read.label, value) };
}

const isDoubtful = ({ problem, spec }: SpecLine) => problem !== undefined || spec === undefined;

/** "140 in-lb head bolts": the label stands behind. */
function valueFirst(line: string): Cut[] {
  if (!/^[<>≤≥]?\s*[.\d]/.test(line)) return [];
  return [...line.matchAll(/\s(?=\p{L})/gu)].map(({ index }) => ({
    label: line.slice(index + 1),
    value: line.slice(0, index),
  }));
}

/** A value that may hold several items; undefined when already the first is none of the specs' values. */
function readItems(
  reader: Reader,
  label: string,
  specs: readonly Spec[],
  value: string,
): readonly SpecLine[] | undefined {
  const whole = readItem(reader, label, specs, value);
  if (whole && !isDoubtful(whole)) return [whole];
  const [first, ...others] = itemsOf(value);
  if (first === undefined || others.length === 0) return whole && [whole];
  const start = readItem(reader, label, specs, first);
  if (!start) return whole && [whole];
  const lines = [start];
  for (const item of others) lines.push(...continueWith(reader, label, specs, item, lines));
  return lines;
}

/** One more item of a line: the same value in another unit, another value of the label, or a label of its own. */
function continueWith(
  reader: Reader,
  label: string,
  specs: readonly Spec[],
  item: string,
  before: SpecLine[],
): readonly SpecLine[] {
  if (reader.index.saysNothing(item)) return [];
  const same = readItem(reader, label, specs, item);
  if (!same)
    return (
      ownLabel(reader, label, item) ?? [{ line: '', label: item, candidates: reader.nearest(item, item) }]
    );
  const twin = before.find(({ spec }) => spec !== undefined && spec === same.spec);
  if (!twin) return [same];
  if (!agree(twin, same)) before[before.indexOf(twin)] = disagreeing(twin, same);
  return [];
}

function disagreeing(a: SpecLine, b: SpecValue): SpecLine {
  return { ...a, problem: `The line says ${printed(a)} and ${printed(b)}, which do not agree.` };
}

/** An item with a label of its own, alone or behind the line's label or its first words ("valve clearance" + "exhaust"). */
function ownLabel(reader: Reader, label: string, item: string): readonly SpecLine[] | undefined {
  const words = label.split(' ');
  const heads = [...words, ''].map((_, index) => words.slice(0, words.length - index).join(' '));
  for (const head of heads) {
    for (const cut of cutsOf(item)) {
      const full = `${head} ${cut.label}`.trim();
      const specs = reader.index.exact(full);
      const read = specs.length > 0 ? readItem(reader, full, specs, cut.value) : undefined;
      if (read) return [read];
    }
  }
  return undefined;
}

/** One value, with words behind it that say nothing ("cold", "dry") or that belong to the label ("reject"). */
function readItem(
  reader: Reader,
  label: string,
  specs: readonly Spec[],
  value: string,
): SpecLine | undefined {
  const words = value.replace(/[.;,]+$/, '').split(' ');
  for (let count = words.length; count > 0; count--) {
    const behind = words.slice(count).join(' ');
    const named = reader.index.saysNothing(behind) ? specs : reader.index.exact(`${label} ${behind}`);
    const read =
      named.length > 0 ? choose(label, named, words.slice(0, count).join(' '), reader.origin) : undefined;
    if (read) return read;
  }
  return undefined;
}

/** The one spec among those of the label that the value fits; several, or none, are told apart by nobody here. */
function choose(label: string, specs: readonly Spec[], value: string, origin: Origin): SpecLine | undefined {
  const reads = specs.flatMap((spec) => {
    const read = readSpecValue(value, spec, origin);
    return read ? [{ spec, read }] : [];
  });
  const good = reads.filter(({ read }) => read.problem === undefined);
  const wrongSize = reads.filter(({ read }) => read.value !== undefined);
  const [best = []] = [good, wrongSize, reads].filter((list) => list.length > 0);
  const [first] = best;
  return (
    first &&
    entry(
      '',
      label,
      best.map(({ spec }) => spec),
      first.read,
    )
  );
}

function entry(line: string, label: string, specs: readonly Spec[], read: SpecValue): SpecLine {
  const [only] = specs;
  const ids = specs.map(({ id }) => id);
  return ids.length === 1
    ? { line, label, spec: only!.id, ...read, candidates: [] }
    : { line, label, ...read, candidates: ids };
}
