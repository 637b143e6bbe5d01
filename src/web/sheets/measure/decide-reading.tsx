import { useState } from 'react';
import type { Job } from '../../../job/index.js';
import { write } from '../../data/outbox.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { Dialog } from '../../parts/dialog.js';
import { Choices, TextField } from '../../parts/field.js';

const choices = [
  { id: 'renew', label: 'Renew the part' },
  { id: 'recondition', label: 'Recondition it' },
  { id: 'reuse', label: 'Use it again' },
  { id: 'provisional', label: 'Put it back for now' },
  { id: 'measure-again', label: 'Measure with a better tool' },
  { id: 'scrap', label: 'Scrap' },
] as const;
type Choice = (typeof choices)[number]['id'];

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
      {about && <Form key={about.which} job={job} about={about} onClose={onClose} />}
    </Dialog>
  );
}

function Form({ job, about, onClose }: { job: Job; about: Deciding; onClose: () => void }) {
  const [choice, setChoice] = useState<Choice>();
  const [reason, setReason] = useState('');
  const [until, setUntil] = useState('');
  const { wrong, act } = useAct();
  const save = () =>
    act(async () => {
      if (!choice) throw new Error('Choose what to do.');
      await write(job.id, 'decision', {
        about: 'measurement',
        which: about.which,
        title: `${about.title} ${about.value}: ${choices.find((c) => c.id === choice)!.label.toLowerCase()}`,
        choice,
        reason: reason.trim(),
        ...(choice === 'provisional' && { until: until.trim() || 'the next service' }),
      });
      onClose();
    });
  return (
    <>
      <p>{about.says}</p>
      <Choices label="What to do" choices={choices} value={choice} onChange={setChoice} />
      {choice === 'provisional' && (
        <TextField
          label="Comes back when"
          value={until}
          onChange={setUntil}
          placeholder="the part arrives, or the next service"
        />
      )}
      <TextField label="Why" value={reason} onChange={setReason} long />
      {about.reasons.length > 0 && (
        <div className="choices">
          {about.reasons.map((words) => (
            <Button
              key={words}
              onClick={() => setReason(reason.trim() ? `${reason.trim()} ${words}` : words)}
            >
              {words}
            </Button>
          ))}
        </div>
      )}
      <Wrong words={wrong} />
      <div className="row end">
        <Button onClick={onClose}>Not yet</Button>
        <Button look="go" disabled={!choice} onClick={() => void save()}>
          Decide
        </Button>
      </div>
    </>
  );
}
