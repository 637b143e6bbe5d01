import { useState } from 'react';
import type { Measurement } from '../../../catalog/index.js';
import type { Job } from '../../../job/index.js';
import { write } from '../../data/outbox.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { Dialog } from '../../parts/dialog.js';
import { Choices, TextField } from '../../parts/field.js';

const stamps = [
  { id: 'no stamp', label: 'No stamp' },
  { id: '0.010 over', label: '0.010 over' },
  { id: '0.020 over', label: '0.020 over' },
  { id: '0.030 over', label: '0.030 over' },
  { id: 'another stamp', label: 'Another stamp' },
] as const;

/** What is looked at and not measured: a stamp on the piston's top or the block. It is kept as something seen. */
export function Looked(props: { job: Job; measurement: Measurement | undefined; onClose: () => void }) {
  const { measurement, onClose } = props;
  return (
    <Dialog title={measurement?.name ?? ''} open={measurement !== undefined} onClose={onClose}>
      {measurement && <Form {...props} measurement={measurement} />}
    </Dialog>
  );
}

function Form({ job, measurement, onClose }: { job: Job; measurement: Measurement; onClose: () => void }) {
  const [seen, setSeen] = useState<(typeof stamps)[number]['id']>();
  const [words, setWords] = useState('');
  const { wrong, act } = useAct();
  const save = () =>
    act(async () => {
      if (!seen) throw new Error('Say what stands there.');
      await write(job.id, 'observation', {
        title: measurement.name,
        outcomes: [seen],
        ...(words.trim() && { words: words.trim() }),
      });
      onClose();
    });
  return (
    <>
      <p className="soft">Look at the top of the piston and the edge of the block, wiped clean.</p>
      <Choices label="It says" choices={stamps} value={seen} onChange={setSeen} />
      <TextField label="In words" value={words} onChange={setWords} placeholder="0.25 on the piston top" />
      <p className="soft">What follows: {measurement.decision}.</p>
      <Wrong words={wrong} />
      <div className="row end">
        <Button onClick={onClose}>Close</Button>
        <Button look="go" disabled={!seen} onClick={() => void save()}>
          Log it
        </Button>
      </div>
    </>
  );
}
