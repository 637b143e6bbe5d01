import { useState } from 'react';
import type { Body } from '../../job/index.js';
import { write } from '../data/outbox.js';
import { Button, useAct, Wrong } from './act.js';
import { Dialog } from './dialog.js';
import { TextField } from './field.js';

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
  caption: known = '',
  when = 'during',
  onClose,
}: ClipOf & { onClose: () => void }) {
  const [file, setFile] = useState('');
  const [from, setFrom] = useState('');
  const [to, setTo] = useState('');
  const [caption, setCaption] = useState(known);
  const { wrong, act } = useAct();
  const save = () =>
    act(async () => {
      const clip = { file: file.trim(), from: from.trim(), to: to.trim() };
      await write(job, 'photograph', { clip, caption: caption.trim(), stage, when, about });
      onClose();
    });
  return (
    <>
      <TextField
        label="What it shows"
        value={caption}
        onChange={setCaption}
        placeholder="governor spring and its hole"
      />
      <div className="fields">
        <TextField label="File" value={file} onChange={setFile} placeholder="bench-0412.mp4" />
        <TextField label="From" value={from} onChange={setFrom} placeholder="12:40" />
        <TextField label="To" value={to} onChange={setTo} placeholder="13:05" />
      </div>
      <Wrong words={wrong} />
      <div className="row end">
        <Button onClick={onClose}>Leave it</Button>
        <Button look="go" disabled={file.trim() === ''} onClick={() => void save()}>
          Keep
        </Button>
      </div>
    </>
  );
}
