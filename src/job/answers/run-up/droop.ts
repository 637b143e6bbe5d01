import { roleOf } from '../../../catalog/index.js';
import { of, show } from '../../../quantity/index.js';
import type { Body, Written } from '../../entry.js';
import { written } from '../../read-entry.js';
import type { Answers } from '../answers.js';

/** The top speed without load as it was last said in the run-up. */
export function topSpeedSaid({ runUp, catalog }: Answers): Written | undefined {
  const topSpeed = roleOf(catalog, 'top-speed');
  return runUp.items.find(({ step }) => step.spec === topSpeed)?.said?.value;
}

/**
 * The droop as a reading: the fall from the speed without load to the one under load, in percent of the first (so the
 * trade has it; ISO 3046-4 takes it of the declared speed). Both speeds stand in its words. Nothing where `loaded` is no
 * speed. Example: 3600 and 3420 rpm: 5 %.
 */
export function droopBetween(
  noLoad: Written,
  loaded: Written,
): Pick<Body<'run-up'>, 'value' | 'words'> | undefined {
  if (loaded.kind !== 'rotation' || noLoad.kind !== 'rotation') return undefined;
  const droop = show(of(100 * (1 - loaded.si / noLoad.si), '%'));
  return {
    value: written(droop, 'ratio'),
    words: `${loaded.written} under load, ${noLoad.written} without`,
  };
}
