import { type Catalog, type Component, cautionsFor, judgementOf } from '../../catalog/index.js';
import type { ExactInference } from '../../infer/index.js';
import type { EngineNow } from '../engine/bars.js';
import type { Machine, MachineCheck } from '../machine/machine.js';
import { evidenceDestroyedBy } from '../machine/spoils.js';
import { type Access, accessFor } from './access.js';
import { type ActedOn, actedOn, type Confirming, confirmingLook } from './opened.js';
import { isLocked, needsRunning, type Runs, runs, wantsATry } from './running.js';
import { spoiledAlready } from './spoils.js';
import { type CheckValue, valuer } from './value.js';
import { type Complaint, complaintStands } from './weighed.js';
import { whyWords } from './why.js';

export interface Shop {
  /** components that are off now */
  readonly off?: ReadonlySet<string>;
  /** instruments that the shop owns, in the catalog's words; left out when not known */
  readonly instruments?: ReadonlySet<string> | undefined;
  /** whether the engine runs, where somebody has just tried; else the log is asked */
  readonly runs?: 'yes' | 'no' | undefined;
  /** this engine now: what cannot and what must not be done to it is not offered */
  readonly engine?: Pick<EngineNow, 'barred'>;
}

/**
 * A check is worth its minutes where what it saves, or the needless repair that a look before it saves, comes to more; and it
 * is worth making for a complaint that nothing explains yet.
 */
export type Pays = 'its minutes' | 'the complaint';

export interface NextCheck {
  readonly id: string;
  readonly title: string;
  /** minutes from now, with what must still come off */
  readonly minutes: number;
  readonly comesOff: readonly { readonly id: string; readonly name: string }[];
  readonly instruments: readonly string[];
  /** what of them the shop does not own, as far as it is known */
  readonly lacking: readonly string[];
  /** how much nearer the faults that matter come to being found, in faults */
  readonly gain: number;
  readonly gainPerMinute: number;
  /** minutes of needless and of missed work that it is expected to save */
  readonly saves: number;
  /** what it is worth making for, if it is */
  readonly pays?: Pays;
  /** a sentence */
  readonly why: string;
  readonly outcomes: CheckValue['outcomes'];
  /** checks to make before it, because it spoils what they read */
  readonly before: readonly string[];
  /** dangers, the gravest first */
  readonly cautions: readonly { readonly title: string; readonly severity: number }[];
  /** the engine must run for it, and it is not known whether it does */
  readonly ifItRuns: boolean;
  /** something done already has spoiled a part of what it reads */
  readonly spoiled: boolean;
}

export interface Ranked {
  /** the best ones; a check that would be spoiled stands before the one that spoils it */
  readonly best: readonly NextCheck[];
  /** how many checks can be made now */
  readonly open: number;
}

/** A check that shares its access with others pays for them too: this part of their gain counts. */
const companionPart = 0.8;
/** What saves its minutes goes before what only tells something, unless that tells more than twice as much a minute. */
const paysWeighs = 2;
/** A check worth this part of the best is worth making before it is spoiled. */
const worthKeeping = 0.05;

/**
 * The checks that earn most for their minutes.
 *
 * Method: for every check that can be made now, each outcome's posterior is worked out exactly (`outlook`) and the
 * expected gain (`settled`) divided by its minutes, counting what is off already. Where something must come off, the
 * other checks behind the same parts are weighed with it, as are checks made in its course, each only as far as it raises
 * the rate. Signs of one check
 * are weighed one by one and added. The trade's first looks for what the owner says weigh more, and one of them comes
 * first of all. A check that spoils others stands behind them. A dead engine that was repaired and is
 * together again is tried first: all else waits for how that comes out.
 */
