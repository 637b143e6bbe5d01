import { memo, useEffect, useRef, useState } from 'react';
import { useSearchParams } from 'wouter';
import { type From, type Job, type LogLine, lineWords, type Stage, whenOf } from '../../job/index.js';
import { useOutbox } from '../data/outbox.js';
import { FormBox, FormFrame } from '../form/form.js';
import { useForm } from '../form/use-form.js';
import { Wrong } from '../parts/act.js';
import { ChangeCaption } from '../parts/caption.js';
import { Dialog } from '../parts/dialog.js';
import { Camera, Picture } from '../parts/picture.js';
import { PlaySound } from '../talk/play-sound.js';

/** The log: a ruled notebook, newest line first, struck lines struck. A note can be written at any time. */
export function Log({ job, stage }: { job: Job; stage: Stage }) {
  const [striking, setStriking] = useState<LogLine>();
  return (
    <aside className="log" aria-label="Log">
      <h2>Log</h2>
      <Lines job={job} onStrike={setStriking} />
      <NoteForm job={job.id} stage={stage} />
      <StrikeDialog job={job} line={striking} onClose={() => setStriking(undefined)} />
    </aside>
  );
}

/** Drawn anew only when the log or what waits is another: a long log is most of the page. */
const Lines = memo(function Lines({ job, onStrike }: { job: Job; onStrike: (line: LogLine) => void }) {
  const { waiting } = useOutbox();
  const [search] = useSearchParams();
  const looked = search.get('line');
  const list = useRef<HTMLOListElement>(null);
  // a line that was looked for in all jobs
  useEffect(() => {
    const line = list.current?.querySelector<HTMLElement>('.line.looked-for');
    if (looked !== null && line) list.current!.scrollTop = line.offsetTop - 80;
  }, [looked]);
  const unsent = new Set(waiting.map((e) => e.id));
  // what a picture shows is said anew at the line that says it now
  const shown = new Map(job.photographs.map((p) => [p.entry, p]));
  const lines = job.log.filter((l) => l.known?.kind !== 'strike').toReversed();
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard
    <ol className="entries" ref={list} tabIndex={0} aria-label="Log lines, newest first">
      {lines.map((line, i) => (
        <LineWithDay
          key={line.entry.id}
          line={line}
          before={lines[i - 1]}
          unsent={unsent.has(line.entry.id)}
          lookedFor={line.entry.id === looked}
          shown={shown.get(line.entry.id)}
          onStrike={onStrike}
        />
      ))}
    </ol>
  );
});

const dayOf = (at: string) => at.slice(0, 10);
const clockOf = (at: string) => at.slice(11, 16);

interface LineProps {
  readonly line: LogLine;
  readonly before?: LogLine | undefined;
  readonly unsent: boolean;
  readonly lookedFor: boolean;
  /** of a picture: the line that says what it shows */
  readonly shown: From<'photograph'> | undefined;
  readonly onStrike: (line: LogLine) => void;
}

/** A line that says what it said stays as it is drawn; every change of the log makes all its lines anew. */
const LineWithDay = memo(
  function LineWithDay(props: LineProps) {
    const { line, before } = props;
    const newDay = !before || dayOf(whenOf(before.entry)) !== dayOf(whenOf(line.entry));
    return (
      <>
        {newDay && <li className="day">{dayOf(whenOf(line.entry))}</li>}
        <Line {...props} />
      </>
    );
  },
  (a, b) =>
    a.line.entry === b.line.entry &&
    a.line.known === b.line.known &&
    a.line.struck?.entry === b.line.struck?.entry &&
    a.before?.entry === b.before?.entry &&
    a.unsent === b.unsent &&
    (a.shown === undefined) === (b.shown === undefined) &&
    a.lookedFor === b.lookedFor,
);

function Line({ line, unsent, lookedFor, shown, onStrike }: LineProps) {
  const { entry, known, struck } = line;
  const { title, value, detail } = lineWords(line);
  const picture = known?.kind === 'photograph' ? known.body.picture : undefined;
  return (
    <li className={['line', unsent && 'waiting', lookedFor && 'looked-for'].filter(Boolean).join(' ')}>
      <time dateTime={whenOf(entry)}>{clockOf(whenOf(entry))}</time>
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
        {known?.kind === 'spoken-note' && <PlaySound sound={known.body.sound} />}
        {picture && (
          <div className="thumbs">
            <Picture sha256={picture.sha256} alt={title} width={160} />
            {shown && <ChangeCaption job={entry.job} of={shown} />}
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
  const form = useForm({
    job,
    kind: 'note',
    title: 'A note',
    fields: { words: { as: 'text', label: 'Write a note' } },
    also: { stage },
  });
  const words = form.text('words');
  return (
    <FormFrame form={form} className="note" onEnter={() => words !== '' && void form.keep()}>
      <input
        aria-label="Write a note"
        placeholder="Write a note"
        value={String(form.given.words)}
        onChange={(e) => form.set('words', e.target.value)}
      />
      <button type="submit" className="button">
        Note
      </button>
      <span className="only-wide">
        <Camera job={job} stage={stage} />
      </span>
      <Wrong words={form.wrong ?? form.wrongAt('words')} />
    </FormFrame>
  );
}

interface Striking {
  readonly job: Job;
  readonly line: LogLine | undefined;
  readonly onClose: () => void;
}

/** Striking takes a line back and keeps it readable; striking a strike restores the line. */
function StrikeDialog({ job, line, onClose }: Striking) {
  return (
    <Dialog
      title={line?.struck ? 'Restore this line?' : 'Strike this line?'}
      open={line !== undefined}
      onClose={onClose}
    >
      {line && <StrikeForm job={job} line={line} onClose={onClose} />}
    </Dialog>
  );
}

function StrikeForm({ job, line, onClose }: Striking & { line: LogLine }) {
  const { title } = lineWords(line);
  const target = line.struck?.entry ?? line.entry.id;
  const form = useForm({
    job: job.id,
    kind: 'strike',
    handle: target,
    title: `Strike: ${title}`,
    fields: { reason: { as: 'text', label: 'Why', hint: 'wrong unit, wrong engine, read again …' } },
    also: ({ reason = '' }) => ({ entry: target, reason }),
    onDone: onClose,
  });
  return (
    <FormBox
      form={form}
      keep={line.struck ? 'Restore' : 'Strike'}
      leave="Leave it"
      onLeave={onClose}
      before={
        <p>
          {line.struck
            ? `“${title}” counts again.`
            : `“${title}” stays readable in the log, struck through. Everything computed from it is worked out anew.`}
        </p>
      }
    />
  );
}
