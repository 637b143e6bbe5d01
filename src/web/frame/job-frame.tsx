import {
  createContext,
  memo,
  type ReactNode,
  type RefObject,
  useCallback,
  useContext,
  useEffect,
  useLayoutEffect,
  useMemo,
  useRef,
  useState,
} from 'react';
import { Link, useSearchParams } from 'wouter';
import {
  type Answers,
  daysBetween,
  type Gate,
  type Job,
  lastDoneOf,
  restDays,
  restWords,
  type Stage,
  stageNames,
} from '../../job/index.js';
import { recordUrl } from '../data/api.js';
import { Button } from '../parts/act.js';
import { Camera } from '../parts/picture.js';
import { Log } from './log.js';
import { OnlyThis } from './only-this.js';
import { DeviceSwitches, SavedState, ShopNav } from './top.js';

/** The one primary action of a sheet: right of its title on a wide screen, under the thumb on a phone. */
export interface Primary {
  readonly label: string;
  readonly act: () => void;
  readonly disabled?: boolean;
}

interface PrimaryPlace {
  readonly primary: Primary | undefined;
  /** what the sheet would do, where the machine has left the shop and its record comes first */
  readonly stillThere: Primary | undefined;
  readonly set: (primary: Primary | undefined) => void;
}
const PrimaryContext = createContext<PrimaryPlace>({
  primary: undefined,
  stillThere: undefined,
  set: () => {},
});

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

/** The sheet's own action on a machine that was handed over: a plain button, for what is put right afterwards. */
export function StillThere() {
  const { stillThere } = useContext(PrimaryContext);
  if (!stillThere) return null;
  return (
    <p className="row">
      <Button onClick={stillThere.act} disabled={stillThere.disabled}>
        {stillThere.label}
      </Button>
    </p>
  );
}

const openRecord = (job: string): Primary => ({
  label: 'Open the record',
  act: () => window.open(recordUrl(job, 'brief'), '_blank', 'noopener'),
});

interface Framed {
  readonly job: Job;
  /** those that the stages and the sheet show; a moment behind the job while `following` */
  readonly answers: Answers;
  /** where what is noted or pictured meanwhile belongs */
  readonly stage: Stage;
  /** the page that tells where one was, beside the stages' own sheets */
  readonly telling: boolean;
  readonly following: boolean;
  /** drawn before the stages */
  readonly ahead: ReactNode;
  readonly children: ReactNode;
}

/** Each sheet opens at its head, however far down the one before was read. */
function useHeadFirst(page: string): RefObject<HTMLElement | null> {
  const sheet = useRef<HTMLElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another page is the reason
  useLayoutEffect(() => {
    if (sheet.current) sheet.current.scrollTop = 0;
  }, [page]);
  return sheet;
}

/** Stages left, the stage's sheet in the middle, the log right; on a phone stages and log are one thumb away. */
export function JobFrame({ job, answers, stage, telling, following, ahead, children }: Framed) {
  const [own, setPrimary] = useState<Primary>();
  const [search] = useSearchParams();
  const [over, setOver] = useState<'stages' | 'log' | undefined>(search.has('line') ? 'log' : undefined);
  const left = job.handOver !== undefined;
  const primary = useMemo(() => (left ? openRecord(job.id) : own), [left, job.id, own]);
  const stillThere = left ? own : undefined;
  const place = useMemo(() => ({ primary, stillThere, set: setPrimary }), [primary, stillThere]);
  const sheet = useHeadFirst(telling ? 'where-was-i' : stage);
  const close = useCallback(() => setOver(undefined), []);
  const show = (what: 'stages' | 'log') => setOver(over === what ? undefined : what);
  return (
    <PrimaryContext.Provider value={place}>
      <div className={['job', over && `show-${over}`].filter(Boolean).join(' ')}>
        <a className="button skip" href="#sheet">
          Skip to the sheet
        </a>
        <JobTop job={job} where={telling ? 'Where was I' : stageNames[stage]} />
        {ahead}
        <OnlyThis what="The list of stages" of={job.id}>
          <Stages answers={answers} here={telling ? undefined : stage} onGo={close} />
        </OnlyThis>
        <main className="sheet" id="sheet" ref={sheet} tabIndex={-1} aria-busy={following}>
          {!telling && <Rested key={job.id} job={job} />}
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
          <Camera job={job.id} stage={stage} />
          <Button onClick={() => show('log')} aria-expanded={over === 'log'}>
            Log
          </Button>
        </nav>
      </div>
    </PrimaryContext.Provider>
  );
}

/** A job that lay says so above its sheet, with the way to what was forgotten. It stays while the sheet is open: nothing moves under a finger. */
function Rested({ job }: { job: Job }) {
  const [days] = useState(() => {
    const last = job.handOver ? undefined : lastDoneOf(job);
    return last ? daysBetween(last.at, new Date().toISOString()) : 0;
  });
  if (days < restDays) return null;
  return (
    <p className="rested-note">
      <span>This job lay for {restWords(days)}.</span>
      <Link className="button quiet" href={whereWasIPage(job.id)}>
        Where was I
      </Link>
    </p>
  );
}

export const whereWasIPage = (job: string): string => `/job/${job}/where-was-i`;

function JobTop({ job, where }: { job: Job; where: string }) {
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
      <Link className="what" href={whereWasIPage(job.id)} title="Where was I">
        <span>
          <span className="only-phone">{where} · </span>
          {intake.machine || job.title || 'Machine not named yet'}
          {job.invented && ' (invented)'}
          <span className="hidden">: where was I</span>
        </span>
        <small>{history.join(' · ')}</small>
      </Link>
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

const Stages = memo((props: { answers: Answers; here: Stage | undefined; onGo: () => void }) => {
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
});
