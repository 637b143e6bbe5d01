import { useState } from 'react';
import type { Body } from '../../job/index.js';
import { FormBox } from '../form/form.js';
import { useForm } from '../form/use-form.js';
import { Button } from './act.js';
import { Dialog } from './dialog.js';

interface ClipOf {
  readonly job: string;
  readonly stage: Body<'photograph'>['stage'];
  /** what it shows, when that is known already */
  readonly about?: string;
  readonly caption?: string;
  readonly when?: Body<'photograph'>['when'];
}

/** Film counts too: a clip is named by its file and times; nothing is uploaded. */
export function NameClip({ label = 'Name a piece of film', ...clip }: ClipOf & { label?: string }) {
  const [open, setOpen] = useState(false);
  return (
    <>
      <Button onClick={() => setOpen(true)}>{label}</Button>
      <Dialog
        title={clip.caption ? `Film of: ${clip.caption}` : 'A piece of film'}
        open={open}
        onClose={() => setOpen(false)}
      >
        {open && <ClipForm {...clip} onClose={() => setOpen(false)} />}
      </Dialog>
    </>
  );
}

function ClipForm({
  job,
  stage,
  about,
  caption,
  when = 'during',
  onClose,
}: ClipOf & { onClose: () => void }) {
  const form = useForm({
    job,
    kind: 'photograph',
    handle: `film ${stage} ${about ?? ''}`,
    title: caption ? `Film of: ${caption}` : 'A piece of film',
    fields: {
      caption: { as: 'text', label: 'What it shows', hint: 'governor spring and its hole', begin: caption },
      'clip.file': { as: 'text', label: 'File', hint: 'bench-0412.mp4', need: 'Say which file.' },
      'clip.from': { as: 'text', label: 'From', hint: '12:40' },
      'clip.to': { as: 'text', label: 'To', hint: '13:05' },
    },
    also: ({ caption = '', clip }) => ({
      caption,
      stage,
      when,
      clip: { file: '', from: '', to: '', ...clip },
      ...(about && { about }),
    }),
    onDone: onClose,
  });
  return <FormBox form={form} keep="Keep" leave="Leave it" onLeave={onClose} />;
}
