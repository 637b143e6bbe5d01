import { useState } from 'react';
import { type Job, whenOf } from '../../job/index.js';
import { counted } from '../../phrase/index.js';
import { logChaptersUrl, namedChaptersUrl } from '../data/api.js';
import { Button } from './act.js';
import { Dialog } from './dialog.js';
import { Field } from './field.js';

/** Chapter files (WebVTT) for the films of a job: most players show them when the file lies beside the film. */
export function FilmChapters({ job }: { job: Job }) {
  const [open, setOpen] = useState(false);
  const close = () => setOpen(false);
  return (
    <>
      <Button onClick={() => setOpen(true)}>Chapters for a film</Button>
      <Dialog title="Chapters for a film" open={open} onClose={close}>
        <ChaptersForm job={job} onClose={close} />
      </Dialog>
    </>
  );
}

function ChaptersForm({ job, onClose }: { job: Job; onClose: () => void }) {
  const films = [...new Set(job.photographs.flatMap(({ clip }) => (clip ? [clip.file] : [])))];
  const first = job.log.find(({ known, struck }) => !struck && known?.kind === 'step')?.entry;
  const [from, setFrom] = useState(first ? localMinute(whenOf(first)) : '');
  const [to, setTo] = useState('');
  const times = { from: new Date(from), ...(to !== '' && { to: new Date(to) }) };
  const lines = linesBetween(job, times);
  return (
    <>
      {films.length > 0 && (
        <ul className="lines">
          {films.map((film, i) => (
            <li key={film}>
              <span>{film}, by the pieces that were named</span>
              <a className="button" href={namedChaptersUrl(job.id, i + 1)} download>
                Chapter file
              </a>
            </li>
          ))}
        </ul>
      )}
      <p>A camera that ran along: each line of the log becomes a chapter, by its time.</p>
      <TimeField label="The film began" value={from} onChange={setFrom} />
      <TimeField label="It ended (may be left open)" value={to} onChange={setTo} />
      <p className="soft" role="status">
        {counted(lines, 'line')} of the log {lines === 1 ? 'falls' : 'fall'} into it.
      </p>
      <div className="row end">
        <Button onClick={onClose}>Close</Button>
        {lines > 0 ? (
          <a className="button go" href={logChaptersUrl(job.id, inIso(times))} download>
            Chapter file of the log
          </a>
        ) : (
          <Button look="go" disabled>
            Chapter file of the log
          </Button>
        )}
      </div>
    </>
  );
}

function TimeField(props: { label: string; value: string; onChange: (value: string) => void }) {
  return (
    <Field label={props.label}>
      {(control) => (
        <input
          {...control}
          type="datetime-local"
          step={1}
          value={props.value}
          onChange={(e) => props.onChange(e.target.value)}
        />
      )}
    </Field>
  );
}

interface Times {
  readonly from: Date;
  readonly to?: Date;
}

function linesBetween(job: Job, { from, to }: Times): number {
  const within = (at: number) => at >= from.getTime() && (to === undefined || at < to.getTime());
  return job.log.filter(
    ({ entry, known, struck }) =>
      known && !struck && known.kind !== 'strike' && within(Date.parse(whenOf(entry))),
  ).length;
}

const inIso = ({ from, to }: Times) => ({
  from: from.toISOString(),
  ...(to !== undefined && { to: to.toISOString() }),
});

/** As a field of this kind takes it: by this device's own clock. */
function localMinute(at: string): string {
  const date = new Date(at);
  return new Date(date.getTime() - date.getTimezoneOffset() * 60_000).toISOString().slice(0, 16);
}
