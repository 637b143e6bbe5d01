import { GaugeError, requireFinite, requireNotNegative, requirePositive } from './error.js';
import { normalQuantile } from './normal.js';
import { repeats } from './pooled.js';
import { studentQuantile } from './student.js';

/** Where one uncertainty comes from. Half-widths are the "± a" of a sheet. */
export type UncertaintySource =
  | { readonly type: 'repeats'; readonly readings: readonly number[] }
  /** scatter known beforehand, used for the mean of `count` readings */
  | {
      readonly type: 'scatter';
      readonly sd: number;
      readonly count: number;
      readonly degreesOfFreedom: number;
    }
  | { readonly type: 'standard'; readonly u: number; readonly degreesOfFreedom?: number }
  | { readonly type: 'expanded'; readonly U: number; readonly k: number; readonly degreesOfFreedom?: number }
  | {
      readonly type: 'rectangular' | 'triangular' | 'arcsine';
      readonly half: number;
      readonly doubt?: number;
    };

export interface BudgetLine {
  readonly name: string;
  readonly from: UncertaintySource;
  /** how much the result moves for one unit of this input; 1 when left out */
  readonly sensitivity?: number;
}

export interface BudgetShare {
  readonly name: string;
  readonly u: number;
  readonly degreesOfFreedom: number;
  /** |sensitivity|·u: in the unit of the result */
  readonly contribution: number;
  /** part of the variance, 0 … 1 */
  readonly share: number;
}

export interface Budget {
  readonly shares: readonly BudgetShare[];
  /** combined standard uncertainty */
  readonly u: number;
  readonly effectiveDegreesOfFreedom: number;
  /** coverage factor for the wanted coverage, Student's t at the whole degrees of freedom below the effective */
  readonly k: number;
  readonly expanded: number;
  readonly coverage: number;
}

/**
 * An uncertainty budget: combined standard uncertainty, effective degrees of freedom, coverage factor, expanded
 * uncertainty.
 *
 * Source: JCGM 100:2008, 4.2–4.3, 5.1.2, G.4.1 (Welch–Satterthwaite), G.6.4 (degrees truncated, k = t).
 * Method: first order, inputs uncorrelated. Half-width to standard uncertainty: rectangular √3, triangular √6,
 * arcsine √2; `doubt` is the relative doubt in u and gives ν = ½·doubt⁻² (G.4.2), none means exactly known.
 * Validity: where second-order terms matter (a sensitivity of 0 at the estimate) the budget is too small; H.1.7 of the
 * Guide finds 34 nm in place of 32 nm.
 * Special cases: all inputs exact → u = 0, infinite degrees of freedom.
 * Example: H.1 of the Guide → u 32 nm, ν 16, k 2.92, U 93 nm at 99 %.
 */
export function budget(lines: readonly BudgetLine[], coverage = 0.95): Budget {
  if (lines.length === 0) throw new GaugeError('A budget needs at least one line.', 'lines', 0);
  if (!(coverage > 0.5 && coverage < 1))
    throw new GaugeError(`coverage must lie between 0.5 and 1; got ${coverage}.`, 'coverage', coverage);
  const parts = lines.map(partOf);
  const u = Math.hypot(...parts.map((part) => part.contribution));
  const shares = parts.map((part) => ({ ...part, share: u === 0 ? 0 : (part.contribution / u) ** 2 }));
  const effectiveDegreesOfFreedom = welchSatterthwaite(u, parts);
  const k = coverageFactor(coverage, effectiveDegreesOfFreedom);
  return { shares, u, effectiveDegreesOfFreedom, k, expanded: k * u, coverage };
}

function partOf({ name, from, sensitivity = 1 }: BudgetLine): Omit<BudgetShare, 'share'> {
  requireFinite(sensitivity, `${name}: sensitivity`);
  const { u, degreesOfFreedom } = standardOf(from, name);
  return { name, u, degreesOfFreedom, contribution: Math.abs(sensitivity) * u };
}

const divisors = { rectangular: Math.sqrt(3), triangular: Math.sqrt(6), arcsine: Math.SQRT2 };

/** The standard uncertainty and degrees of freedom of one source. Throws GaugeError naming the line. */
export function standardOf(
  from: UncertaintySource,
  name = 'source',
): { u: number; degreesOfFreedom: number } {
  switch (from.type) {
    case 'repeats':
      return fromRepeats(from.readings, name);
    case 'scatter':
      requirePositive(from.degreesOfFreedom, `${name}: degreesOfFreedom`);
      return {
        u:
          requireNotNegative(from.sd, `${name}: sd`) /
          Math.sqrt(requirePositive(from.count, `${name}: count`)),
        degreesOfFreedom: from.degreesOfFreedom,
      };
    case 'standard':
      return known(requireNotNegative(from.u, `${name}: u`), from.degreesOfFreedom, name);
    case 'expanded':
      return known(
        requireNotNegative(from.U, `${name}: U`) / requirePositive(from.k, `${name}: k`),
        from.degreesOfFreedom,
        name,
      );
    default:
      return {
        u: requireNotNegative(from.half, `${name}: half`) / divisors[from.type],
        degreesOfFreedom: from.doubt
          ? 0.5 / requirePositive(from.doubt, `${name}: doubt`) ** 2
          : Number.POSITIVE_INFINITY,
      };
  }
}

function fromRepeats(readings: readonly number[], name: string) {
  if (readings.length < 2)
    throw new GaugeError(`${name}: scatter needs at least two readings.`, name, readings.length);
  const { u, degreesOfFreedom } = repeats(readings);
  return { u, degreesOfFreedom };
}

function known(u: number, degreesOfFreedom = Number.POSITIVE_INFINITY, name = '') {
  if (!(degreesOfFreedom > 0))
    throw new GaugeError(`${name}: degrees of freedom must be above 0.`, name, degreesOfFreedom);
  return { u, degreesOfFreedom };
}

/** ν = u⁴/Σ(uᵢ⁴/νᵢ); infinite when every contribution with weight is exactly known. */
function welchSatterthwaite(u: number, parts: readonly Omit<BudgetShare, 'share'>[]): number {
  const doubt = parts.reduce((sum, part) => sum + part.contribution ** 4 / part.degreesOfFreedom, 0);
  return doubt === 0 ? Number.POSITIVE_INFINITY : u ** 4 / doubt;
}

/**
 * How many standard uncertainties hold the true value with this two-sided coverage.
 * Source: JCGM 100:2008, G.3.4 and table G.2; the degrees of freedom are truncated to a whole number, at least 1.
 * Example: 0.99 and 16.7 → 2.92.
 */
export function coverageFactor(coverage: number, degreesOfFreedom: number): number {
  const p = (1 + coverage) / 2;
  if (!Number.isFinite(degreesOfFreedom)) return normalQuantile(p);
  return studentQuantile(p, Math.max(1, Math.floor(degreesOfFreedom)));
}
