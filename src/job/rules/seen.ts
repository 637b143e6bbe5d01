import { byId } from '../../catalog/index.js';
import { whyNoValue } from '../../diagnose/index.js';
import type { RuleHere } from './rule.js';

/** A number typed into a check is one that the check can end in. */
export const numberOfTheCheck: RuleHere<'observation'> = ({ check: id, value }, { catalog }) => {
  const check = byId(catalog.checks).get(id ?? '');
  if (value === undefined || !check) return undefined;
  const words = whyNoValue(check, value);
  return words === undefined ? undefined : { field: 'value', words };
};
