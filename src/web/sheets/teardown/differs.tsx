import { useState } from 'react';
import {
  type Body,
  type EngineGraph,
  type Fastener,
  type From,
  type Job,
  lineWords,
} from '../../../job/index.js';
import { write } from '../../data/outbox.js';
import { type Choice, FieldError, type FieldsOf, type Given } from '../../form/field.js';
import { FormBox } from '../../form/form.js';
import { useFormOf } from '../../form/use-form.js';
import { Button, useAct } from '../../parts/act.js';
import { Dialog } from '../../parts/dialog.js';
import { handleOf } from '../components.js';

type How = Body<'differs'>['how'];

const hows: readonly { id: How; label: string }[] = [
  { id: 'absent', label: 'It is not there' },
  { id: 'there', label: 'It is there' },
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

/** What any of the ways says; each keeps its own part of it. */
interface Said {
  readonly how: How;
  readonly component: string;
  readonly name: string;
  readonly minutes: number;
  readonly before: string[];
  readonly fasteners: Fastener[];
}

const asked =
  (...hows: readonly How[]) =>
  ({ how }: Given) =>
    hows.some((each) => each === how);

function fieldsFor(pieces: readonly Choice[]): FieldsOf<Said> {
  return {
    how: { as: 'choice', label: 'What is different', choices: hows, begin: 'fasteners' },
    name: {
      as: 'text',
      label: 'What it is called',
      hint: 'rain cap',
      when: asked('added'),
      need: 'Say what it is called.',
    },
    component: {
      as: 'select',
      label: 'Piece',
      choices: pieces,
      when: asked('absent', 'there', 'waits-for', 'minutes', 'fasteners'),
      need: 'Say which piece it is.',
    },
    minutes: {
      as: 'number',
      label: 'Minutes to take it off',
      hint: '5',
      when: asked('added', 'minutes'),
      need: 'Minutes are a number above zero.',
    },
    before: {
      as: 'many',
      label: 'Must be off first',
      choices: ({ component }) => pieces.filter(({ id }) => id !== component),
      when: asked('added', 'waits-for'),
    },
    fasteners: {
      as: 'rows',
      label: 'Fasteners, one line a size and length',
      begin: [{ what: 'bolt' }],
      row: {
        count: { as: 'number', whole: true, label: 'Count' },
        size: { as: 'text', label: 'Size', hint: '5/16-18' },
        length: { as: 'text', label: 'Length', hint: '1-1/2 in' },
        what: { as: 'text', label: 'What', begin: 'bolt' },
        hole: { as: 'text', label: 'Hole', hint: 'if lengths differ' },
      },
      more: 'Another kind of fastener',
      when: asked('fasteners'),
    },
  };
}

function Form({ job, engine, onClose }: { job: Job; engine: EngineGraph; onClose: () => void }) {
  const pieces = engine.graph.pieces
    .map(({ id }) => ({ id, label: engine.nameOf(id) }))
    .sort((a, b) => a.label.localeCompare(b.label));
  const form = useFormOf<'differs', Said>({
    job: job.id,
    kind: 'differs',
    title: 'How this engine differs',
    fields: fieldsFor(pieces),
    also: ({ how, name, before = [], fasteners = [] }) => {
      if (how === 'fasteners' && fasteners.length === 0)
        throw new FieldError('fasteners', 'Count at least one kind of fastener.');
      return { before, ...(how === 'added' && { component: handleOf(name ?? '') }) };
    },
    onDone: onClose,
  });
  return <FormBox form={form} keep="Write it down" leave="Leave it" onLeave={onClose} />;
}
