import { useState } from 'react';
import { type Body, type EngineGraph, type From, type Job, lineWords } from '../../../job/index.js';
import { write } from '../../data/outbox.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { Dialog } from '../../parts/dialog.js';
import { Choices, ManyChoices, SelectField, TextField } from '../../parts/field.js';
import { handleOf } from '../components.js';
import { emptyLine, type FastenerLine, FastenerLines, fastenersIn } from './fastener-lines.js';

type How = Body<'differs'>['how'];

const hows: readonly { id: How; label: string }[] = [
  { id: 'absent', label: 'It is not there' },
  { id: 'added', label: 'Something more is there' },
  { id: 'waits-for', label: 'It waits for other pieces' },
  { id: 'minutes', label: 'It takes so long' },
  { id: 'fasteners', label: 'Bolts: size, length, hole' },
];

/** How the engine in front of one is otherwise than usual. The log keeps it; the plan follows at once. */
export function Differs({ job, engine }: { job: Job; engine: EngineGraph }) {
  const [open, setOpen] = useState(false);
  const wrong = new Map(engine.leftOut.map((l) => [l.entry, l.words]));
  return (
    <section className="stack tight" aria-label="This engine differs">
      <div className="row apart">
        <h3>This engine</h3>
        <Button onClick={() => setOpen(true)}>It differs from usual</Button>
      </div>
      {job.differs.length > 0 && (
        <ul className="lines">
          {job.differs.map((line) => (
            <Line key={line.entry} job={job} line={line} engine={engine} wrong={wrong.get(line.entry)} />
          ))}
        </ul>
      )}
      <Dialog title="How does this engine differ?" open={open} onClose={() => setOpen(false)}>
        {open && <Form job={job} engine={engine} onClose={() => setOpen(false)} />}
      </Dialog>
    </section>
  );
}

function Line(props: { job: Job; line: From<'differs'>; engine: EngineGraph; wrong: string | undefined }) {
  const { job, line, engine, wrong } = props;
  const { act } = useAct();
  const logged = job.log.find((l) => l.entry.id === line.entry);
  const words = logged && lineWords(logged);
  return (
    <li>
      <div>
        <b>{line.how === 'added' ? line.name : engine.nameOf(line.component)}</b>
        {words?.value && `: ${words.value}`}
        {words?.detail && <div className="soft">{words.detail}</div>}
        {wrong && <div className="verdict cannot-decide wraps">cannot be so, left out: {wrong}</div>}
      </div>
      <Button
        look="quiet"
        onClick={() =>
          void act(() => write(job.id, 'strike', { entry: line.entry, reason: 'not so on this engine' }))
        }
      >
        Take back
      </Button>
    </li>
  );
}

function Form({ job, engine, onClose }: { job: Job; engine: EngineGraph; onClose: () => void }) {
  const [how, setHow] = useState<How>('fasteners');
  const [piece, setPiece] = useState('');
  const [name, setName] = useState('');
  const [minutes, setMinutes] = useState('');
  const [before, setBefore] = useState<readonly string[]>([]);
  const [lines, setLines] = useState<readonly FastenerLine[]>([emptyLine]);
  const { wrong, act } = useAct();
  const pieces = engine.graph.pieces
    .map(({ id }) => ({ id, label: engine.nameOf(id) }))
    .sort((a, b) => a.label.localeCompare(b.label));
  const save = () =>
    act(async () => {
      await write(job.id, 'differs', bodyOf({ how, piece, name, minutes, before, lines }));
      onClose();
    });
  return (
    <>
      <Choices label="What is different" choices={hows} value={how} onChange={setHow} />
      {how === 'added' ? (
        <TextField label="What it is called" value={name} onChange={setName} placeholder="rain cap" />
      ) : (
        <SelectField label="Piece" value={piece} onChange={setPiece} choices={pieces} />
      )}
      {(how === 'added' || how === 'minutes') && (
        <TextField
          label="Minutes to take it off"
          value={minutes}
          onChange={setMinutes}
          inputMode="decimal"
          placeholder="5"
        />
      )}
      {(how === 'added' || how === 'waits-for') && (
        <ManyChoices
          label="Must be off first"
          choices={pieces.filter(({ id }) => id !== piece)}
          value={before}
          onChange={setBefore}
        />
      )}
      {how === 'fasteners' && <FastenerLines lines={lines} onChange={setLines} />}
      <Wrong words={wrong} />
      <div className="row end">
        <Button onClick={onClose}>Leave it</Button>
        <Button look="go" onClick={() => void save()}>
          Write it down
        </Button>
      </div>
    </>
  );
}

interface Said {
  readonly how: How;
  readonly piece: string;
  readonly name: string;
  readonly minutes: string;
  readonly before: readonly string[];
  readonly lines: readonly FastenerLine[];
}

function bodyOf({ how, piece, name, minutes, before, lines }: Said): Body<'differs'> {
  if (how === 'added') {
    if (name.trim() === '') throw new Error('Say what it is called.');
    return {
      how,
      component: handleOf(name),
      name: name.trim(),
      minutes: minutesIn(minutes),
      before: [...before],
    };
  }
  if (piece === '') throw new Error('Say which piece it is.');
  if (how === 'absent') return { how, component: piece };
  if (how === 'waits-for') return { how, component: piece, before: [...before] };
  if (how === 'minutes') return { how, component: piece, minutes: minutesIn(minutes) };
  const fasteners = fastenersIn(lines);
  if (fasteners.length === 0) throw new Error('Count at least one kind of fastener.');
  return { how, component: piece, fasteners };
}

function minutesIn(text: string): number {
  const minutes = Number(text.trim().replace(',', '.'));
  if (text.trim() !== '' && minutes > 0 && Number.isFinite(minutes)) return minutes;
  throw new Error(`Minutes are a number above zero; “${text}” is not.`);
}
