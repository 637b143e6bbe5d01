import { useMemo, useState } from 'react';
import { type Body, billOfParts, type From, type Job } from '../../../job/index.js';
import { writeAll } from '../../data/outbox.js';
import { useCatalog } from '../../data/queries.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { Dialog } from '../../parts/dialog.js';
import { Choices, TextField, Ticks } from '../../parts/field.js';
import { PictureGrid, TakePicture } from '../../parts/picture.js';

interface ArrivalProps {
  readonly job: Job;
  readonly part: From<'part'> | undefined;
  readonly onClose: () => void;
  readonly onMismatch: (part: string) => void;
}

/** A part has come: laid beside the old one before anybody believes that it fits. */
export function ArrivalDialog({ job, part, onClose, onMismatch }: ArrivalProps) {
  return (
    <Dialog title={part ? `${part.name} is here` : ''} open={part !== undefined} onClose={onClose}>
      {part && <Arrival key={part.entry} job={job} part={part} onClose={onClose} onMismatch={onMismatch} />}
    </Dialog>
  );
}

/** Without the entry’s own marks: what is written again as a new line. */
function asBody({ entry: _e, at: _at, by: _by, ...body }: From<'part'>): Body<'part'> {
  return body;
}

const compared = ['Same outline', 'Same holes and slots', 'Same thickness and length'];
const blames = [
  { id: 'sent-wrong', label: 'The wrong one was sent' },
  { id: 'no-fit', label: 'This offer does not fit the engine' },
] as const;

function Arrival({ job, part, onClose, onMismatch }: ArrivalProps & { part: From<'part'> }) {
  const catalog = useCatalog();
  const [ticked, setTicked] = useState<string[]>([]);
  const [differing, setDiffering] = useState(false);
  const [words, setWords] = useState('');
  const [blame, setBlame] = useState<(typeof blames)[number]['id']>('no-fit');
  const { wrong, busy, act } = useAct();
  const looks = useMemo(
    () => billOfParts(job, catalog).find((l) => l.listed === part.part)?.lookAlikes ?? [],
    [job, catalog, part.part],
  );
  const pictures = job.photographs.filter(
    (p) => p.about === part.part || (part.component !== undefined && p.about?.startsWith(part.component)),
  );
  const offer = part.offer === undefined ? undefined : job.offers.get(part.offer);
  const checks = part.consumable ? [] : compared;
  const matches = async () => {
    const line = { kind: 'part' as const, body: { ...asBody(part), state: 'arrived' } };
    if (await act(() => writeAll(job.id, [line]))) onClose();
  };
  const differs = async () => {
    const line = { kind: 'part' as const, body: { ...asBody(part), state: 'mismatch', words: words.trim() } };
    const { entry: _e, at: _at, by: _by, ...offered } = offer ?? ({} as From<'offer'>);
    const gone = offer &&
      blame === 'no-fit' && { kind: 'offer' as const, body: { ...offered, withdrawn: true } };
    if (await act(() => writeAll(job.id, gone ? [line, gone] : [line]))) onMismatch(part.part);
  };
  return (
    <>
      <p>
        {part.consumable
          ? 'The right grade and enough of it?'
          : 'Lay it beside the old one before it is fitted.'}
      </p>
      {looks.length > 0 && (
        <div className="caution" role="note">
          <ul>
            {looks.map((look) => (
              <li key={look.id}>
                <b>{look.name}.</b> {look.tell}
              </li>
            ))}
          </ul>
        </div>
      )}
      <PictureGrid photographs={pictures} />
      <TakePicture
        job={job.id}
        stage="parts"
        when="after"
        about={part.part}
        caption={`${part.name}: new beside old`}
        label="Photograph new beside old"
      />
      {!differing && (
        <>
          {checks.length > 0 && (
            <Ticks label="Held against the old one" items={checks} value={ticked} onChange={setTicked} />
          )}
          <Wrong words={wrong} />
          <div className="row end">
            <Button onClick={() => setDiffering(true)}>It does not match</Button>
            <Button look="go" disabled={busy || ticked.length < checks.length} onClick={() => void matches()}>
              It matches
            </Button>
          </div>
        </>
      )}
      {differing && (
        <>
          <TextField
            label="What differs"
            value={words}
            onChange={setWords}
            placeholder="one hole too few, 2 mm thicker …"
          />
          {offer && (
            <Choices
              label="How it came about"
              choices={blames}
              value={blame}
              onChange={setBlame}
              help={
                blame === 'no-fit'
                  ? `“${offer.name}” is not bought again for this job.`
                  : 'The same offer may be ordered again.'
              }
            />
          )}
          <Wrong words={wrong} />
          <div className="row end">
            <Button onClick={() => setDiffering(false)}>Look again</Button>
            <Button look="go" disabled={busy || words.trim() === ''} onClick={() => void differs()}>
              Log the mismatch
            </Button>
          </div>
        </>
      )}
    </>
  );
}
