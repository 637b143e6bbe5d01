import { useState } from 'react';
import type { Job, LimitAnswer } from '../../../job/index.js';
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

/** What follows from a reading that is outside its limit or too close to it. */
export function DecideReading({
  job,
  answer,
  onClose,
}: {
  job: Job;
  answer: LimitAnswer | undefined;
  onClose: () => void;
}) {
  const [choice, setChoice] = useState<Choice>();
  const [reason, setReason] = useState('');
  const [until, setUntil] = useState('');
  const { wrong, act } = useAct();
  const m = answer?.measurement;
  const save = () =>
    act(async () => {
      if (!m || !choice) throw new Error('Choose what to do.');
      await write(job.id, 'decision', {
        about: 'measurement',
        which: m.measure,
        title: `${m.title}: ${choices.find((c) => c.id === choice)!.label.toLowerCase()}`,
        choice,
        reason: reason.trim(),
        ...(choice === 'provisional' && { until: until.trim() || 'the next service' }),
      });
      onClose();
    });
  return (
    <Dialog title={m ? `${m.title}: ${m.value.written}` : ''} open={answer !== undefined} onClose={onClose}>
      <p>{answer?.decision?.words}</p>
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
      <Wrong words={wrong} />
      <div className="row end">
        <Button onClick={onClose}>Not yet</Button>
        <Button look="go" disabled={!choice} onClick={() => void save()}>
          Decide
        </Button>
      </div>
    </Dialog>
  );
}
