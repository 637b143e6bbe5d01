import { listed } from '../phrase/index.js';
import { QuantityError } from './error.js';
import { readNumber } from './number.js';
import { tidy } from './refuse.js';
import { coarsePitchMm, pipeThreads, unifiedThreads } from './thread-tables.js';

/** A screw thread as marked. */
export interface ThreadName {
  readonly system: 'inch' | 'metric';
  /** normalised: "5/16-18", "#10-24", "M8×1.25" */
  readonly name: string;
  readonly majorMm: number;
  readonly pitchMm: number;
  readonly threadsPerInch?: number;
  /** where the pitch comes from when the marking leaves it out */
  readonly pitchFrom?: 'UNC' | 'UNF' | 'ISO 261 coarse';
  readonly leftHand?: true;
  readonly written: string;
}

const mmPerInch = 25.4;
const accepted = 'a thread is written like 5/16-18, #10-24, 1/4-20 UNC, M8×1.25 or M8';

/**
 * The thread a marking names: size and pitch, nothing about its strength.
 *
 * Source: ASME B1.1 for inch (numbered sizes are 0.060 + 0.013·n in across), ISO 261 for metric; from memory.
 * Class of fit ("2A", "-6g") and "LH" may follow. "10-24" is #10-24, as no 10 in bolt has 24 threads an inch.
 * Throws QuantityError: 'empty'; 'unknown-unit' for a marking of no form known here; 'ambiguous' for an inch size
 * without pitch or series, for a series that contradicts the pitch and for a pipe thread, whose size is not its
 * diameter; 'out-of-range' for a pitch that does not fit the diameter (a bolt length written as pitch).
 *
 * Example: `parseThread('5/16-18 UNC')` is 7.9375 mm across with a pitch of 1.4111 mm.
 */
export function parseThread(text: string): ThreadName {
  const written = tidy(text);
  if (written === '') throw new QuantityError('empty', 'no thread written', { text: '', hint: accepted });
  const { marking, leftHand } = withoutHand(written);
  if (/\b(NPT|NPTF|NPSM?|BSPP?|BSPT|pipe)\b|^(G|Rc?|Rp)\s*\d/i.test(marking)) throw isPipe(written);
  const thread = metric(marking, written) ?? unified(marking, written);
  if (!thread)
    throw new QuantityError('unknown-unit', `"${written}" is not a thread marking known here`, {
      text: written,
      hint: accepted,
    });
  requireFittingPitch(thread);
  return leftHand ? { ...thread, leftHand } : thread;
}

function withoutHand(written: string): { marking: string; leftHand?: true } {
  const marking = written.replace(/[\s-]*(?:\b|(?<=\d))(LH|left[- ]hand(ed)?)\b\.?/i, '').trim();
  return marking === written ? { marking } : { marking, leftHand: true };
}

function metric(marking: string, written: string): ThreadName | undefined {
  const found =
    /^M\s*(\d+(?:[.,]\d+)?)\s*(?:(?:[x×*-]|\s)\s*(\d*[.,]?\d+)(?:\s*mm)?)?(?:[-\s]+\d[a-z](?:\d[a-z])?)?$/i.exec(
      marking,
    );
  if (!found) return undefined;
  const majorMm = point(found[1]);
  const stated = found[2] === undefined ? undefined : point(found[2]);
  const pitchMm = stated ?? coarsePitchMm[majorMm];
  if (pitchMm === undefined) throw noPitch(written, `M${majorMm}`, `M${majorMm}×1`);
  const name = `M${majorMm}×${pitchMm}`;
  return {
    system: 'metric',
    name,
    majorMm,
    pitchMm,
    written,
    ...(stated === undefined && { pitchFrom: 'ISO 261 coarse' }),
  };
}

function point(figures = ''): number {
  return Number(figures.replace(',', '.'));
}

const sizeForm = String.raw`((?:#|no\.?|nr\.?|number)\s*\d{1,2}|\d*\.\d+|\d+(?:(?:\s*-\s*|\s+)\d+\/\d+|\/\d+)?|\d*\s*[½¼¾⅛⅜⅝⅞])`;
const seriesForm = String.raw`(?:\s*[-,]?\s*(UN[CFS]?|UNEF|UNR[CF]?|NC|NF)\b)?`;
const fitForm = String.raw`(?:[-\s]+[123][AB])?`;
const unifiedForm = new RegExp(
  String.raw`^${sizeForm}\s*(?:"|″|''|in\.?|inch)?(?:\s*[-–x×]\s*(\d+(?:\.5)?)(?:\s*tpi)?)?${seriesForm}${fitForm}$`,
  'i',
);

