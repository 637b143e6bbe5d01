import type { Answer, Field, Given, Worksheet } from '../../src/worksheet/index.js';

/** A worksheet made for a test: its fields and what it computes. */
export function sheet(
  fields: readonly Field[],
  compute: (given: Given) => readonly Answer[] = () => [],
): Worksheet {
  return {
    id: 'made-for-a-test',
    question: 'Does it work?',
    title: 'Made for a test',
    purpose: 'Tests the runner.',
    fields,
    compute,
    cautions: [],
    sources: [],
    examples: [],
  };
}

export function field(id: string, kind: Field['kind'], more: Partial<Field> = {}): Field {
  return { id, label: id.toUpperCase(), help: 'For the test.', kind, ...more };
}
