import type { BillLine, Job } from '../../../job/index.js';
import { lowerFirst } from '../../../phrase/index.js';
import { useAnswers } from '../../data/answers.js';
import { writeAll } from '../../data/outbox.js';
import { Button, useAct, Wrong } from '../../parts/act.js';

/** What the plan and the decisions ask for and is not on the list yet. Nothing is put there silently. */
export function AskedFor({ job }: { job: Job }) {
  const { bill } = useAnswers();
  const { wrong, busy, act } = useAct(job);
  const open = bill.filter(({ listed }) => listed === undefined);
  if (open.length === 0) return null;
  const sure = open.filter(({ ifNeeded }) => !ifNeeded);
  const maybe = open.filter(({ ifNeeded }) => ifNeeded);
  const add = (lines: readonly BillLine[]) => void act(() => writeAll(job.id, lines.map(wantedLine)));
  return (
    <section className="card stack tight" aria-label="What the work asks for">
      <header>
        <h2>{headline(sure.length)}</h2>
        {sure.length > 1 && (
          <Button disabled={busy} onClick={() => add(sure)}>
            {allWords(sure)}
          </Button>
        )}
      </header>
      <AskedLines lines={sure} onAdd={(line) => add([line])} busy={busy} />
      {maybe.length > 0 && (
        <details open={sure.length === 0}>
          <summary>Only if it is worn, or on some engines ({maybe.length})</summary>
          <AskedLines lines={maybe} onAdd={(line) => add([line])} busy={busy} />
        </details>
      )}
      <Wrong words={wrong} />
    </section>
  );
}

const allWords = (lines: readonly BillLine[]) => `Put all ${lines.length} on the list`;

/** All that is surely needed, put on the list by one touch. */
export function askedLots(job: Job, bill: readonly BillLine[]) {
  const sure = bill.filter(({ listed, ifNeeded }) => listed === undefined && !ifNeeded);
  if (sure.length < 2) return [];
  return [{ label: allWords(sure), write: () => writeAll(job.id, sure.map(wantedLine)) }];
}

const wantedLine = (line: BillLine) => ({
  kind: 'part' as const,
  body: {
    part: line.part,
    name: line.name,
    count: 1,
    state: 'wanted',
    component: line.component,
    consumable: line.consumable || undefined,
    words: [line.amount, line.note].filter(Boolean).join('; ') || undefined,
  },
});

function AskedLines(props: { lines: readonly BillLine[]; onAdd: (line: BillLine) => void; busy: boolean }) {
  return (
    <ul className="lines">
      {props.lines.map((line) => (
        <li key={line.part}>
          <div>
            <b>{line.name}</b> {line.note && <span className="soft">{line.note}</span>}
            {line.amount && <span className="soft"> {line.amount}</span>}
            <div className="soft">{line.why.join('. ')}</div>
            <LookAlikes looks={line.lookAlikes} />
          </div>
          <Button
            disabled={props.busy}
            aria-label={`Put ${line.name} on the list`}
            onClick={() => props.onAdd(line)}
          >
            Add
          </Button>
        </li>
      ))}
    </ul>
  );
}

/** Parts that pass for one another: both named, how to tell them, and what happens if they are swapped. */
export function LookAlikes({ looks }: { looks: BillLine['lookAlikes'] }) {
  if (looks.length === 0) return null;
  return (
    <ul className="look-alikes">
      {looks.map((look) => (
        <li key={look.id}>
          <details>
            <summary>
              <span>
                Easily mistaken: {lowerFirst(look.name)}
                {look.twins.length > 0 && <>. On this list too: {look.twins.join(', ')}</>}
              </span>
            </summary>
            <p>
              {look.tell} <b>{look.harm}</b>
            </p>
          </details>
        </li>
      ))}
    </ul>
  );
}

/** Only what is surely needed is counted: the rest waits until it is seen worn. */
function headline(sure: number): string {
  if (sure === 0) return 'The work may ask for more';
  return `The work asks for ${sure === 1 ? 'one more' : `${sure} more`}`;
}
