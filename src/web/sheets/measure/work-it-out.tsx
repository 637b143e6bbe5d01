import { Link } from 'wouter';
import type { LimitAnswer } from '../../../job/index.js';

/** Worksheets that go on from a reading, and the field it fills. */
const goOn: Readonly<
  Record<string, { readonly id: string; readonly field: string; readonly words: string }>
> = {
  'crankshaft-end-play': {
    id: 'end-play-gasket',
    field: 'play',
    words: 'Which gasket or shim sets it right?',
  },
  'ring-end-gap': { id: 'ring-end-gap', field: 'gap', words: 'What the gap says about the bore' },
};

/** The reading carried over into the reference desk, with its limits. */
export function WorkItOut({ answers }: { answers: readonly LimitAnswer[] }) {
  const last = answers.findLast((a) => !a.superseded);
  const sheet = last && goOn[last.group.last.measure];
  if (!last || !sheet) return null;
  const { min, max } = last.limit ?? {};
  const given = new URLSearchParams({
    [sheet.field]: last.group.last.value.written,
    ...(min && { least: min.written }),
    ...(max && { most: max.written }),
  });
  return (
    <p>
      <Link className="button" href={`/desk/${sheet.id}?${given}`}>
        {sheet.words}
      </Link>
    </p>
  );
}
