import { cautionsFor } from '../../../catalog/index.js';
import type { Body, Job, RunUpItem } from '../../../job/index.js';
import { useCatalog } from '../../data/answers.js';
import { write, writeAll } from '../../data/outbox.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { limitWords } from './limit-words.js';

interface Points {
  readonly job: Job;
  readonly items: readonly RunUpItem[];
  readonly onSay: (item: RunUpItem) => void;
}

/** What this machine must show before it leaves, sized to the job: safety one by one, what was touched, the numbers. */
export function AskedPoints({ job, items, onSay }: Points) {
  const of = (asked: RunUpItem['asked']) => items.filter((item) => item.asked === asked);
  return (
    <>
      <Section name="Safety points, one by one" job={job} items={of('safety')} onSay={onSay} />
      <Section name="What was touched" job={job} items={of('touched')} onSay={onSay} lot />
      <Section name="Numbers to take" job={job} items={of('number')} onSay={onSay} />
    </>
  );
}

function Section({ name, job, items, onSay, lot }: Points & { name: string; lot?: boolean }) {
  if (items.length === 0) return null;
  const open = items.filter(isOneTouch);
  return (
    <section className="section stack tight" aria-label={name}>
      <h2>{name}</h2>
      {lot && open.length > 1 && <AllInOrder job={job} items={open} />}
      <ul className="lines">
        {items.map((item) => (
          <Point key={item.step.id} job={job} item={item} onSay={() => onSay(item)} />
        ))}
      </ul>
    </section>
  );
}

const isOneTouch = ({ state, step }: RunUpItem) => state === 'open' && step.answer === 'done';
const inOrder = ({ step }: RunUpItem): Body<'run-up'> => ({ item: step.id, title: step.title, result: 'ok' });

/** Never for a safety point. */
function AllInOrder({ job, items }: { job: Job; items: readonly RunUpItem[] }) {
  const { wrong, busy, act } = useAct(job);
  const say = () =>
    act(() =>
      writeAll(
        job.id,
        items.map((item) => ({ kind: 'run-up' as const, body: inOrder(item) })),
      ),
    );
  return (
    <div className="row">
      <Button disabled={busy} onClick={() => void say()}>
        All {items.length} as they should be
      </Button>
      <Wrong words={wrong} />
    </div>
  );
}

export function Point({ job, item, onSay }: { job: Job; item: RunUpItem; onSay: () => void }) {
  const catalog = useCatalog();
  const { wrong, busy, act } = useAct(job);
  const { step, said, limit } = item;
  return (
    <li className="stacks">
      <div>
        <b>{step.title}</b> {step.barsHandOver && <span className="chip">before hand-over</span>}
        {limit && <div className="soft">{limitWords(limit)}</div>}
        {!said &&
          cautionsFor(catalog, { runUp: step.id }).map((c) => (
            <p className="care" key={c.id}>
              ! {c.title}
            </p>
          ))}
        {said?.words && <div>{said.words}</div>}
        <Wrong words={wrong} />
      </div>
      <div className="row">
        <Said item={item} />
        {isOneTouch(item) && (
          <Button
            aria-label={`In order: ${step.title}`}
            disabled={busy}
            onClick={() => void act(() => write(job.id, 'run-up', inOrder(item)))}
          >
            In order
          </Button>
        )}
        <Button look={said || isOneTouch(item) ? 'quiet' : 'plain'} onClick={onSay}>
          {said ? 'Again' : 'Log it'}
        </Button>
      </div>
    </li>
  );
}

const verdicts = {
  ok: ['pass', 'in order'],
  'not-ok': ['fail', 'not in order'],
  outside: ['fail', 'outside the limit'],
} as const;

function Said({ item: { said, state } }: { item: RunUpItem }) {
  if (!said || state === 'open') return null;
  if (state === 'not-applicable') return <span className="soft">does not apply</span>;
  return (
    <>
      {said.value && <b>{said.value.written}</b>}
      {state !== 'read' && <span className={`verdict ${verdicts[state][0]}`}>{verdicts[state][1]}</span>}
    </>
  );
}
