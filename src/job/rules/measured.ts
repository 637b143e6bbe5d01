import { applies, byId } from '../../catalog/index.js';
import { valveOf, valveWay } from '../valve.js';
import type { Rule, RuleHere } from './rule.js';

/** A bore and a stroke are lengths above zero. */
export const measuredSizes: Rule<'identity'> = (body) => {
  if (body.how !== 'measured') return undefined;
  const wrong = (['bore', 'stroke', 'shaft'] as const).find((field) => {
    const size = body[field];
    return size !== undefined && !(size.kind === 'length' && size.si > 0);
  });
  return wrong && { field: wrong, words: `a ${wrong} is a length above zero` };
};

/** A range on the maker's sheet is of one kind and rises. */
export const risingRange: Rule<'spec'> = ({ value, upTo }) => {
  if (!upTo) return undefined;
  if (!value) return { field: 'value', words: 'a range has a lower end as well' };
  if (value.kind !== upTo.kind)
    return { field: 'upTo', words: `${upTo.written} and ${value.written} are not of one kind` };
  return value.si <= upTo.si
    ? undefined
    : { field: 'upTo', words: `the upper end, ${upTo.written}, is below the lower, ${value.written}` };
};

/** A clearance is read at one valve, and only at one that the engine has. */
export const valveOfThisEngine: RuleHere<'measurement'> = ({ measure, place }, { facts, catalog }) => {
  if (!valveWay(catalog, measure)) return undefined;
  const known = byId(catalog.measurements).get(measure)!;
  if (applies(known.when, facts) === 'no')
    return { field: 'measure', words: `this engine has no valves of that kind: ${known.name}` };
  return valveOf(place) ? undefined : { field: 'place', words: 'Say which valve: intake or exhaust.' };
};
