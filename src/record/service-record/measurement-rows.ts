import type { From } from '../../job/index.js';
import { asWritten, say, sayLimit, sayOrigin, sayUncertainty } from './numbers.js';
import type { Verdict } from './section.js';
import { instrumentOf, type Sheet } from './sheet.js';
import { judge, worst } from './verdict.js';
import { briefTitle, counted, handleWords, joined } from './words.js';

/** One thing measured at one place: as found and after, against one limit. */
export interface MeasurementRow {
  readonly title: string;
  readonly place: string;
  readonly asFound?: Reading;
  readonly after?: Reading;
  readonly limit: string;
  readonly limitOrigin: string;
  readonly instrument: string;
  /** compared without an uncertainty, because none is known for the instrument */
  readonly asRead: boolean;
}
export interface Reading {
  readonly si: number;
  readonly text: string;
  readonly sub: string;
  readonly verdict?: Verdict;
}

type Measurement = From<'measurement'>;

export function measurementRows(sheet: Sheet): MeasurementRow[] {
  const byPlace = groupsOf(sheet.job.measurements, (m) => [m.measure, m.title, m.place, m.direction]);
  const rows = byPlace.map((group) => measurementRow(group, sheet));
  return sheet.detail === 'brief' ? gathered(rows) : rows;
}

function groupsOf<T>(all: readonly T[], key: (one: T) => unknown): T[][] {
  const groups = new Map<string, T[]>();
  for (const one of all) {
    const name = JSON.stringify(key(one));
    groups.set(name, [...(groups.get(name) ?? []), one]);
  }
  return [...groups.values()];
}

function measurementRow(group: readonly Measurement[], sheet: Sheet): MeasurementRow {
  const last = group.at(-1)!;
  const limit = group.findLast((m) => m.limit)?.limit;
  const judged = (m: Measurement) => ({ ...m, limit: m.limit ?? limit });
  const found = group.filter((m) => m.phase !== 'after').map(judged);
  const after = group.filter((m) => m.phase === 'after').map(judged);
  return {
    title: sheet.detail === 'brief' ? briefTitle(last.title) : last.title,
    place: joined([last.place, last.direction]),
    ...(found.length > 0 && { asFound: reading(found, sheet) }),
    ...(after.length > 0 && { after: reading(after, sheet) }),
    limit: limit ? sayLimit(limit, sheet.system) : '',
    limitOrigin: limit ? sayOrigin(limit.origin) : '',
    instrument: instrumentWords(group, sheet),
    asRead: limit !== undefined && group.some((m) => !instrumentOf(sheet, m.instrument)),
  };
}

/** The last reading stands; repeats are named, not averaged here. */
function reading(repeats: readonly Measurement[], sheet: Sheet): Reading {
  const last = repeats.at(-1)!;
  const verdict = judge(last, sheet.shop);
  const text = say(last.value, sheet.system);
  return { si: last.value.si, text, sub: readingSub(repeats, last, sheet), ...(verdict && { verdict }) };
}

function readingSub(repeats: readonly Measurement[], last: Measurement, { system, detail }: Sheet): string {
  const earlier = repeats.slice(0, -1).map((m) => say(m.value, system));
  const unphased = last.phase === undefined ? 'before or after not noted' : undefined;
  const written = asWritten(last.value, system);
  const count = earlier.length > 0 ? counted(repeats.length, 'reading') : undefined;
  const named = count && detail === 'full' ? `${count}, earlier ${earlier.join(', ')}` : count;
  if (detail === 'brief') return joined([written, unphased, named]);
  return joined([written, last.temperature && `at ${say(last.temperature, system)}`, unphased, named]);
}

function instrumentWords(group: readonly Measurement[], sheet: Sheet): string {
  const tools = [...new Set(group.map((m) => m.instrument))];
  return tools.map((tool) => (tool ? instrumentName(tool, sheet) : 'not noted')).join(', ');
}

function instrumentName(tool: string, sheet: Sheet): string {
  const instrument = instrumentOf(sheet, tool);
  if (!instrument) return handleWords(tool);
  // in the brief form the uncertainties stand together below the table
  return sheet.detail === 'brief' ? instrument.name : uncertaintyWords(instrument, sheet);
}

/** "Bore gauge, ± 0.0006 in" */
function uncertaintyWords(instrument: From<'instrument'>, sheet: Sheet): string {
  return `${instrument.name}, ${sayUncertainty(instrument.uncertainty, sheet.system)}`;
}

/** Every instrument that was used and is known, with its uncertainty (k = 2). */
export function instrumentsUsed(sheet: Sheet): string[] {
  const tools = new Set(sheet.job.measurements.map((m) => m.instrument));
  const known = [...tools].map((tool) => instrumentOf(sheet, tool)).filter((each) => each !== undefined);
  return known.map((instrument) => uncertaintyWords(instrument, sheet));
}

/** From this many places on, one line with the least and the most says it. */
const placesGathered = 3;

/** The same thing at many places against one limit: from the least to the most, with the verdict that weighs most. */
function gathered(rows: readonly MeasurementRow[]): MeasurementRow[] {
  return groupsOf(rows, (row) => [row.title, row.limit, row.limitOrigin, row.instrument]).flatMap((group) =>
    group.length >= placesGathered ? [gatheredRow(group)] : group,
  );
}

function gatheredRow(rows: readonly MeasurementRow[]): MeasurementRow {
  const found = gatheredReading(rows.flatMap((row) => row.asFound ?? []));
  const after = gatheredReading(rows.flatMap((row) => row.after ?? []));
  const { asFound: _found, after: _after, ...shared } = rows[0]!;
  return {
    ...shared,
    place: counted(rows.length, 'place'),
    ...(found && { asFound: found }),
    ...(after && { after }),
  };
}

function gatheredReading(readings: readonly Reading[]): Reading | undefined {
  const sorted = [...readings].sort((a, b) => a.si - b.si);
  const [least, most] = [sorted[0], sorted.at(-1)];
  if (!least || !most) return undefined;
  const verdict = worst(readings.map((each) => each.verdict));
  const text = least.text === most.text ? least.text : rangeText(least.text, most.text);
  return { si: most.si, text, sub: '', ...(verdict && { verdict }) };
}

/** "2.5989 in" and "2.6003 in" → "2.5989–2.6003 in" */
function rangeText(least: string, most: string): string {
  const [number, unit] = least.split('\u00a0');
  return unit && most.endsWith(`\u00a0${unit}`) ? `${number}–${most}` : `${least} to ${most}`;
}
