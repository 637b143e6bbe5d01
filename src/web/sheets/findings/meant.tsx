import { type MeantOutcome, meantBy } from '../../../diagnose/index.js';
import type { Job } from '../../../job/index.js';
import { useAnswers } from '../../data/answers.js';
import { write } from '../../data/outbox.js';
import { Button, useAct, Wrong } from '../../parts/act.js';

/** Outcomes of the catalog that own words may mean: one touch takes one, and keeps the words beside it. */
export function Meant({ job, words, onTaken }: { job: Job; words: string; onTaken: () => void }) {
  const { catalog, engine } = useAnswers();
  const { wrong, busy, act } = useAct();
  const meant = meantBy(catalog, engine.facts, words).filter((m) => engine.barred(m.check) === undefined);
  const take = async ({ check, outcome }: MeantOutcome) => {
    const body = { check: check.id, title: check.title, outcomes: [outcome.words], words: words.trim() };
    if (await act(() => write(job.id, 'observation', body))) onTaken();
  };
  if (meant.length === 0) return null;
  return (
    <section className="stack tight" aria-label="You may mean">
      <p className="soft">You may mean, one touch takes it:</p>
      <div className="meant">
        {meant.map((m) => (
          <Button key={`${m.check.id} ${m.outcome.id}`} disabled={busy} onClick={() => void take(m)}>
            <span>
              {m.check.title}: <b>{m.outcome.words}</b>
            </span>
          </Button>
        ))}
      </div>
      <Wrong words={wrong} />
    </section>
  );
}
