import { useState } from 'react';
import { type Caution as CatalogCaution, cautionsFor, type RunUpStep } from '../../../catalog/index.js';
import type { RunUpItem } from '../../../job/index.js';
import { useCatalog } from '../../data/answers.js';
import { usePrimary } from '../../frame/job-frame.js';
import { Sheet, type SheetProps } from '../../frame/sheet.js';
import { Button } from '../../parts/act.js';
import { Caution } from '../../parts/caution.js';
import { grouped } from '../grouped.js';
import { AcceptanceTable } from './acceptance-table.js';
import { limitWords } from './limit-words.js';
import { Listening } from './listening/listening.js';
import { RunClock } from './run-clock.js';
import { SayStep } from './say-step.js';
import { StopNow } from './stop-now.js';

const phaseNames: Readonly<Record<RunUpStep['phase'], string>> = {
  'before-fuel': 'Before fuel',
  'base-settings': 'Base settings',
  'static-governor': 'Governor, standing still',
  'first-start': 'First start',
  'warm-up': 'Warm-up',
  carburetor: 'Carburetor',
  'governed-speed': 'Governed speed',
  hunting: 'If it hunts',
  'load-test': 'Under load',
  'heat-and-leak': 'Heat and leaks',
  'stop-checks': 'Does it stop?',
  'after-heat': 'After the heat',
  'break-in': 'Break-in',
};

/** Oil, fuel, guards, a second way to stop; then the first start, the settings, the load, and proof that it stops. */
export function RunUp({ answers, job, gate }: SheetProps) {
  const catalog = useCatalog();
  const { items, stops } = answers.runUp;
  const [saying, setSaying] = useState<RunUpItem>();
  const next = items.find(({ state }) => state === 'open');
  usePrimary(next && { label: 'Next step', act: () => setSaying(next) });
  const done = items.filter(({ state }) => state !== 'open').length;
  return (
    <Sheet
      job={job}
      gate={gate}
      headline={headline(stops, done, items.length)}
      say={next ? `Next: ${next.step.title}` : 'Every step is done.'}
    >
      <StopNow stops={stops} />
      <StageCautions all={cautionsFor(catalog, { stage: 'run-up' })} />
      <RunClock job={job} looks={items} onLook={setSaying} />
      <div>
        {[...grouped(items, ({ step }) => step.phase)].map(([phase, list]) => (
          <Phase key={phase} name={phaseNames[phase]} items={list} next={next} onSay={setSaying} />
        ))}
      </div>
      <Listening job={job} />
      <AcceptanceTable rows={answers.acceptance} />
      <SayStep job={job} item={saying} onClose={() => setSaying(undefined)} />
    </Sheet>
  );
}

function headline(stops: readonly string[], done: number, all: number): string {
  if (stops.length > 0) return 'Stop. Do not run it';
  return done === 0 ? 'Prove that it runs right' : `${done} of ${all} shown`;
}

/** The two gravest stand in a sentence each; the whole words are one tap away, so that a phone shows the work as well. */
function StageCautions({ all }: { all: readonly CatalogCaution[] }) {
  const gravest = all.toSorted((a, b) => b.severity - a.severity);
  const short = gravest.slice(0, 2).map(({ title, words }) => ({ title, words: firstSentence(words) }));
  return (
    <div className="stack tight">
      <Caution lines={short} />
      <details>
        <summary>All {gravest.length} cautions in full</summary>
        <Caution lines={gravest} />
      </details>
    </div>
  );
}

const firstSentence = (words: string) => words.split(/(?<=\.)\s/)[0]!;

function Phase(props: {
  name: string;
  items: readonly RunUpItem[];
  next: RunUpItem | undefined;
  onSay: (item: RunUpItem) => void;
}) {
  const done = props.items.filter(({ state }) => state !== 'open').length;
  const bad = props.items.some(({ state }) => state === 'not-ok' || state === 'outside');
  const open = bad || props.items.some((item) => item === props.next);
  return (
    <details className="section phase" open={open}>
      <summary>
        <h2>{props.name}</h2>
        <span className={done === props.items.length && !bad ? 'verdict pass' : 'soft'}>
          {done === props.items.length ? (bad ? 'not in order' : 'done') : `${done} of ${props.items.length}`}
        </span>
      </summary>
      <ul className="lines">
        {props.items.map((item) => (
          <StepLine key={item.step.id} item={item} onSay={() => props.onSay(item)} />
        ))}
      </ul>
    </details>
  );
}

function StepLine({ item, onSay }: { item: RunUpItem; onSay: () => void }) {
  const { step, said, limit } = item;
  return (
    <li className="stacks">
      <div>
        <b>{step.title}</b> {step.barsHandOver && <span className="chip">before hand-over</span>}
        {limit && <div className="soft">{limitWords(limit)}</div>}
        {said?.words && <div>{said.words}</div>}
      </div>
      <div className="row">
        <Said item={item} />
        <Button look={said ? 'quiet' : 'plain'} onClick={onSay}>
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
