import type { Check } from '../../../catalog/index.js';
import { type OpenQuestion, questionsAt } from '../../../diagnose/index.js';
import type { Job } from '../../../job/index.js';
import { useAnswers } from '../../data/answers.js';
import { write } from '../../data/outbox.js';
import { Button, useAct, Wrong } from '../../parts/act.js';

/** What is not known of the engine and would change what this check says: asked here, where it matters. */
export function AskedNow({ job, check }: { job: Job; check: Check }) {
  const { catalog, engine } = useAnswers();
  return questionsAt(catalog, engine, check).map((question) => (
    <Question key={question.id} job={job} question={question} />
  ));
}

function Question({ job, question: { kind, id, asks } }: { job: Job; question: OpenQuestion }) {
  const { wrong, busy, act } = useAct();
  const answer = (said: boolean) =>
    act(() =>
      kind === 'variant'
        ? write(job.id, 'intake', { variants: { ...job.intake.variants, [id]: said } })
        : write(job.id, 'differs', { how: said ? 'there' : 'absent', component: id }),
    );
  return (
    <fieldset className="row apart asked-now">
      <legend className="hidden">{asks}</legend>
      <span>{asks}</span>
      <span className="row">
        <Button disabled={busy} onClick={() => void answer(true)}>
          {kind === 'variant' ? 'Yes' : 'It has one'}
        </Button>
        <Button disabled={busy} onClick={() => void answer(false)}>
          {kind === 'variant' ? 'No' : 'It has none'}
        </Button>
      </span>
      <Wrong words={wrong} />
    </fieldset>
  );
}
