import { type Decision, decide, type Limit, type Measured } from '../../gauge/index.js';
import { of, to, type UnitSystem } from '../../quantity/index.js';
import { type Answer, type ForEach, practice, verdict } from '../../worksheet/index.js';

/** How a figure stands to what the trade goes by: it decides nothing about this machine, whose maker may say otherwise. */
export function practiceVerdict(id: string, label: string, stands: string | ForEach): Answer {
  const told = (words: string) => `common practice only: ${words} The maker’s own figure decides.`;
  const words = typeof stands === 'string' ? told(stands) : forEach((system) => told(stands[system]));
  return verdict(id, label, 'cannot-decide', words, practice);
}

export const forEach = (words: (system: UnitSystem) => string): ForEach => ({
  inch: words('inch'),
  metric: words('metric'),
});

/** One decision, told in the units of either reader. */
export interface DecisionForEach extends Pick<Decision, 'verdict'> {
  readonly stands: ForEach;
  readonly why: ForEach;
}

/** `asked` is in `units.metric`; readers of inches are told the same in `units.inch`. */
export function decideForEach(
  asked: Omit<Measured, 'unit'>,
  units: Readonly<Record<UnitSystem, string>>,
): DecisionForEach {
  const metric = decide({ ...asked, unit: units.metric });
  const inInch = (value: number) => to(of(value, units.metric), units.inch);
  const { min, max } = asked.limit;
  const limit: Limit = {
    ...(min !== undefined && { min: inInch(min) }),
    ...(max !== undefined && { max: inInch(max) }),
  };
  const { value, u } = asked;
  const inch = decide({ ...asked, value: inInch(value), u: inInch(u), limit, unit: units.inch });
  return {
    verdict: metric.verdict,
    stands: { metric: metric.stands, inch: inch.stands },
    why: { metric: metric.why, inch: inch.why },
  };
}
