import { type Answer, type Ask, type Given, type Worksheet, worksheet } from '../../src/worksheet/index.js';

/** A worksheet made for a test: its fields and what it computes. */
export function sheet<F extends Readonly<Record<string, Ask<unknown>>>>(
  fields: F,
  compute: (given: Given<NoInfer<F>>) => readonly Answer[] = () => [],
  names?: Readonly<Record<string, keyof F & string>>,
): Worksheet {
  return worksheet<F>({
    id: 'made-for-a-test',
    group: 'Is it worn?',
    question: 'Does it work?',
    title: 'Made for a test',
    purpose: 'Tests the runner.',
    fields,
    compute,
    ...(names && { names }),
    cautions: [],
    sources: [],
    examples: [],
  });
}
