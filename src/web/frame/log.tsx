import { useState } from 'react';
import { type Job, type LogLine, lineWords, type Stage } from '../../job/index.js';
import { useOutbox, write } from '../data/outbox.js';
import { Button, useAct, Wrong } from '../parts/act.js';
import { Dialog } from '../parts/dialog.js';
import { TextField } from '../parts/field.js';
import { Picture } from '../parts/picture.js';

/** The log: a ruled notebook, newest line first, struck lines struck. A note can be written at any time. */
export function Log({ job, stage }: { job: Job; stage: Stage }) {
  const { waiting } = useOutbox();
  const unsent = new Set(waiting.map((e) => e.id));
  const [striking, setStriking] = useState<LogLine>();
  const lines = job.log.filter((l) => l.known?.kind !== 'strike').toReversed();
  return (
    <aside className="log" aria-label="Log">
      <h2>Log</h2>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard */}
      <ol className="entries" tabIndex={0} aria-label="Log lines, newest first">
        {lines.map((line, i) => (
          <LineWithDay
            key={line.entry.id}
            line={line}
            before={lines[i - 1]}
            unsent={unsent.has(line.entry.id)}
            onStrike={setStriking}
          />
        ))}
      </ol>
      <NoteForm job={job.id} stage={stage} />
      <StrikeDialog job={job} line={striking} onClose={() => setStriking(undefined)} />
    </aside>
  );
}

const dayOf = (at: string) => at.slice(0, 10);
const clockOf = (at: string) => at.slice(11, 16);

interface LineProps {
  readonly line: LogLine;
  readonly before?: LogLine | undefined;
  readonly unsent: boolean;
  readonly onStrike: (line: LogLine) => void;
}

function LineWithDay(props: LineProps) {
  const { line, before } = props;
  const newDay = !before || dayOf(before.entry.at) !== dayOf(line.entry.at);
  return (
    <>
      {newDay && <li className="day">{dayOf(line.entry.at)}</li>}
      <Line {...props} />
    </>
  );
}

function Line({ line, unsent, onStrike }: LineProps) {
  const { entry, known, struck } = line;
  const { title, value, detail } = lineWords(line);
  const picture = known?.kind === 'photograph' ? known.body.picture : undefined;
  return (
    <li className={unsent ? 'line waiting' : 'line'}>
      <time dateTime={entry.at}>{clockOf(entry.at)}</time>
      <div className="words">
        <span className={struck ? 'struck' : undefined}>
          {title}
          {value && (
            <>
              : <b>{value}</b>
            </>
          )}
        </span>
        {struck ? (
          <small>
            struck {clockOf(struck.at)}
            {struck.reason && `: ${struck.reason}`}
          </small>
        ) : (
          detail && <small>{detail}</small>
        )}
        {picture && (
          <div className="thumbs">
            <Picture sha256={picture.sha256} alt={title} width={160} />
          </div>
        )}
      </div>
      <button
        type="button"
        className="strike"
        onClick={() => onStrike(line)}
        aria-label={`${struck ? 'Restore' : 'Strike'}: ${title}`}
      >
        {struck ? 'restore' : 'strike'}
      </button>
    </li>
  );
}

function NoteForm({ job, stage }: { job: string; stage: Stage }) {
  const [words, setWords] = useState('');
  const { wrong, act } = useAct();
  const save = async () => {
    if (words.trim() === '') return;
    if (await act(() => write(job, 'note', { words: words.trim(), stage }))) setWords('');
  };
  return (
    <form
      onSubmit={(e) => {
        e.preventDefault();
        void save();
      }}
    >
      <input
        aria-label="Write a note"
        placeholder="Write a note"
        value={words}
        onChange={(e) => setWords(e.target.value)}
      />
      <button type="submit" className="button">
        Note
      </button>
      <Wrong words={wrong} />
    </form>
  );
}

/** Striking takes a line back and keeps it readable; striking a strike restores the line. */
function StrikeDialog({ job, line, onClose }: { job: Job; line: LogLine | undefined; onClose: () => void }) {
  const [reason, setReason] = useState('');
  const { wrong, act } = useAct();
  const restoring = line?.struck !== undefined;
  const save = async () => {
    if (!line) return;
    const target = line.struck?.entry ?? line.entry.id;
    if (await act(() => write(job.id, 'strike', { entry: target, reason: reason.trim() }))) {
      setReason('');
      onClose();
    }
  };
  const title = line ? lineWords(line).title : '';
  return (
    <Dialog
      title={restoring ? 'Restore this line?' : 'Strike this line?'}
      open={line !== undefined}
      onClose={onClose}
    >
      <p>
        {restoring
          ? `“${title}” counts again.`
          : `“${title}” stays readable in the log, struck through. Everything computed from it is worked out anew.`}
      </p>
      <TextField
        label="Why"
        value={reason}
        onChange={setReason}
        placeholder="wrong unit, wrong engine, read again …"
      />
      <Wrong words={wrong} />
      <div className="row end">
        <Button onClick={onClose}>Leave it</Button>
        <Button look="go" onClick={() => void save()}>
          {restoring ? 'Restore' : 'Strike'}
        </Button>
      </div>
    </Dialog>
  );
}
