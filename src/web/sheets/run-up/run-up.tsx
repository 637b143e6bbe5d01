import { useState } from 'react';
import { useLocation } from 'wouter';
import { type Caution as CatalogCaution, cautionsFor, type RunUpStep } from '../../../catalog/index.js';
import type { Job, RunUpItem } from '../../../job/index.js';
import { useCatalog } from '../../data/answers.js';
import { usePrimary } from '../../frame/job-frame.js';
import { Sheet, type SheetProps } from '../../frame/sheet.js';
import { Caution } from '../../parts/caution.js';
import { grouped } from '../grouped.js';
import { AcceptanceTable } from './acceptance-table.js';
import { AskedPoints, Point } from './asked-points.js';
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
  const [said, setSaid] = useState<RunUpItem>();
  const [, go] = useLocation();
  const asked = items.filter((item) => item.asked === 'safety' || item.asked === 'touched');
  const rest = items.filter((item) => item.asked === undefined);
  const next = asked.find(({ state }) => state === 'open');
  // what was just said is still the next one until the sheet has followed: it is not asked twice
  usePrimary(
    next
      ? { label: 'Next step', act: () => setSaying(next), disabled: next === said }
      : { label: 'On to Hand-over', act: () => go(`/job/${job.id}/hand-over`) },
  );
  const done = asked.filter(({ state }) => state !== 'open').length;
  return (
    <Sheet
      job={job}
      gate={gate}
      headline={headline(stops, done, asked.length)}
      say={next ? `Next: ${next.step.title}` : 'All that was asked for is shown.'}
    >
      <StopNow stops={stops} />
      <StageCautions all={cautionsFor(catalog, { stage: 'run-up' })} />
      <RunClock job={job} looks={items} onLook={setSaying} />
      <AskedPoints job={job} items={items} onSay={setSaying} />
      <NotLookedAt job={job} items={rest} onSay={setSaying} />
      <Listening job={job} />
      <AcceptanceTable rows={answers.acceptance} />
      <SayStep job={job} item={saying} onSaid={setSaid} onClose={() => setSaying(undefined)} />
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

/** What nobody asks for on this job: it stays folded, and on the record as not looked at. */
function NotLookedAt(props: { job: Job; items: readonly RunUpItem[]; onSay: (item: RunUpItem) => void }) {
  const { job, items, onSay } = props;
  const open = items.filter(({ state }) => state === 'open').length;
  if (items.length === 0) return null;
  const bad = items.some(({ state }) => state === 'not-ok' || state === 'outside');
  return (
    <details className="section phase" open={bad}>
      <summary>
        <h2>The rest</h2>
        <span className="soft">{open > 0 ? `${open} not looked at` : 'all looked at'}</span>
      </summary>
      {[...grouped(items, ({ step }) => step.phase)].map(([phase, list]) => (
        <section key={phase} className="stack tight">
          <h3>{phaseNames[phase]}</h3>
          <ul className="lines">
            {list.map((item) => (
              <Point key={item.step.id} job={job} item={item} onSay={() => onSay(item)} />
            ))}
          </ul>
        </section>
      ))}
    </details>
  );
}
