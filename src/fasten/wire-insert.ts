import type { TappedMetal } from './aluminum.js';
import { type Drill, nextDrillUp } from './drills.js';
import { sources } from './sources.js';
import type { ThreadForm } from './thread-form.js';

const sharpHeight = Math.sqrt(3) / 2;

/**
 * The oversize thread that a helical wire insert sits in (STI thread), mm.
 *
 * Minor d + 0.216506·P, pitch d + 0.649519·P, major d + 1.299038·P: the nominal thread moved outward by the wire.
 * Sources: ASME B18.29.1 (inch) and B18.29.2M (metric), Table 1 note 3 (from memory).
 * Example: M8×1.25 gives 8.271, 8.812 and 9.624 mm.
 */
export function insertThreadMm({ majorMm, pitchMm }: ThreadForm) {
  return {
    minorMm: majorMm + 0.25 * sharpHeight * pitchMm,
    pitchDiameterMm: majorMm + 0.75 * sharpHeight * pitchMm,
    majorMm: majorMm + 1.5 * sharpHeight * pitchMm,
  };
}

/**
 * The drill for an insert: the smallest of the set above the insert thread's minor diameter; for every listed
 * thread it stays within the class 2B or 6H bore tolerance. The drill named on the insert kit goes before it.
 * Example: 1/4-20 gives 17/64 in, M8×1.25 gives 8.3 mm.
 */
export function insertDrill(form: ThreadForm): Drill | undefined {
  const leastMm = insertThreadMm(form).minorMm + leastClearanceMm(form);
  return nextDrillUp(leastMm, form.system);
}

/** A drill right on the basic minor diameter binds the tap: a fiftieth of a pitch is left over it. */
const leastClearanceMm = ({ pitchMm }: ThreadForm) => 0.02 * pitchMm;

/** Insert lengths that are made, in bolt diameters. Source: ASME B18.29.1, B18.29.2M. */
export const insertLengths = [1, 1.5, 2, 2.5, 3] as const;

/**
 * Depth to drill for an insert of a nominal length, mm, with a bottoming tap: length + 2 pitches of tap chamfer + 1
 * clearance + 1 for countersink and set-down. With a plug tap 4 pitches of chamfer, and up to 8 mm also half a
 * diameter for the tap's point.
 *
 * Source: ASME B18.29.2M hole data. Example: M8×1.25 × 12 with a plug tap gives 23.5 mm.
 */
export function insertHoleDepthMm(form: ThreadForm, lengthMm: number, tap: 'bottoming' | 'plug'): number {
  const { majorMm, pitchMm } = form;
  if (tap === 'bottoming') return lengthMm + 4 * pitchMm;
  const point = majorMm <= 8 ? 0.5 * majorMm : 0;
  return lengthMm + point + 6 * pitchMm;
}

/** Least thickness for an insert in a through hole, mm: its length and one pitch. Source: ASME B18.29.2M. */
export function insertThroughMm(form: ThreadForm, lengthMm: number): number {
  return lengthMm + form.pitchMm;
}

/** Insert length to aim for, in bolt diameters: as much engagement as the metal needs. */
const wantedLength: Readonly<Record<TappedMetal, (typeof insertLengths)[number]>> = {
  aluminum: 2,
  iron: 1.5,
  steel: 1.5,
};

export interface InsertChoice {
  readonly diameters: number;
  readonly lengthMm: number;
  readonly drillDepthMm: number;
}

/**
 * The longest insert up to the wanted length that a blind hole of this depth takes with a bottoming tap; without a
 * depth, the wanted one. Undefined when not even one diameter fits.
 */
export function chooseInsert(
  form: ThreadForm,
  metal: TappedMetal,
  holeDepthMm?: number,
): InsertChoice | undefined {
  const choices = insertLengths
    .filter((diameters) => diameters <= wantedLength[metal])
    .map((diameters) => {
      const lengthMm = diameters * form.majorMm;
      return { diameters, lengthMm, drillDepthMm: insertHoleDepthMm(form, lengthMm, 'bottoming') };
    });
  return choices.filter((choice) => holeDepthMm === undefined || choice.drillDepthMm <= holeDepthMm).at(-1);
}

export const insertSource = (form: ThreadForm) =>
  form.system === 'inch' ? sources.inchInserts : sources.metricInserts;
