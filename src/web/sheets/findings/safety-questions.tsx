import type { Findings } from '../../../diagnose/index.js';
import { Button } from '../../parts/act.js';

type Question = Findings['safety'][number];

const words: Readonly<Record<Question['state'], string>> = {
  open: 'not looked at',
  found: 'found',
  'looked at': 'looked at',
  'ruled out': 'ruled out',
  repaired: 'repaired',
};
const look: Readonly<Record<Question['state'], string>> = {
  open: 'soft',
  found: 'verdict fail',
  'looked at': 'verdict pass',
  'ruled out': 'verdict pass',
  repaired: 'verdict pass',
};

/** Asked outright, whatever their probability: what stands here bars the hand-over while it is open. */
export function SafetyQuestions(props: { questions: readonly Question[]; onLog: (check: string) => void }) {
  const open = props.questions.filter((q) => q.state === 'open' || q.state === 'found');
  return (
    <details className="card" open={open.some((q) => q.state === 'found')}>
      <summary>
        Asked outright: {open.length} of {props.questions.length} safety points open
      </summary>
      <ul className="lines">
        {props.questions.map((q) => (
          <li key={q.id}>
            <div>
              <b>{q.name}</b> <span className={look[q.state]}>{words[q.state]}</span>
              <div className="soft">{q.why}</div>
            </div>
            {q.state === 'open' && q.checks[0] && (
              <Button
                look="quiet"
                onClick={() => props.onLog(q.checks[0]!.id)}
                aria-label={`${q.checks[0].title}, for ${q.name}`}
              >
                {q.checks[0].title}
              </Button>
            )}
          </li>
        ))}
      </ul>
    </details>
  );
}
