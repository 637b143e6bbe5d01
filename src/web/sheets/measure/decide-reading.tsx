import type { Job } from '../../../job/index.js';
import { Asked, FormBox } from '../../form/form.js';
import { useForm } from '../../form/use-form.js';
import { Button } from '../../parts/act.js';
import { Dialog } from '../../parts/dialog.js';

const choices = [
  { id: 'renew', label: 'Renew the part' },
  { id: 'recondition', label: 'Recondition it' },
  { id: 'reuse', label: 'Use it again' },
  { id: 'provisional', label: 'Put it back for now' },
  { id: 'measure-again', label: 'Measure with a better tool' },
  { id: 'scrap', label: 'Scrap' },
] as const;

/** What is decided about: a reading, or a figure worked out from several. */
export interface Deciding {
  /** what the decision names in the log */
  readonly which: string;
  readonly title: string;
  /** the figure, as it shall stand in the record */
  readonly value: string;
  readonly says: string;
  /** reasons that the figures give; one tap writes one down */
  readonly reasons: readonly string[];
}

/** What follows from a reading that is outside its limit or too close to it. The figure goes into the decision's words. */
export function DecideReading(props: { job: Job; about: Deciding | undefined; onClose: () => void }) {
  const { job, about, onClose } = props;
  return (
    <Dialog
      title={about ? `${about.title}: ${about.value}` : ''}
      open={about !== undefined}
      onClose={onClose}
    >
      {about && <Form job={job} about={about} onClose={onClose} />}
    </Dialog>
  );
}

function Form({ job, about, onClose }: { job: Job; about: Deciding; onClose: () => void }) {
  const form = useForm({
    job: job.id,
    kind: 'decision',
    handle: about.which,
    title: `${about.title}: ${about.value}`,
    fields: {
      choice: { as: 'choice', label: 'What to do', choices, need: 'Choose what to do.' },
      until: {
        as: 'text',
        label: 'Comes back when',
        hint: 'the part arrives, or the next service',
        when: ({ choice }) => choice === 'provisional',
      },
      reason: { as: 'long', label: 'Why' },
    },
    also: ({ choice, reason = '', until = 'the next service' }) => ({
      about: 'measurement',
      which: about.which,
      title: `${about.title} ${about.value}: ${choices.find((c) => c.id === choice)?.label.toLowerCase()}`,
      reason,
      ...(choice === 'provisional' && { until }),
    }),
    onDone: onClose,
  });
  const addReason = (words: string) =>
    form.set('reason', [form.text('reason'), words].filter(Boolean).join(' '));
  return (
    <FormBox form={form} keep="Decide" leave="Not yet" onLeave={onClose} before={<p>{about.says}</p>}>
      <Asked form={form} />
      {about.reasons.length > 0 && (
        <div className="choices">
          {about.reasons.map((words) => (
            <Button key={words} onClick={() => addReason(words)}>
              {words}
            </Button>
          ))}
        </div>
      )}
    </FormBox>
  );
}
