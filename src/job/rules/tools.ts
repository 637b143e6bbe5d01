import type { Rule } from './rule.js';

/** A wrench's scale is in torque and ends above where it begins. */
export const risingScale: Rule<'wrench'> = ({ min, max }) => {
  const wrong = [min, max].find(({ kind }) => kind !== 'torque');
  if (wrong) return { field: wrong === min ? 'min' : 'max', words: `${wrong.written} is no torque` };
  return min.si < max.si ? undefined : { field: 'max', words: 'The scale ends below where it begins.' };
};

/** What an instrument reads to, how far it is off and how far it can be trusted are said in what it reads. */
export const oneKind: Rule<'instrument'> = ({ resolution, uncertainty, zeroError }) => {
  if (resolution.kind !== uncertainty.kind)
    return {
      field: 'uncertainty',
      words: `${uncertainty.written} and ${resolution.written} are not of one kind`,
    };
  if (zeroError && zeroError.kind !== resolution.kind)
    return {
      field: 'zeroError',
      words: `${zeroError.written} and ${resolution.written} are not of one kind`,
    };
  return undefined;
};

/** Each line of shipping begins at a sum of its own. */
export const distinctTiers: Rule<'supplier'> = ({ shipping }) =>
  new Set(shipping.map(({ from }) => from)).size < shipping.length
    ? { field: 'shipping', words: 'Two lines of shipping begin at the same sum.' }
    : undefined;
