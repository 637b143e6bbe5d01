import type { Body, EntryKind } from '../entry.js';
import { plausibleTorque } from './joint.js';
import { measuredSizes, risingRange, valveOfThisEngine } from './measured.js';
import type { Broken, Rule, RuleContext, RuleHere } from './rule.js';
import { numberOfTheCheck } from './seen.js';
import { distinctTiers, oneKind, risingScale } from './tools.js';

/** What a line of a kind must keep to beyond its schema. The words are the same for a form, a device, a file, a command. */
const rules: { readonly [K in EntryKind]?: Rule<K> } = {
  identity: measuredSizes,
  spec: risingRange,
  joint: plausibleTorque,
  wrench: risingScale,
  instrument: oneKind,
  supplier: distinctTiers,
};

const rulesHere: { readonly [K in EntryKind]?: RuleHere<K> } = {
  measurement: valveOfThisEngine,
  observation: numberOfTheCheck,
};

/** The rule that a body breaks, if any; those of this engine only where it is told which engine it is. */
export function brokenRule<K extends EntryKind>(
  kind: K,
  body: Body<K>,
  context?: RuleContext,
): Broken | undefined {
  return rules[kind]?.(body) ?? (context && rulesHere[kind]?.(body, context));
}
