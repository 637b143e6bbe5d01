import type { Model } from './model.js';

/** The numbers that a circuit's inputs take. A question is put by changing some and running again. */
export interface Weights {
  /** by fault; for a root fault with its prior, for a linked one without */
  readonly absent: Float64Array;
  readonly present: Float64Array;
  /** by gathering */
  readonly worth: readonly Float64Array[];
  /** by gathering and cause */
  readonly mass: readonly (readonly Float64Array[])[];
  /** by gathering, joint cause and state after the first */
  readonly joint: readonly (readonly (readonly Float64Array[])[])[];
  /** by finding: the factor without any fault's part in it */
  readonly constant: Float64Array;
}

export function weightsOf(model: Model): Weights {
  return {
    absent: Float64Array.from(model.prior, (p, i) => (model.linked[i] ? 1 : 1 - p)),
    present: presentWeights(model, () => true),
    worth: model.gatherings.map((g) => g.worth),
    mass: model.gatherings.map((g) => g.causes.map((c) => c.mass)),
    joint: model.gatherings.map((g) => g.joint.map((c) => c.mass)),
    constant: model.constant,
  };
}

function presentWeights(model: Model, counts: (finding: number) => boolean): Float64Array {
  const present = Float64Array.from(model.prior, (p, i) => (model.linked[i] ? 1 : p));
  for (const { finding, fault, factor } of model.plain) if (counts(finding)) present[fault]! *= factor;
  return present;
}

/** As if a finding had not been made. */
export function withoutFinding(model: Model, weights: Weights, finding: number): Weights {
  const at = model.gatherings.findIndex((g) => g.finding === finding);
  const constant = weights.constant.with(finding, 1);
  const present = presentWeights(model, (f) => f !== finding);
  if (at < 0) return { ...weights, present, constant };
  const { grades, causes, joint: functions } = model.gatherings[at]!;
  const still = new Float64Array(grades);
  still[0] = 1;
  const mass = weights.mass.with(
    at,
    causes.map(() => still),
  );
  const joint = weights.joint.with(
    at,
    functions.map((c) => c.mass.map(() => still)),
  );
  const worth = weights.worth.with(at, new Float64Array(grades).fill(1));
  return { ...weights, present, constant, mass, joint, worth };
}

/** As if present faults also had to meet these likelihoods. */
export function withFactors(
  weights: Weights,
  factors: readonly { fault: number; factor: number }[],
): Weights {
  const present = weights.present.slice();
  for (const { fault, factor } of factors) present[fault]! *= factor;
  return { ...weights, present };
}

/** As if faults were known to be there or not. */
export function withStates(
  weights: Weights,
  states: readonly { readonly fault: number; readonly present: boolean }[],
): Weights {
  const absent = weights.absent.slice();
  const present = weights.present.slice();
  for (const state of states) (state.present ? absent : present)[state.fault] = 0;
  return { ...weights, absent, present };
}

/** As if a fault were known to be there or not. */
export const withState = (weights: Weights, fault: number, present: boolean): Weights =>
  withStates(weights, [{ fault, present }]);
