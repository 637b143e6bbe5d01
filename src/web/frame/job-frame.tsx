import { createContext, type ReactNode, useContext, useEffect, useMemo, useState } from 'react';
import { Link } from 'wouter';
import type { Answers, Gate, Job, Stage } from '../../job/index.js';
import { Button } from '../parts/act.js';
import { Log } from './log.js';
import { OnlyThis } from './only-this.js';
import { stageNames } from './stage-names.js';
import { DeviceSwitches, SavedState, ShopNav } from './top.js';

/** The one primary action of a sheet: right of its title on a wide screen, under the thumb on a phone. */
export interface Primary {
  readonly label: string;
  readonly act: () => void;
  readonly disabled?: boolean;
}

interface PrimaryPlace {
  readonly primary: Primary | undefined;
  readonly set: (primary: Primary | undefined) => void;
}
const PrimaryContext = createContext<PrimaryPlace>({ primary: undefined, set: () => {} });

/** A sheet names its primary action; it goes with the sheet. */
export function usePrimary(primary: Primary | undefined): void {
  const { set } = useContext(PrimaryContext);
  const label = primary?.label;
  const disabled = primary?.disabled;
  const act = primary?.act;
  // biome-ignore lint/correctness/useExhaustiveDependencies: `act` is a fresh function each render; the label and what it closes over tell when it changed
  useEffect(() => {
    set(
      label === undefined || !act
        ? undefined
        : { label, act: () => latest.current(), ...(disabled && { disabled }) },
    );
    return () => set(undefined);
  }, [set, label, disabled]);
  const latest = useMemo(() => ({ current: () => {} }), []);
  latest.current = act ?? (() => {});
}

/** The primary action beside the sheet's headline; a phone has it under the thumb instead. */
export function WidePrimary() {
  const { primary } = useContext(PrimaryContext);
  if (!primary) return null;
  return (
    <Button className="wide-primary" look="go" onClick={primary.act} disabled={primary.disabled}>
      {primary.label}
    </Button>
  );
}

/** Stages left, the stage's sheet in the middle, the log right; on a phone stages and log are one thumb away. */
export function JobFrame(props: { answers: Answers; stage: Stage; children: ReactNode }) {
  const { stage, children } = props;
  const [primary, setPrimary] = useState<Primary>();
  const [over, setOver] = useState<'stages' | 'log'>();
  const { job } = props.answers;
  const place = useMemo(() => ({ primary, set: setPrimary }), [primary]);
  const show = (what: 'stages' | 'log') => setOver(over === what ? undefined : what);
  return (
    <PrimaryContext.Provider value={place}>
      <div className={['job', over && `show-${over}`].filter(Boolean).join(' ')}>
        <a className="button skip" href="#sheet">
          Skip to the sheet
        </a>
        <JobTop job={job} stage={stage} />
        <OnlyThis what="The list of stages" of={job.id}>
          <Stages answers={props.answers} here={stage} onGo={() => setOver(undefined)} />
        </OnlyThis>
        <main className="sheet" id="sheet" tabIndex={-1}>
          {children}
        </main>
        <OnlyThis what="The log" of={job.id}>
          <Log job={job} stage={stage} />
        </OnlyThis>
        <nav className="bottom" aria-label="Sheet">
          <Button onClick={() => show('stages')} aria-expanded={over === 'stages'}>
            Stages
          </Button>
          {primary ? (
            <Button
              look="go"
              disabled={primary.disabled}
              onClick={() => {
                setOver(undefined);
                primary.act();
              }}
            >
              {primary.label}
            </Button>
          ) : (
            <span />
          )}
          <Button onClick={() => show('log')} aria-expanded={over === 'log'}>
            Log
          </Button>
        </nav>
      </div>
    </PrimaryContext.Provider>
  );
}

function JobTop({ job, stage }: { job: Job; stage: Stage }) {
  const { intake } = job;
  const history = [
    intake.complaint,
    intake.storedMonths !== undefined && `stored ${intake.storedMonths} months`,
  ].filter(Boolean);
  return (
    <header className="top">
      <Link href="/" className="tag" aria-label={`Tag ${job.tag}, back to the bench`}>
        <i aria-hidden="true" />
        <b>{job.tag || '…'}</b>
      </Link>
      <div className="what">
        <span className="only-phone">{stageNames[stage]} · </span>
        {intake.machine || job.title || 'Machine not named yet'}
        {job.invented && ' (invented)'}
        <small>{history.join(' · ')}</small>
      </div>
      <ShopNav />
      <div className="right">
        <SavedState />
        <DeviceSwitches />
      </div>
    </header>
  );
}

const signs: Readonly<Record<Gate['state'], { sign: string; word: string }>> = {
  untouched: { sign: '○', word: 'not begun' },
  'under-way': { sign: '◐', word: 'under way' },
  done: { sign: '✓', word: 'done' },
  'not-needed': { sign: '–', word: 'not needed' },
  blocked: { sign: '!', word: 'blocked' },
};

function Stages(props: { answers: Answers; here: Stage; onGo: () => void }) {
  const { here, onGo } = props;
  const { job, gates } = props.answers;
  return (
    <nav className="stages" aria-label="Stages">
      {gates.map((g) => (
        <Link
          key={g.stage}
          href={`/job/${job.id}/${g.stage}`}
          className={g.state}
          aria-current={g.stage === here ? 'page' : undefined}
          onClick={onGo}
        >
          <span className="sign" aria-hidden="true">
            {signs[g.state].sign}
          </span>
          <span>
            {stageNames[g.stage]}
            <span className="hidden">, {signs[g.state].word}</span>
          </span>
          {(g.blocks[0] ?? g.summary) && <small>{g.blocks[0] ?? g.summary}</small>}
        </Link>
      ))}
    </nav>
  );
}
