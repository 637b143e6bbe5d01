import { useState } from 'react';
import type { Body, From } from '../../job/index.js';
import { asBody } from '../form/as-body.js';
import { FormBox } from '../form/form.js';
import { useForm } from '../form/use-form.js';
import { Button } from './act.js';
import { Dialog } from './dialog.js';
import { aboutAfter } from './sides.js';

/** A picture with its line: what it shows may be said anew at any time. */
type Captioned = Body<'photograph'> & Pick<From<'photograph'>, 'entry'>;

/** One touch opens what the picture is said to show. */
export function ChangeCaption({ job, of }: { job: string; of: Captioned }) {
  const [open, setOpen] = useState(false);
  return (
    <>
      <Button
        look="quiet"
        aria-label={`Change the caption: ${of.caption || 'none yet'}`}
        onClick={() => setOpen(true)}
      >
        Caption
      </Button>
      <Dialog title={captionTitle} open={open} onClose={() => setOpen(false)}>
        <CaptionForm job={job} of={of} onDone={() => setOpen(false)} />
      </Dialog>
    </>
  );
}

export const captionTitle = 'What the picture shows';

export function CaptionForm({ job, of, onDone }: { job: string; of: Captioned; onDone: () => void }) {
  const { entry, ...picture } = of;
  const first = picture.insteadOf ?? entry;
  const { about: _, caption: __, when: ___, ...same } = asBody({ ...picture, entry, at: '', by: '' });
  const form = useForm({
    job,
    kind: 'photograph',
    handle: first,
    title: captionTitle,
    fields: {
      caption: { as: 'text', label: 'Caption', begin: picture.caption },
      when: {
        as: 'choice',
        label: 'Taken',
        begin: picture.when,
        choices: [
          { id: 'before', label: 'before the work' },
          { id: 'during', label: 'during it' },
          { id: 'after', label: 'after it' },
        ],
      },
    },
    also: ({ caption = '' }) => {
      const about = aboutAfter(picture, caption);
      return { ...same, ...(about !== undefined && { about }), insteadOf: first };
    },
    onDone,
  });
  return <FormBox form={form} keep="Keep" leave="Leave it" onLeave={onDone} />;
}
