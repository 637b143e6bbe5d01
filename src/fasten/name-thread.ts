import { of, to } from '../quantity/index.js';
import { FastenError, positive } from './error.js';
import { figure } from './figure.js';
import { mmPerInch } from './thread-form.js';
import { boltDiameterLimits, type Limits, nutBoreLimits } from './thread-limits.js';
import { type StandardThread, threads } from './threads.js';

/** What was read on the bench. */
export interface ThreadReading {
  /** outside the bolt, or across the bore of the tapped hole */
  readonly diameterMm: number;
  readonly where: 'bolt' | 'hole';
  /** pitch of the gauge leaf that fits; left out when none was tried */
  readonly pitchMm?: number | undefined;
  /** half-width of what the caliper may be off, and rust and wear with it */
  readonly caliperMm?: number | undefined;
}

export interface ThreadCandidate {
  readonly thread: StandardThread;
  readonly fits: boolean;
  /** how far the reading lies outside the thread's limits, 0 inside, mm; negative below them */
  readonly diameterOffMm: number;
  /** gauge leaf's pitch less the thread's, mm; undefined without a leaf */
  readonly pitchOffMm?: number;
  readonly why: string;
}

export interface NamedThread {
  readonly verdict: 'one' | 'ambiguous' | 'none';
  /** those that fit, best first, then the near misses */
  readonly candidates: readonly ThreadCandidate[];
  readonly words: string;
}

const usualCaliperMm = 0.05;
/** A leaf this close cannot be told from the right one over a short thread; the next leaf of a set is 4 % off or more. */
const samePitch = 0.02;
/** Leaves up to this far off are mistaken for the right one on a short or dirty thread. */
const nearPitch = 0.065;

function outside(valueMm: number, { leastMm, mostMm }: Limits, slackMm: number): number {
  if (valueMm < leastMm - slackMm) return valueMm - leastMm;
  if (valueMm > mostMm + slackMm) return valueMm - mostMm;
  return 0;
}

function limitsFor(thread: StandardThread, where: ThreadReading['where']): Limits {
  return where === 'bolt' ? boltDiameterLimits(thread) : nutBoreLimits(thread);
}

/** A thread's sizes are said in the system it belongs to. */
const unitOf = ({ system }: StandardThread) => (system === 'inch' ? 'in' : 'mm');
const sizeIn = (thread: StandardThread) => (mm: number) => to(of(mm, 'mm'), unitOf(thread));

function candidate(thread: StandardThread, reading: ThreadReading): ThreadCandidate | undefined {
  const limits = limitsFor(thread, reading.where);
  const diameterOffMm = outside(reading.diameterMm, limits, reading.caliperMm ?? usualCaliperMm);
  const pitchOffMm = reading.pitchMm === undefined ? undefined : reading.pitchMm - thread.pitchMm;
  const pitchPart = Math.abs(pitchOffMm ?? 0) / thread.pitchMm;
  const near = Math.abs(diameterOffMm) <= 0.03 * thread.majorMm && pitchPart <= nearPitch;
  if (!near) return undefined;
  const fits = diameterOffMm === 0 && pitchPart <= samePitch;
  const size = sizeIn(thread);
  const range = `${figure(size(limits.leastMm), 4)} to ${figure(size(limits.mostMm), 4)} ${unitOf(thread)}`;
  const diameterWords =
    diameterOffMm === 0
      ? `diameter within ${range}`
      : `diameter ${figure(size(Math.abs(diameterOffMm)), 2)} ${unitOf(thread)} ${diameterOffMm < 0 ? 'under' : 'over'} ${range}`;
  const pitchWords =
    pitchOffMm === undefined
      ? 'pitch not read'
      : pitchPart <= samePitch
        ? 'leaf matches'
        : `leaf ${figure(100 * pitchPart, 2)} % ${pitchOffMm > 0 ? 'too coarse' : 'too fine'}`;
  return {
    thread,
    fits,
    diameterOffMm,
    ...(pitchOffMm !== undefined && { pitchOffMm }),
    why: `${diameterWords}; ${pitchWords}`,
  };
}

const isCoarse = ({ series }: StandardThread) =>
  series.some((each) => each === 'UNC' || each === 'metric coarse');