function unified(marking: string, written: string): ThreadName | undefined {
  const [all, sizeText = '', tpiText, seriesText] = unifiedForm.exec(marking) ?? [];
  if (all === undefined) return undefined;
  const stated = tpiText === undefined ? undefined : Number(tpiText);
  const size = sizeOf(sizeText, stated);
  const series = coarseOrFine(seriesText);
  const pitch = unifiedThreads[size];
  const ofSeries = series && pitch?.[series];
  if (series && stated && ofSeries && ofSeries !== stated)
    throw contradiction(written, size, series, ofSeries, stated);
  const threadsPerInch = stated ?? ofSeries;
  if (threadsPerInch === undefined) throw noPitch(written, size, ...choices(size));
  if (pipeThreads[size] === threadsPerInch && !seriesText) throw isPipe(written);
  return {
    system: 'inch',
    name: `${size}-${threadsPerInch}`,
    majorMm: majorInches(size) * mmPerInch,
    pitchMm: mmPerInch / threadsPerInch,
    threadsPerInch,
    written,
    ...(stated === undefined && series && { pitchFrom: series }),
  };
}

/** "#10", "5/16", "1-1/4" or, where no sixty-fourth fits, "0.245". */
function sizeOf(text: string, threadsPerInch: number | undefined): string {
  const number = Number(/\d+/.exec(text)?.[0]);
  if (/^[#n]/i.test(text)) return `#${number}`;
  if (/^\d+$/.test(text) && isNumbered(number, threadsPerInch)) return `#${number}`;
  return fractionOf(readNumber(text)?.number.value ?? Number.NaN);
}

/** A bare whole number is a numbered size when its pitch is one of that size: "10-24", but "1-8" is one inch. */
function isNumbered(number: number, threadsPerInch: number | undefined): boolean {
  const { UNC, UNF } = unifiedThreads[`#${number}`] ?? {};
  return threadsPerInch === undefined ? number > 1 : threadsPerInch === UNC || threadsPerInch === UNF;
}

function fractionOf(inches: number): string {
  const whole = Math.floor(inches);
  let over = Math.round((inches - whole) * 64);
  let under = 64;
  // designations in decimals are rounded to a thousandth: .312-18 is 5/16-18
  if (Math.abs(whole + over / 64 - inches) > 0.0006) return String(inches);
  while (over % 2 === 0 && under > 1) [over, under] = [over / 2, under / 2];
  if (over === 0 || under === 1) return String(whole + over);
  return whole > 0 ? `${whole}-${over}/${under}` : `${over}/${under}`;
}

function majorInches(size: string): number {
  if (size.startsWith('#')) return (60 + 13 * Number(size.slice(1))) / 1000;
  return readNumber(size)?.number.value ?? Number.NaN;
}

function coarseOrFine(series: string | undefined): 'UNC' | 'UNF' | undefined {
  if (/^(UNC|UNRC|NC)$/i.test(series ?? '')) return 'UNC';
  return /^(UNF|UNRF|NF)$/i.test(series ?? '') ? 'UNF' : undefined;
}

function choices(size: string): string[] {
  return Object.entries(unifiedThreads[size] ?? {}).map(([series, tpi]) => `${size}-${tpi} (${series})`);
}

function noPitch(written: string, size: string, ...names: string[]): QuantityError {
  return new QuantityError('ambiguous', `"${written}" leaves the pitch of ${size} open`, {
    text: written,
    hint: names.length > 0 ? `write ${listed(names, 'or')}` : accepted,
  });
}

function contradiction(
  written: string,
  size: string,
  series: string,
  standard: number,
  stated: number,
): QuantityError {
  const message = `"${written}" contradicts itself: ${size} ${series} has ${standard} threads an inch, not ${stated}`;
  return new QuantityError('ambiguous', message, {
    text: written,
    hint: `write ${size}-${stated} or ${size}-${standard}`,
  });
}

function isPipe(written: string): QuantityError {
  return new QuantityError('ambiguous', `"${written}" is a pipe thread: its size is not its diameter`, {
    text: written,
    hint: 'measure it across and write the size found; a tapered thread takes no clamp load',
  });
}

/** Real pitches are 1/50 to 3/10 of the diameter; beyond that a length or a slip stands where the pitch should. */
function requireFittingPitch({ pitchMm, majorMm, written, system }: ThreadName): void {
  const share = pitchMm / majorMm;
  if (share >= 0.02 && share <= 0.3) return;
  const given =
    system === 'metric'
      ? `a pitch of ${pitchMm} mm`
      : `${Number((mmPerInch / pitchMm).toFixed(1))} threads an inch`;
  const side = share > 0.3 ? 'too coarse' : 'too fine';
  throw new QuantityError(
    'out-of-range',
    `"${written}": ${given} is ${side} for a thread ${Number(majorMm.toPrecision(4))} mm across`,
    {
      text: written,
      hint: system === 'metric' && share > 0.3 ? `a length is left out: ${accepted}` : accepted,
    },
  );
}
