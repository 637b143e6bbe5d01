import type { AskedGate, Coverage, Job } from '../../../job/index.js';
import { capital } from '../../../phrase/index.js';
import { Asked, Resumed } from '../../form/form.js';
import { useForm } from '../../form/use-form.js';
import { Wrong } from '../../parts/act.js';
import { phrases } from '../../talk/answers/phrases.js';
import { ActPage } from '../teardown/act-page.js';
import { ViewRows } from '../teardown/view-rows.js';
import { useTakeBack } from './take-back.js';

interface GateProps {
  readonly job: Job;
  readonly asked: AskedGate;
  readonly where: string;
  readonly coverage: Coverage;
  readonly onDone: () => void;
  readonly onLeave: () => void;
}

function useGate({ job, asked, onDone, onLeave }: GateProps) {
  const { gate } = asked;
  return useForm({
    job: job.id,
    kind: 'step',
    handle: asked.step,
    title: gate.name,
    fields: {
      words: { as: 'text', label: 'Note', hint: 'what was felt, how much' },
    },
    also: {
      step: asked.step,
      stage: 'assembly',
      title: `${gate.name}: all so`,
      state: 'done',
      checked: [...gate.demands],
    },
    onDone: ({ state }) => (state === 'done' ? onDone : onLeave)(),
  });
}

/** A gate: each of its demands stands there, and one touch says that all are so. What was found is logged either way. */
export function GateAct(props: GateProps) {
  const { job, asked, onLeave } = props;
  const { gate } = asked;
  const form = useGate(props);
  const back = useTakeBack();
  const notSo = { title: `${gate.name}: not so yet`, state: 'planned' as const, checked: [] };
  return (
    <ActPage
      job={job}
      stage="assembly"
      where={props.where}
      title={`Before you go on: ${gate.name.toLowerCase()}`}
      spoken={`Before you go on. ${gate.demands.join('. ')}`}
      back={back?.act}
      backWords={back?.words}
      onLeave={onLeave}
      choices={[
        {
          label: 'It is not so',
          say: phrases.notSo,
          look: 'danger',
          writes: true,
          act: () => form.keep({ also: notSo }),
          disabled: form.busy,
        },
      ]}
      go={{
        label: gate.demands.length > 1 ? 'All of it is so · next' : 'It is so · next',
        say: phrases.allSo,
        act: () => form.keep(),
        disabled: form.busy,
      }}
      side={
        <>
          <ViewRows
            job={job}
            views={props.coverage.wanted.filter((v) => v.of === gate.id)}
            stage="assembly"
            when="after"
          />
          <Asked form={form} names={['words']} />
          <Wrong words={form.wrong} />
        </>
      }
    >
      <Resumed form={form} />
      <ul className="plain demands">
        {gate.demands.map((demand) => (
          <li className="line-large" key={demand}>
            {capital(demand)}
          </li>
        ))}
      </ul>
    </ActPage>
  );
}
