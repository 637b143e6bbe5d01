import { useState } from 'react';
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

const shownAtFirst = 4;

/** Asked outright, whatever their probability: what stands here bars the hand-over while it is open. */
export function SafetyQuestions(props: { questions: readonly Question[]; onLog: (check: string) => void }) {
  const { questions, onLog } = props;
  const [all, setAll] = useState(false);
  const open = questions.filter((q) => q.state === 'open' || q.state === 'found');
  const found = questions.filter((q) => q.state === 'found').length;
  const shown = all ? questions : questions.slice(0, Math.max(shownAtFirst, found));
  const rest = questions.length - shown.length;
  return (
    <details className="card" open={found > 0}>
      <summary>
        Asked outright: {open.length} of {questions.length} safety points open
      </summary>
      <ul className="plain asked">
        {shown.map((q) => (
          <li key={q.id}>
            <b>{q.name}</b> <span className={look[q.state]}>{words[q.state]}</span>
            <div className="soft">{q.why}</div>
            {q.state === 'open' && q.checks[0] && (
              <Button
                look="quiet"
                onClick={() => onLog(q.checks[0]!.id)}
                aria-label={`Look: ${q.checks[0].title}, for ${q.name}`}
              >
                Look: {q.checks[0].title}
              </Button>
            )}
          </li>
        ))}
      </ul>
      {(rest > 0 || all) && (
        <Button look="quiet" onClick={() => setAll(!all)}>
          {all ? 'Only the first' : `${rest} more to ask`}
        </Button>
      )}
    </details>
  );
}
