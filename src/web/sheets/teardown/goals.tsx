import { useState } from 'react';
import type { GoalChoice, Job, TeardownGoal, TeardownPlan, WantedGoal } from '../../../job/index.js';
import { useAnswers } from '../../data/answers.js';
import { write, writeAll } from '../../data/outbox.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { Dialog } from '../../parts/dialog.js';

/** What must come off: set by tap, proposed from what was decided, dropped by tap. */
export function Goals({ job, plan }: { job: Job; plan: TeardownPlan }) {
  const [adding, setAdding] = useState(false);
  const { wrong, act } = useAct();
  const set = (goal: TeardownGoal, state: 'wanted' | 'dropped') =>
    act(() => write(job.id, 'goal', { component: goal.component, title: goal.title, why: goal.why, state }));
  return (
    <section className="card stack tight" aria-label="What must come off">
      <header>
        <h2>What must come off</h2>
        <Button onClick={() => setAdding(true)}>Add a piece</Button>
      </header>
      {plan.goals.length + plan.offered.length === 0 && (
        <p className="soft">
          Name a piece, a check or a fault. The cheapest way to it is worked out: what comes off, in which
          order, what stays on.
        </p>
      )}
      <ul className="lines acts">
        {plan.goals.map((goal) => (
          <li key={goal.component}>
            <div>
              <b>{goal.title}</b> <GoalState goal={goal} />
              {goal.why && <div className="soft">{goal.why}</div>}
            </div>
            <Button look="quiet" aria-label={`Drop ${goal.title}`} onClick={() => void set(goal, 'dropped')}>
              Drop
            </Button>
          </li>
        ))}
        {plan.offered.map((goal) => (
          <li key={goal.component}>
            <div>
              {goal.title}
              <div className="soft">{goal.why}</div>
            </div>
            <span className="row">
              <Button aria-label={`${goal.title} must come off`} onClick={() => void set(goal, 'wanted')}>
                It must
              </Button>
              <Button
                look="quiet"
                aria-label={`${goal.title} stays on`}
                onClick={() => void set(goal, 'dropped')}
              >
                It stays on
              </Button>
            </span>
          </li>
        ))}
      </ul>
      <Wrong words={wrong} />
      <AddGoal job={job} open={adding} onClose={() => setAdding(false)} />
    </section>
  );
}

/** All that the decisions ask for, taken by one touch. */
export function allOffered(job: Job, { offered }: TeardownPlan) {
  if (offered.length < 2) return undefined;
  return {
    label: `All ${offered.length} must come off`,
    write: () =>
      writeAll(
        job.id,
        offered.map(({ component, title, why }) => ({
          kind: 'goal' as const,
          body: { component, title, why, state: 'wanted' },
        })),
      ),
  };
}

const stateWords = {
  wanted: undefined,
  reached: ['pass', 'off'],
  inside: ['cannot-decide', 'off, still inside what left whole: split it on the bench'],
  absent: ['cannot-decide', 'not on this engine'],
} as const;

function GoalState({ goal }: { goal: WantedGoal }) {
  const said = stateWords[goal.state];
  return said ? <span className={`verdict wraps ${said[0]}`}>{said[1]}</span> : null;
}

const kinds: readonly { id: GoalChoice['kind']; words: string }[] = [
  { id: 'component', words: 'Pieces' },
  { id: 'fault', words: 'Faults to repair' },
  { id: 'check', words: 'Checks to make' },
];

function AddGoal({ job, open, onClose }: { job: Job; open: boolean; onClose: () => void }) {
  return (
    <Dialog title="What must come off?" open={open} onClose={onClose}>
      {open && <Choose job={job} onClose={onClose} />}
    </Dialog>
  );
}

function Choose({ job, onClose }: { job: Job; onClose: () => void }) {
  const [find, setFind] = useState('');
  const { wrong, act } = useAct();
  const { goalChoices: all } = useAnswers();
  const words = find.trim().toLowerCase();
  const found = all.filter((c) => c.title.toLowerCase().includes(words));
  const take = (choice: GoalChoice) =>
    act(async () => {
      await writeAll(
        job.id,
        choice.reach.map((goal) => ({ kind: 'goal' as const, body: { ...goal, state: 'wanted' } })),
      );
      onClose();
    });
  return (
    <>
      <input
        aria-label="Find a piece, a check or a fault"
        placeholder="head, carburetor, valve clearance, stale fuel …"
        value={find}
        onChange={(e) => setFind(e.target.value)}
      />
      <Wrong words={wrong} />
      {found.length === 0 && <p className="empty">Nothing on this engine has these words.</p>}
      {kinds.map(({ id, words: title }) => {
        const shown = found
          .filter((c) => c.kind === id)
          .slice(0, words === '' && id !== 'component' ? 4 : 60);
        return shown.length === 0 ? null : (
          <section key={id} className="stack tight">
            <h3>{title}</h3>
            <div className="choices">
              {shown.map((choice) => (
                <Button key={choice.title} onClick={() => void take(choice)}>
                  {choice.title}
                </Button>
              ))}
            </div>
          </section>
        );
      })}
      <div className="row end">
        <Button onClick={onClose}>Nothing now</Button>
      </div>
    </>
  );
}