export function nextChecks(machine: Machine, inference: ExactInference, shop: Shop = {}, count = 5): Ranked {
  const all = weighedChecks(machine, inference, shop);
  const weighed = all.filter((w) => w.value.check.waitsFor === undefined);
  const looks = firstLooksFor(machine);
  const onlyWhatPays =
    complaintStands(machine, inference) === 'explained' && weighed.some((w) => w.pays !== undefined);
  const rated = weighed
    .map((w) => ({
      ...w,
      rate:
        rateWithCompanions(w, all) *
        (looks.of.has(w.value.check.check.id) ? looks.weight : 1) *
        weightOf(w.pays !== undefined, onlyWhatPays),
    }))
    .sort((a, b) => b.rate - a.rate);
  const least = worthKeeping * (rated[0]?.value.gain ?? 0);
  const order: typeof rated = [];
  const place = (one: (typeof rated)[number]): void => {
    if (order.includes(one)) return;
    for (const id of evidenceDestroyedBy(machine.catalog, one.value.check.check)) {
      const kept = rated.find((r) => r.value.check.check.id === id);
      if (kept && kept !== one && kept.value.gain >= least && !spoilsBack(machine, kept, one)) place(kept);
    }
    order.push(one);
  };
  const tried = rated.filter((w) => w.value.check.check.afterRepair);
  const first = looks.begun ? [] : rated.filter((w) => looks.of.has(w.value.check.check.id));
  const spoilsNothing = first.filter(
    ({ value }) => evidenceDestroyedBy(machine.catalog, value.check.check).length === 0,
  );
  const begin = [...spoilsNothing, ...first].slice(0, 1);
  for (const one of [...tried, ...begin, ...rated]) if (order.length < count) place(one);
  return { best: order.slice(0, count).map((w) => shown(machine, w, shop, order)), open: weighed.length };
}

/** Once the complaint is explained, what does not pay comes last. */
function weightOf(pays: boolean, onlyWhatPays: boolean): number {
  if (pays) return paysWeighs;
  return onlyWhatPays ? 0 : 1;
}

/** The trade's first looks for the complaints, what they weigh, and whether one of them was made. */
function firstLooksFor({ catalog, complaints, readings }: Machine) {
  const of = new Set(
    catalog.complaints.filter((c) => complaints.includes(c.id)).flatMap((c) => [...c.firstChecks]),
  );
  const begun = readings.some((r) => of.has(r.seen.check));
  return { of, begun, weight: judgementOf(catalog, 'first-look-weighs') };
}

interface WeighedCheck {
  readonly value: CheckValue;
  readonly access: Access;
  readonly comesOff: readonly Component[];
  readonly pays: Pays | undefined;
  readonly offMinutes: number;
  readonly handsMinutes: number;
  /** gain with what stands against the check taken off */
  readonly worth: number;
  readonly ifItRuns: boolean;
  readonly spoiled: boolean;
}

function weighedChecks(machine: Machine, inference: ExactInference, shop: Shop): WeighedCheck[] {
  const state = shop.runs ?? runs(machine);
  const value = valuer(machine, inference);
  const repairs = actedOn(machine, inference);
  const around = { state, repairs, complaint: complaintStands(machine, inference) };
  return checksNow(machine, shop).map((c) => weigh(machine, value(c), shop, around));
}

/**
 * One of so many pieces of what takes long in `nextChecks`: who has them done one after another before it has it in no
 * time, and can do something else in between.
 */
export function valueAhead(
  machine: Machine,
  inference: ExactInference,
  shop: Shop,
  { piece, pieces }: { readonly piece: number; readonly pieces: number },
): void {
  const value = valuer(machine, inference);
  for (const [i, check] of checksNow(machine, shop).entries()) if (i % pieces === piece) value(check);
}

/** Those that can be made now. */
function checksNow(machine: Machine, shop: Shop): MachineCheck[] {
  const state = shop.runs ?? runs(machine);
  return machine.checks
    .filter((c) => shop.engine?.barred(c.check) === undefined)
    .filter((c) => canBeMade(machine, c, state) && (!c.check.afterRepair || canBeTried(machine, shop)));
}

function canBeMade(machine: Machine, { check, open, waitsFor, signs }: MachineCheck, state: Runs): boolean {
  if (!open || signs.length === 0) return false;
  // a repeat is worth nothing before its first reading; what is made in the course of another is worth it with that one
  if (waitsFor !== undefined && check.differentialOf) return false;
  if (state === 'no' && needsRunning(check)) return false;
  return !(check.engine !== 'still' && !check.whenLocked && isLocked(machine));
}

/** What lies on the bench must go back on first. */
const canBeTried = (machine: Machine, { off, runs: told }: Shop): boolean =>
  told === undefined && (off?.size ?? 0) === 0 && wantsATry(machine);

interface Around {
  readonly state: Runs;
  readonly repairs: readonly ActedOn[];
  readonly complaint: Complaint;
}

/**
 * So many minutes a look has to save for each that it takes: while nothing explains the complaint, one of the looks must find
 * it in the end. Asking more once it is explained was tried: it misses more than it saves (`bench/harder.ts`).
 */
const mustSave: Readonly<Record<Complaint, number>> = { 'none told': 1, open: 1 / 3, explained: 1 };

