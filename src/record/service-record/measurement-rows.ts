import { byId, roleOf } from '../../catalog/index.js';
import { amountOf, type From, type Limit, type ReadingGroup, type WorkedFigure } from '../../job/index.js';
import { counted, joined } from '../../phrase/index.js';
import { asWritten, say, sayLimit, sayOrigin, sayQuantity, sayUncertainty } from './numbers.js';
import type { Verdict } from './section.js';
import { instrumentOf, type Sheet } from './sheet.js';
import { judge, verdictWord, worst } from './verdict.js';
import { briefTitle, handleWords } from './words.js';

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
  return [...(sheet.detail === 'brief' ? gathered(rows) : rows), ...workedRows(sheet)];
}

/** Wear, taper, flatness: worked out from several readings; left out where the same thing was read outright. */
function workedRows(sheet: Sheet): MeasurementRow[] {
  const { bores, faces } = sheet.answers;
  const figures = [
    ...bores.flatMap((bore) => bore.figures.map((figure) => ({ figure, ...bore }))),
    ...faces.flatMap((face) => (face.figure ? [{ figure: face.figure, ...face }] : [])),
  ];
  const read = new Set(sheet.job.measurements.map((m) => m.measure));
  const own = figures.filter(({ figure }) => isOwn(figure, sheet) || !read.has(figure.measure));
  return groupsOf(own, ({ figure }) => [figure.measure, figure.title]).map((group) =>
    workedRow(group, sheet),
  );
}

/** The largest bore against the reject size is what the row of all readings says already. */
const isOwn = ({ measure, title }: WorkedFigure, { detail, answers }: Sheet) =>
  measure === roleOf(answers.catalog, 'bore') && (title === 'Wear' || detail === 'full');

interface Worked {
  readonly figure: WorkedFigure;
  readonly phase: 'as-found' | 'after';
  readonly instruments: readonly From<'instrument'>[];
  readonly asRead: boolean;
}

function workedRow(group: readonly Worked[], sheet: Sheet): MeasurementRow {
  const { figure, instruments, asRead } = group.at(-1)!;
  const { limit } = figure;
  const of = (phase: Worked['phase']) => group.find((one) => one.phase === phase)?.figure;
  const [found, after] = [of('as-found'), of('after')];
  const bound = limit && amountOf(limit.max, figure.quantity.unit);
  return {
    title: figure.title === 'Largest bore' ? figure.title : workedTitle(figure, sheet),
    place: '',
    ...(found && { asFound: workedReading(found, sheet) }),
    ...(after && { after: workedReading(after, sheet) }),
    limit: bound ? `at most ${sayQuantity(bound, sheet.system)}` : '',
    limitOrigin: limit ? sayOrigin(limit.origin) : '',
    instrument: instruments.map((i) => instrumentName(i.tool, sheet)).join(', ') || 'not noted',
    asRead: limit !== undefined && asRead,
  };
}

function workedTitle({ measure, title }: WorkedFigure, { answers }: Sheet): string {
  const surface = byId(answers.catalog.measurements).get(measure)?.surface;
  return surface ? `${surface}: flatness` : `Bore: ${title.toLowerCase()}`;
}

function workedReading({ quantity, where, limit, decision }: WorkedFigure, sheet: Sheet): Reading {
  const max = limit && { max: amountOf(limit.max, quantity.unit) };
  const verdict = decision && {
    sign: decision.verdict,
    word: verdictWord(decision.verdict, quantity.si, max),
  };
  const text = sayQuantity(quantity, sheet.system);
  return { si: quantity.si, text, sub: sheet.detail === 'brief' ? '' : where, ...(verdict && { verdict }) };
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
  const limit = group.map((m) => sheet.answers.limitOf(m)).findLast((each) => each !== undefined);
  const found = group.filter((m) => m.phase !== 'after');
  const after = group.filter((m) => m.phase === 'after');
  return {
    title: sheet.detail === 'brief' ? briefTitle(last.title) : last.title,
    place: joined([last.place, last.direction]),
    ...(found.length > 0 && { asFound: reading(found, limit, sheet) }),
    ...(after.length > 0 && { after: reading(after, limit, sheet) }),
    limit: limit ? sayLimit(limit, sheet.system) : '',
    limitOrigin: limit ? sayOrigin(limit.origin) : '',
    instrument: instrumentWords(group, sheet),
    asRead: limit !== undefined && group.some((m) => !instrumentOf(sheet, m.instrument)),
  };
}

/** Repeats are taken together; what an earlier tool read, or what was read before a decision, is named beside them. */
function reading(all: readonly Measurement[], limit: Limit | undefined, sheet: Sheet): Reading {
  const group = sheet.answers.readingGroups.findLast(({ last }) => all.includes(last))!;
  const verdict = judge(group, limit);
  const text = sayQuantity(group.quantity, sheet.system);
  const sub = readingSub(all, group, sheet);
  return { si: group.quantity.si, text, sub, ...(verdict && { verdict }) };
}

function readingSub(
  all: readonly Measurement[],
  { readings, last, correction }: ReadingGroup,
  { system, detail }: Sheet,
): string {
  const earlier = all.filter((m) => !readings.includes(m)).map((m) => say(m.value, system));
  const unphased = last.phase === undefined ? 'before or after not noted' : undefined;
  const single = readings.length === 1;
  const mean = single ? undefined : `mean of ${readings.length}`;
  const repeats =
    single || detail === 'brief' ? mean : `${mean}: ${readings.map((m) => say(m.value, system)).join(', ')}`;
  const corrected = correction === 0 ? undefined : `read ${say(last.value, system)}, corrected`;
  const written = single && correction === 0 ? asWritten(last.value, system) : undefined;
  if (detail === 'brief') return joined([written, unphased, repeats]);
  const before = earlier.length === 0 ? undefined : `earlier ${earlier.join(', ')}`;
  const warmth = last.temperature && `at ${say(last.temperature, system)}`;
  return joined([written, corrected, warmth, unphased, repeats, before]);
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
