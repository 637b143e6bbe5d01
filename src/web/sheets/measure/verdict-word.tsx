import type { Decision } from '../../../gauge/index.js';

/** Sign, word, and how likely it conforms where that is what is asked. */
export function VerdictWord({ decision }: { decision: Decision }) {
  const { verdict, probabilityOfConformity: p } = decision;
  return (
    <span className="verdict-with-chance">
      <span className={`verdict ${verdict}`}>{verdict.replace('-', ' ')}</span>
      {verdict === 'cannot-decide' && <small>{chanceWords(p)}</small>}
    </span>
  );
}

/** A probability as a person reads it; never rounded to a certainty that it has not. */
function chanceWords(p: number): string {
  if (p < 0.01) return 'under 1 % that it conforms';
  if (p > 0.99) return 'over 99 % that it conforms';
  return `${Math.round(100 * p)} % that it conforms`;
}
