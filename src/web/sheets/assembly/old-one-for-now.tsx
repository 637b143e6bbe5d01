import { useState } from 'react';
import type { From, Job, WaitsFor } from '../../../job/index.js';
import { writeAll } from '../../data/outbox.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { Dialog } from '../../parts/dialog.js';
import { TextField } from '../../parts/field.js';

/** A late part, and what lets the work go on: the old one goes back for now, on what was seen of it, and stays open until it is renewed. */
export function OldOneForNow({ job, wait }: { job: Job; wait: WaitsFor }) {
  const [part, setPart] = useState<From<'part'>>();
  return (
    <>
      {wait.parts.map((p) => (
        <Button key={p.part} onClick={() => setPart(p)}>
          Old {p.name.toLowerCase()} back in for now
        </Button>
      ))}
      <Dialog
        title={part ? `Old ${part.name.toLowerCase()} for now` : ''}
        open={part !== undefined}
        onClose={() => setPart(undefined)}
      >
        {part && <Form job={job} part={part} onClose={() => setPart(undefined)} />}
      </Dialog>
    </>
  );
}

function Form({ job, part, onClose }: { job: Job; part: From<'part'>; onClose: () => void }) {
  const [reason, setReason] = useState('');
  const [until, setUntil] = useState(
    `when the new ${part.name.toLowerCase()} is here${part.due ? `, due ${part.due}` : ''}, at the latest at the next service`,
  );
  const { wrong, act } = useAct();
  const save = () =>
    act(async () => {
      await writeAll(job.id, [
        {
          kind: 'decision',
          body: {
            about: 'part',
            which: part.part,
            title: `Old ${part.name.toLowerCase()}`,
            choice: 'provisional',
            reason: reason.trim(),
            until: until.trim().slice(0, 200),
          },
        },
      ]);
      onClose();
    });
  return (
    <>
      <p>
        It stays open: it is printed on the record, stands among what is due next, and is asked for again when
        the part is here.
      </p>
      <TextField
        label="Why it will do"
        value={reason}
        onChange={setReason}
        placeholder="cleaned, looked through, no tear"
        help="What you saw of it. It goes onto the record as you write it."
        long
      />
      <TextField label="What brings it back" value={until} onChange={setUntil} />
      <Wrong words={wrong} />
      <div className="row end">
        <Button onClick={onClose}>Leave it</Button>
        <Button look="go" disabled={reason.trim() === '' || until.trim() === ''} onClick={() => void save()}>
          Put it back for now
        </Button>
      </div>
    </>
  );
}
