import { roleOf } from '../../../catalog/index.js';
import type { EarlyWait, Job } from '../../../job/index.js';
import { useCatalog } from '../../data/answers.js';
import { write } from '../../data/outbox.js';
import { Button, useAct, Wrong } from '../../parts/act.js';

/** Soaks and cool-downs, begun first so that they run while other things come off. */
export function Early({ job, early }: { job: Job; early: readonly EarlyWait[] }) {
  const { wrong, act } = useAct();
  const catalog = useCatalog();
  if (early.length === 0) return null;
  const say = (wait: EarlyWait, state: 'soaking' | 'dropped') =>
    act(() =>
      write(job.id, 'cleaning', {
        cleaning: `penetrant-${wait.component}`.slice(0, 80),
        title: `Penetrant: ${wait.name}`,
        component: wait.component,
        materials: ['steel'],
        agent: roleOf(catalog, 'penetrant'),
        state,
        soakMinutes: wait.minutes,
      }),
    );
  return (
    <section className="card stack tight" aria-label="Begin these first">
      <h2>Begin these first</h2>
      <ul className="lines acts">
        {early.map((wait) => (
          <li key={`${wait.kind} ${wait.component}`}>
            <div>
              <b>{wait.name}</b>: {wait.words}
              <div className="soft">{leftWords(wait)}</div>
            </div>
            {wait.kind === 'soak' && (
              <span className="row">
                {!wait.begun && <Button onClick={() => void say(wait, 'soaking')}>Wet it now</Button>}
                <Button look="quiet" onClick={() => void say(wait, 'dropped')}>
                  Not stuck
                </Button>
              </span>
            )}
          </li>
        ))}
      </ul>
      <Wrong words={wrong} />
    </section>
  );
}

function leftWords({ kind, minutes, left, begun }: EarlyWait): string {
  if (kind === 'cool') return `the engine ran not long ago: ${left} min more`;
  if (!begun)
    return `let it stand ${minutes} min; feel first how tight it sits, that cannot be felt afterwards`;
  return left > 0 ? `soaking, ${left} of ${minutes} min left` : 'soaked';
}
