import type { AskedGate, Coverage, Job } from '../../../job/index.js';
import { Asked, Resumed } from '../../form/form.js';
import { useForm } from '../../form/use-form.js';
import { Button, Wrong } from '../../parts/act.js';
import { ActPage } from '../teardown/act-page.js';
import { TickRows } from '../teardown/tick-row.js';
import { ViewRows } from '../teardown/view-rows.js';

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
      checked: { as: 'drawn', label: 'Proved', begin: asked.answer?.checked ?? [] },
      words: { as: 'text', label: 'Note', hint: 'what was felt, how much' },
    },
    also: ({ checked = [] }) => ({
      step: asked.step,
      stage: 'assembly',
      title: `${gate.name}: proved`,
      state: 'done',
      checked,
    }),
    onDone: ({ state }) => (state === 'done' ? onDone : onLeave)(),
  });
}

/** A gate: not on before each of its demands is proved. What was found is logged either way. */
export function GateAct(props: GateProps) {
  const { job, asked, onLeave } = props;
  const { gate } = asked;
  const form = useGate(props);
  const open = gate.demands.filter((d) => !form.list('checked').includes(d));
  const notSo = { title: `${gate.name}: not so yet`, state: 'planned' } as const;
  return (
    <ActPage
      job={job}
      where={props.where}
      title={`Not on before this is so: ${gate.name.toLowerCase()}`}
      spoken={`Before you go on. ${gate.demands.join('. ')}`}
      onLeave={onLeave}
      other={
        <Button look="danger" disabled={form.busy} onClick={() => void form.keep({ also: notSo })}>
          It is not so
        </Button>
      }
      go={{
        label: open.length > 0 ? `${open.length} still to prove` : 'Proved · next',
        act: () => void form.keep(),
        disabled: form.busy || open.length > 0,
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
      <TickRows form={form} name="checked" items={gate.demands} says={(demand) => demand} />
    </ActPage>
  );
}