/** Those that fit first; then by diameter, by leaf, the coarse thread before the fine, and the middle of the limits. */
function byFit({ where, diameterMm }: ThreadReading) {
  const off = ({ diameterOffMm }: ThreadCandidate) => Math.abs(diameterOffMm);
  const pitchOff = ({ pitchOffMm = 0, thread }: ThreadCandidate) => Math.abs(pitchOffMm) / thread.pitchMm;
  const middleOff = ({ thread }: ThreadCandidate) => {
    const { leastMm, mostMm } = limitsFor(thread, where);
    return Math.abs(diameterMm - (leastMm + mostMm) / 2);
  };
  return (a: ThreadCandidate, b: ThreadCandidate) =>
    Number(b.fits) - Number(a.fits) ||
    off(a) - off(b) ||
    pitchOff(a) - pitchOff(b) ||
    Number(isCoarse(b.thread)) - Number(isCoarse(a.thread)) ||
    middleOff(a) - middleOff(b);
}

/**
 * What tells two threads apart on the bench: how far their pitches run apart over a length, and their diameters.
 * Example: 5/16-18 and M8×1.25 run apart by 1.1 mm over 10 mm; their diameters differ by 0.06 mm, which tells nothing.
 */
export function tellApart(a: StandardThread, b: StandardThread, overMm = 10): string {
  const pitchRunMm = (overMm * Math.abs(a.pitchMm - b.pitchMm)) / Math.max(a.pitchMm, b.pitchMm);
  const diameterMm = Math.abs(a.majorMm - b.majorMm);
  const pitch = `a leaf or a known bolt laid alongside runs out by ${figure(pitchRunMm, 2)} mm over ${overMm} mm`;
  const diameter = `the bolts differ by ${figure(diameterMm, 2)} mm across`;
  return `${a.name} or ${b.name}: ${pitch}; ${diameter}`;
}

function ambiguityWords(fitting: readonly ThreadCandidate[], pitchRead: boolean): string {
  const names = fitting.map(({ thread }) => thread.name).join(', ');
  const [a, b] = fitting;
  const next =
    pitchRead && a && b ? tellApart(a.thread, b.thread) : 'the pitch tells them apart: try the gauge leaves';
  return `more than one fits: ${names}; ${next}; force none`;
}

function verdictWords(
  fitting: readonly ThreadCandidate[],
  missed: readonly ThreadCandidate[],
  pitchRead: boolean,
): string {
  if (fitting.length > 1) return ambiguityWords(fitting, pitchRead);
  const [first, rival] = [fitting[0], missed[0]];
  if (first) {
    const warning = rival ? `; not to be mistaken: ${tellApart(first.thread, rival.thread)}` : '';
    return `${first.thread.name} (${first.why})${warning}`;
  }
  return rival
    ? `no standard thread fits both readings; nearest is ${rival.thread.name} (${rival.why}); measure again: a stretched, worn or bent bolt reads small`
    : 'no standard thread of the list is near these readings';
}

/**
 * The thread that a caliper and a pitch gauge name, with near misses; ambiguity is said, never settled silently.
 *
 * A bolt measures under its nominal diameter, so the reading is held against class 2A and 6g limits; a tapped hole by
 * its bore, against class 2B and 6H. Only threads of the list are named.
 * Throws FastenError for readings that are not above zero.
 * Example: 7.85 mm and 18 leaves an inch give 5/16-18; without a leaf 5/16-18 and M8×1.25 both fit.
 */
export function nameThread(reading: ThreadReading): NamedThread {
  positive(reading.diameterMm, 'diameter', 'mm');
  if (reading.pitchMm !== undefined) positive(reading.pitchMm, 'pitch', 'mm');
  const found = threads
    .map((thread) => candidate(thread, reading))
    .filter((each) => each !== undefined)
    .sort(byFit(reading));
  const fitting = found.filter(({ fits }) => fits);
  const missed = found.filter(({ fits }) => !fits);
  return {
    verdict: fitting.length === 1 ? 'one' : fitting.length > 1 ? 'ambiguous' : 'none',
    candidates: [...fitting, ...missed],
    words: verdictWords(fitting, missed, reading.pitchMm !== undefined),
  };
}

/** Pitch of a gauge leaf marked in threads per inch, mm. */
export function leafPitchMm(threadsPerInch: number): number {
  if (!(threadsPerInch >= 4 && threadsPerInch <= 80)) {
    throw new FastenError(`threads per inch must lie from 4 to 80; ${threadsPerInch} was given`, 'tpi');
  }
  return mmPerInch / threadsPerInch;
}
