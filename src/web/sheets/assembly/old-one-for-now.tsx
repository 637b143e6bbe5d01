import { useState } from 'react';
import type { From, Job, WaitsFor } from '../../../job/index.js';
import { FormBox } from '../../form/form.js';
import { useForm } from '../../form/use-form.js';
import { Button } from '../../parts/act.js';
import { Dialog } from '../../parts/dialog.js';

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

/** What was seen of it, mostly, in one touch. */
const willDo = ['Cleaned, whole, no tear', 'Soft and flat, no nick', 'Held under a test'];

function Form({ job, part, onClose }: { job: Job; part: From<'part'>; onClose: () => void }) {
  const form = useForm({
    job: job.id,
    kind: 'decision',
    handle: `old ${part.part} for now`,
    title: `Old ${part.name.toLowerCase()}`,
    fields: {
      reason: {
        as: 'long',
        label: 'Or in your words: why it will do',
        hint: 'what you saw of it',
        help: 'What you saw of it. It goes onto the record as you write it.',
        need: 'Say why it will do.',
      },
      until: {
        as: 'text',
        label: 'What brings it back',
        begin: `when the new ${part.name.toLowerCase()} ${/s$/.test(part.name) ? 'are' : 'is'} here${part.due ? `, due ${part.due}` : ''}, at the latest at the next service`,
        need: 'Say what brings it back.',
      },
    },
    also: {
      about: 'part',
      which: part.part,
      title: `Old ${part.name.toLowerCase()}`,
      choice: 'provisional',
    },
    onDone: onClose,
  });
  const say = (reason: string) => {
    form.set('reason', reason);
    void form.keep();
  };
  return (
    <FormBox
      form={form}
      keep="Put it back for now"
      barred={form.text('reason') === '' || form.text('until') === ''}
      leave="Leave it"
      onLeave={onClose}
      before={
        <>
          <p>
            It stays open: it is printed on the record, stands among what is due next, and is asked for again
            when the part is here.
          </p>
          <fieldset className="choices">
            <legend className="label">Why it will do</legend>
            {willDo.map((reason) => (
              <Button key={reason} disabled={form.busy} onClick={() => say(reason)}>
                {reason}
              </Button>
            ))}
          </fieldset>
        </>
      }
    />
  );
}