function weigh(
  machine: Machine,
  value: CheckValue,
  shop: Shop,
  { state, repairs, complaint }: Around,
): WeighedCheck {
  const { check } = value.check;
  const access = accessFor(machine.catalog, machine.facts, check, shop.off ?? new Set());
  const offMinutes = access.comesOff.reduce((sum, c) => sum + c.minutesOff, 0);
  const ifItRuns = state === 'unknown' && needsRunning(check);
  const spoiled = spoiledAlready(machine, check.id);
  const parts = [
    ifItRuns ? judgementOf(machine.catalog, 'may-not-run') : 1,
    spoiled ? judgementOf(machine.catalog, 'spoiled-leaves') : 1,
    lacking(check.instruments, shop).length > 0 ? judgementOf(machine.catalog, 'instrument-lacking') : 1,
  ];
  const look = confirmingLook(check, access, repairs);
  const care = careMinutes(machine.catalog, check.id);
  return {
    value,
    access,
    comesOff: access.comesOff,
    pays: paysFor(value.saves / access.minutes, complaint, look),
    offMinutes,
    handsMinutes: access.minutes - offMinutes + care,
    worth: parts.reduce((w, p) => w * p, value.gain),
    ifItRuns,
    spoiled,
  };
}

function paysFor(savesAMinute: number, complaint: Complaint, look: Confirming | undefined): Pays | undefined {
  if (savesAMinute >= 1) return 'its minutes';
  if (look !== undefined && look.saves >= look.minutes) return 'its minutes';
  return savesAMinute >= mustSave[complaint] ? 'the complaint' : undefined;
}

/** An instrument that is not there can be borrowed, and care takes minutes: nothing is ruled out for either. */
function careMinutes(catalog: Catalog, check: string): number {
  const gravest = cautionsFor(catalog, { check })[0]?.severity ?? 0;
  if (gravest < 2) return 0;
  return judgementOf(catalog, gravest === 3 ? 'care-minutes-serious' : 'care-minutes-injury');
}

/** What everybody at a bench has. */
const always = new Set([
  'hand',
  'eye',
  'finger',
  'fingers',
  'ear',
  'rag',
  'glove',
  'photo',
  'mark',
  'load',
  'light',
]);

function lacking(instruments: readonly string[], { instruments: owned }: Shop): string[] {
  return owned ? instruments.filter((i) => !owned.has(i) && !always.has(i)) : [];
}

function rateWithCompanions(one: WeighedCheck, all: readonly WeighedCheck[]): number {
  let worth = one.worth;
  let minutes = one.offMinutes + one.handsMinutes;
  const opened = new Set(one.comesOff);
  const isCompanion = ({ value, comesOff }: WeighedCheck): boolean =>
    value.check.waitsFor === undefined
      ? comesOff.length > 0 && comesOff.every((c) => opened.has(c))
      : value.check.waitsFor === one.value.check.check.id;
  const companions = all
    .filter((w) => w !== one && isCompanion(w))
    .sort((a, b) => b.worth / b.handsMinutes - a.worth / a.handsMinutes);
  for (const w of companions) {
    if (w.worth / w.handsMinutes <= worth / minutes) break;
    worth += companionPart * w.worth;
    minutes += w.handsMinutes;
  }
  return worth / minutes;
}

const spoilsBack = (machine: Machine, a: WeighedCheck, b: WeighedCheck): boolean =>
  evidenceDestroyedBy(machine.catalog, a.value.check.check).includes(b.value.check.check.id);

function shown(
  machine: Machine,
  w: WeighedCheck & { readonly rate: number },
  shop: Shop,
  order: readonly WeighedCheck[],
): NextCheck {
  const { check } = w.value.check;
  const destroyed = evidenceDestroyedBy(machine.catalog, check);
  const minutes = w.access.minutes;
  return {
    id: check.id,
    title: check.title,
    minutes,
    comesOff: w.comesOff.map((c) => ({ id: c.id, name: c.name })),
    instruments: check.instruments,
    lacking: lacking(check.instruments, shop),
    gain: w.value.gain,
    gainPerMinute: w.rate,
    saves: w.value.saves,
    ...(w.pays && { pays: w.pays }),
    why: whyWords(machine, w.value, w),
    outcomes: w.value.outcomes,
    before: order.map((o) => o.value.check.check.id).filter((id) => destroyed.includes(id)),
    cautions: cautionsFor(machine.catalog, { check: check.id }).map(({ title, severity }) => ({
      title,
      severity,
    })),
    ifItRuns: w.ifItRuns,
    spoiled: w.spoiled,
  };
}
