import { type CSSProperties, type KeyboardEvent, useEffect, useRef, useState } from 'react';
import { Link } from 'wouter';
import { type PlacedBlock, type PlannedJob, type WorkingHours, wallTime } from '../../job/index.js';
import { weekDay, withDays } from '../../phrase/index.js';
import { today } from '../parts/today.js';
import { momentWords } from './pick-up-next.js';
import type { BenchView } from './use-bench-plan.js';

/** Working days side by side, nights left out; a place on it in parts of a hundred. */
interface Sheet {
  readonly days: readonly number[];
  readonly hours: WorkingHours;
  readonly at: (minute: number) => number;
}

const day = 24 * 60;
const mostDays = 8;

function sheetOf(hours: WorkingHours, from: number, to: number): Sheet {
  const first = Math.floor(from / day) * day;
  const days: number[] = [];
  for (let d = first; days.length < mostDays && (d <= to || days.length < 2); d += day)
    if (hours.days.has(new Date(d * 60_000).getUTCDay()) && d + hours.to > from) days.push(d);
  const open = hours.to - hours.from;
  const at = (minute: number) => {
    const past = days.filter((d) => d + hours.to <= minute).length;
    const today = days[past];
    const within = today === undefined ? 0 : Math.max(0, minute - today - hours.from) / open;
    return Math.min(100, (100 * (past + Math.min(1, within))) / days.length);
  };
  return { days, hours, at };
}

/** The days to come over all open jobs: a line a tag, drawn work, hatched soaks, the now-line, and promises. */
export function BenchTimeline({ view: { asked, plan, wrong }, jobs }: { view: BenchView; jobs: number }) {
  const [chosen, setChosen] = useState<string>();
  const scroller = useRef<HTMLDivElement>(null);
  const there = plan !== undefined;
  // a phone shows a day and a half: they begin a little before now
  useEffect(() => {
    const line = scroller.current?.querySelector<HTMLElement>('.now-line i');
    if (there && line && scroller.current) scroller.current.scrollLeft = line.offsetLeft - 24;
  }, [there]);
  if (!asked || !plan) return jobs > 0 && !wrong && <div className="plan-to-come" style={inRows(jobs)} />;
  const planned = plan.jobs.filter(({ blocks }) => blocks.length > 0);
  if (planned.length === 0) return null;
  const sheet = sheetOf(asked.hours, asked.origin, lastMoment(planned));
  const job = planned.find(({ work }) => work.job === chosen);
  return (
    <section className="section stack tight" aria-label="The days to come">
      <h2>The days to come</h2>
      <div className="plan" ref={scroller} style={{ '--days': sheet.days.length } as CSSProperties}>
        <div className="plan-sheet">
          <Days sheet={sheet} />
          {planned.map((p) => (
            <Lane
              key={p.work.job}
              planned={p}
              sheet={sheet}
              chosen={p === job}
              onChoose={() => setChosen(p === job ? undefined : p.work.job)}
            />
          ))}
          <NowLine sheet={sheet} now={asked.origin} />
        </div>
      </div>
      {job ? (
        <JobInWords planned={job} />
      ) : (
        <p className="soft">
          From the catalog’s usual minutes. A tap on a line tells its pieces with their times.
        </p>
      )}
      <TakenAs asked={asked} bound={plan.optimal ? undefined : plan.bound} />
    </section>
  );
}

/** The place of a plan that is still being worked out: what stands below it does not move when it comes. */
const inRows = (rows: number) => ({ '--rows': rows }) as CSSProperties;

const lastMoment = (planned: readonly PlannedJob[]) =>
  planned.reduce(
    (end, { ready = 0, work }) => Math.max(end, ready, Math.min(work.due ?? 0, ready + 3 * day)),
    0,
  );

function Days({ sheet }: { sheet: Sheet }) {
  return (
    <div className="plan-days" aria-hidden="true">
      {sheet.days.map((d) => (
        <span key={d}>{weekDay(wallTime(d).slice(0, 10))}</span>
      ))}
    </div>
  );
}

function Lane(props: { planned: PlannedJob; sheet: Sheet; chosen: boolean; onChoose: () => void }) {
  const { planned, sheet, chosen, onChoose } = props;
  const { work, blocks, late } = planned;
  const due = work.due !== undefined && work.due > sheet.days[0]! ? sheet.at(work.due) : undefined;
  return (
    <button
      type="button"
      className="lane"
      aria-pressed={chosen}
      aria-label={laneWords(planned)}
      onClick={onChoose}
      onKeyDown={upAndDown}
    >
      <span className="lane-tag">{work.tag}</span>
      <span className="lane-sheet" aria-hidden="true">
        <Drawn blocks={blocks} sheet={sheet} />
        {due !== undefined && (
          <span className={late > 0 ? 'promise late' : 'promise'} style={{ left: `${due}%` }}>
            {late > 0 ? '✕' : '✓'} promised
          </span>
        )}
      </span>
    </button>
  );
}

