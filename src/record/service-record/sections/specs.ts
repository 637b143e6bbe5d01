import type { From } from '../../../job/index.js';
import { say, sayOrigin, sayRange } from '../numbers.js';
import type { Fact, Section } from '../section.js';
import type { Sheet } from '../sheet.js';

/**
 * The figures this engine should have, each with the page it was read from. In the brief form only those are
 * printed that something was held against: as limits and as torques.
 */
export function specs(sheet: Sheet): Section | undefined {
  const facts = [...sheet.job.specs.values()].map((spec) => specFact(spec, sheet));
  if (facts.length === 0 || sheet.detail === 'brief') return undefined;
  return {
    id: 'specs',
    title: 'Figures for this engine',
    place: 'column',
    blocks: [{ type: 'facts', facts }],
  };
}

function specFact(spec: From<'spec'>, { system }: Sheet): Fact {
  return { label: spec.label, value: specValue(spec, system), origin: sayOrigin(spec.origin) };
}

/** A line whose number nobody confirmed is printed as it was written, never worked out here. */
function specValue(spec: From<'spec'>, system: Sheet['system']): string {
  if (spec.value && spec.upTo) return sayRange(spec.value, spec.upTo, system);
  if (spec.value) return say(spec.value, system);
  return spec.text ?? spec.line;
}
