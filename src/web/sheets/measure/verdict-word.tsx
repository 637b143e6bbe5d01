import type { Decision } from '../../../gauge/index.js';
import { percent } from '../../../phrase/index.js';

/** Sign, word, and how likely it conforms where that is what is asked. */
export function VerdictWord({ decision }: { decision: Decision }) {
  const { verdict, probabilityOfConformity: p } = decision;
  return (
    <span className="verdict-with-chance">
      <span className={`verdict ${verdict}`}>{verdict.replace('-', ' ')}</span>
      {verdict === 'cannot-decide' && <small>{percent(p)} that it conforms</small>}
    </span>
  );
}