/** Up and down go from line to line. */
function upAndDown(event: KeyboardEvent<HTMLButtonElement>): void {
  const step =
    event.key === 'ArrowDown'
      ? 'nextElementSibling'
      : event.key === 'ArrowUp'
        ? 'previousElementSibling'
        : undefined;
  const other = step && event.currentTarget[step];
  if (!(other instanceof HTMLButtonElement)) return;
  event.preventDefault();
  other.focus();
}

function laneWords({ work, ready, late }: PlannedJob): string {
  const promise =
    work.promised && `promised for ${weekDay(work.promised, today())}${late > 0 ? ', late' : ''}`;
  return [`Tag ${work.tag}, ${work.title}`, ready !== undefined && `ready ${momentWords(ready)}`, promise]
    .filter(Boolean)
    .join(', ');
}

/** Hands-on pieces that follow one another without a pause are one run on the sheet, with one line of words. */
function runsOf(blocks: readonly PlacedBlock[]): PlacedBlock[][] {
  const runs: PlacedBlock[][] = [];
  for (const block of blocks.filter(({ passive }) => !passive)) {
    const run = runs.at(-1);
    if (run && run.at(-1)!.to === block.from) run.push(block);
    else runs.push([block]);
  }
  return runs;
}

function Drawn({ blocks, sheet }: { blocks: readonly PlacedBlock[]; sheet: Sheet }) {
  const runs = runsOf(blocks).filter(([first]) => sheet.at(first!.from) < 100);
  return (
    <>
      {runs.map((run, i) => {
        const left = sheet.at(run[0]!.from);
        const end = runs[i + 1] ? sheet.at(runs[i + 1]![0]!.from) : 100;
        return (
          <span key={run[0]!.id} className="run-words" style={{ left: `${left}%`, width: `${end - left}%` }}>
            {[...new Set(run.map(({ label }) => label.split(',')[0]))].join(', ')}
          </span>
        );
      })}
      {blocks.map((block) => {
        const [left, right] = [sheet.at(block.from), sheet.at(block.to)];
        const style = { left: `${left}%`, width: `${Math.max(right - left, 0.3)}%` };
        return (
          left < 100 && (
            <span key={block.id} className={block.passive ? 'block passive' : 'block'} style={style} />
          )
        );
      })}
    </>
  );
}

function NowLine({ sheet, now }: { sheet: Sheet; now: number }) {
  return (
    <div className="now-line" aria-hidden="true">
      <i style={{ left: `${sheet.at(now)}%` }}>
        <b>now</b>
      </i>
    </div>
  );
}

/** The pieces of one job, day by day. */
function JobInWords({ planned: { work, blocks } }: { planned: PlannedJob }) {
  return (
    <div className="card stack tight">
      <h3>
        Tag {work.tag}: {work.title}
      </h3>
      <ul className="lines">
        {blocks.map((block) => (
          <li key={block.id}>
            <div>
              <b>{block.label}</b>
              <div className="soft">
                {momentWords(block.from)} to {wallTime(block.to).slice(11)}
                {block.passive && ', needs no hands'}
                {block.waitsFor && `, ${withDays(block.waitsFor, today())}`}
              </div>
            </div>
            <Link
              className="button"
              href={`/job/${work.job}/${block.stage}`}
              aria-label={`Open ${block.label} of tag ${work.tag}`}
            >
              Open
            </Link>
          </li>
        ))}
      </ul>
    </div>
  );
}

function TakenAs({ asked, bound }: { asked: NonNullable<BenchView['asked']>; bound: number | undefined }) {
  return (
    <details>
      <summary>What this plan stands on</summary>
      <ul>
        <li>Minutes are from the catalog’s usual minutes for each piece and stage, not measured here.</li>
        <li>
          One pair of hands, within the working hours; soaks and drying go on by themselves, nights too.
        </li>
        {bound === undefined ? (
          <li>No order of the work is less late, or sooner finished.</li>
        ) : (
          <li>The best order found; nothing could be finished before {momentWords(bound)}.</li>
        )}
        {asked.takenAs.map((words) => (
          <li key={words}>{withDays(words, today())}.</li>
        ))}
      </ul>
    </details>
  );
}
