import { Link } from 'wouter';
import { byId } from '../../../catalog/index.js';
import type { LimitAnswer } from '../../../job/index.js';
import { useCatalog } from '../../data/answers.js';

/** The reading carried over into the reference desk, with its limits. */
export function WorkItOut({ answers }: { answers: readonly LimitAnswer[] }) {
  const last = answers.findLast((a) => !a.superseded);
  const sheet = byId(useCatalog().measurements).get(last?.group.last.measure ?? '')?.goesOn;
  if (!last || !sheet) return null;
  const { min, max } = last.limit ?? {};
  const given = new URLSearchParams({
    [sheet.field]: last.group.last.value.written,
    ...(min && { least: min.written }),
    ...(max && { most: max.written }),
  });
  return (
    <p>
      <Link className="button" href={`/desk/${sheet.worksheet}?${given}`}>
        {sheet.words}
      </Link>
    </p>
  );
}
