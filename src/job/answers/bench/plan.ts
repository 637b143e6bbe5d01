import type { BenchProblem, BenchSchedule } from '../../../plan/index.js';
import type { Stage } from '../../entry.js';
import type { Shop } from '../../job.js';
import type { Answers } from '../answers.js';
import { closedSpans, readHours, usualHours, type WorkingHours, wallMinute } from '../shop/working-hours.js';
import { type JobWork, workOf } from './work-left.js';
import type { Piece } from './work-piece.js';

/** A piece of work as it stands in the plan. */
export interface BenchBlock {
  readonly id: string;
  readonly job: string;
  readonly tag: number;
  readonly stage: Stage;
  /** "teardown", "soaks: carburetor body" */
  readonly label: string;
  readonly minutes: number;
  /** no hands needed: a soak, a drying, a cooling */
  readonly passive: boolean;
  /** why it cannot begin sooner, in words, and until when */
  readonly waitsFor?: string;
  readonly heldUntil?: number;
}

/** The bench as the planner takes it, and what was taken for granted, in words. */
export interface BenchAsked {
  readonly problem: BenchProblem;
  readonly blocks: ReadonlyMap<string, BenchBlock>;
  readonly jobs: readonly JobWork[];
  readonly hours: WorkingHours;
  /** wall-clock minute of minute 0 of the problem */
  readonly origin: number;
  /** minutes from the origin on in which nobody is at the bench */
  readonly closed: readonly { readonly from: number; readonly to: number }[];
  readonly takenAs: readonly string[];
}

/** Blocks longer than this are cut: nobody plans an afternoon as one piece, and it must fit before closing time. */
const longest = 120;
const step = 5;
const day = 24 * 60;

/**
 * All that is left to do on the open jobs, for one mechanic within the shop’s hours: what waits for what, when parts
 * arrive, what soaks where, and what is promised. `now` is the wall clock, "2026-11-25T09:40".
 */
export function benchProblemOf(doors: readonly Answers[], shop: Shop, now: string): BenchAsked {
  const takenAs: string[] = [];
  const hours = hoursOf(shop, takenAs);
  const origin = Math.floor(wallMinute(now) / step) * step;
  const works = doors
    .filter(({ job }) => !job.handOver)
    .map((answers) => workOf(answers, now))
    .sort((a, b) => a.tag - b.tag);
  const places = placesOf(shop);
  const days = daysToPlan(works, hours, origin);
  const closed = closedSpans(hours, origin, days);
  const blocks = new Map<string, BenchBlock>();
  const activities = works.flatMap((work) => activitiesOf(work, { origin, hours, places, blocks }));
  return {
    problem: {
      resources: [
        { id: 'mechanic', capacity: 1, closed },
        ...[...places.values()].map(({ id, capacity }) => ({ id, capacity })),
      ],
      activities,
    },
    blocks,
    jobs: works,
    hours,
    origin,
    closed,
    takenAs: [...takenAs, ...new Set(works.flatMap((work) => work.takenAs))],
  };
}

function hoursOf(shop: Shop, takenAs: string[]): WorkingHours {
  const written = shop.settings['working-hours'];
  const read = written === undefined ? undefined : readHours(written);
  if (read) return read;
  takenAs.push(
    written === undefined
      ? 'working hours are not set: Monday to Friday, 08:00 to 17:00'
      : `the working hours, “${written}”, cannot be read: Monday to Friday, 08:00 to 17:00 instead`,
  );
  return usualHours;
}

interface Place {
  readonly id: string;
  readonly capacity: number;
}

/** Places by what they are used for; the name tells, as “soak tank” or “ultrasonic bath”. */
function placesOf(shop: Shop): ReadonlyMap<'soak' | 'ultrasonic', Place> {
  const found = new Map<'soak' | 'ultrasonic', Place>();
  for (const { place, name, capacity } of shop.places) {
    const use = /ultraso/i.test(name) ? 'ultrasonic' : /soak|tank|dip/i.test(name) ? 'soak' : undefined;
    if (use) found.set(use, { id: `place ${place}`, capacity });
  }
  return found;
}

/** Days enough for all the work one after the other behind the last arrival. */
function daysToPlan(works: readonly JobWork[], { days, from, to }: WorkingHours, origin: number): number {
  const pieces = works.flatMap((work) => work.pieces);
  const hands = pieces.reduce((sum, { minutes, passive }) => sum + (passive ? 0 : minutes), 0);
  const waits = pieces.reduce((sum, { minutes, passive, lag = 0 }) => sum + (passive ? minutes : 0) + lag, 0);
  const last = pieces.reduce((most, { earliest = origin }) => Math.max(most, earliest), origin);
  const workDays = Math.ceil(hands / Math.min(to - from, longest)) + 1;
  const calendar = Math.ceil((workDays * 7) / days.size) + Math.ceil((waits + last - origin) / day) + 7;
  return Math.min(calendar, mostDays);
}

/** Beyond a quarter of a year a bench plan is a wish. */
const mostDays = 100;

interface Around {
  readonly origin: number;
  readonly hours: WorkingHours;
  readonly places: ReturnType<typeof placesOf>;
  readonly blocks: Map<string, BenchBlock>;
}

type Activity = BenchProblem['activities'][number];

function activitiesOf(work: JobWork, around: Around): Activity[] {
  const lastOf = new Map<string, string>();
  return work.pieces.flatMap((piece) => {
    const chunks = chunksOf(piece, around.hours);
    return chunks.map((minutes, k): Activity => {
      const id = `${work.job} ${piece.id} ${k}`;
      const own = k === 0 ? undefined : lastOf.get(piece.id);
      lastOf.set(piece.id, id);
      around.blocks.set(id, blockOf(work, piece, id, minutes, [k, chunks.length]));
      return {
        id,
        minutes,
        uses: usesOf(piece, around),
        after: own
          ? [{ id: own }]
          : piece.after.flatMap((before) => {
              const last = lastOf.get(before);
              const lag = Math.ceil((piece.lag ?? 0) / step) * step;
              return last === undefined ? [] : [{ id: last, ...(lag > 0 && { lag }) }];
            }),
        ...(piece.earliest !== undefined && k === 0 && { earliest: fromOrigin(piece.earliest, around) }),
        ...(work.due !== undefined &&
          piece.last &&
          k === chunks.length - 1 && { due: Math.min(farthest, Math.max(0, work.due - around.origin)) }),
      };
    });
  });
}

/** The planner counts no further: a day written thousands of years ahead is as good as never. */
const farthest = 10_000_000;

const fromOrigin = (minute: number, { origin }: Around) =>
  Math.min(farthest, Math.max(0, Math.ceil((minute - origin) / step) * step));

function chunksOf({ minutes, passive }: Piece, { from, to }: WorkingHours): number[] {
  const whole = Math.max(step, Math.ceil(minutes / step) * step);
  if (passive) return [whole];
  const most = Math.max(step, Math.floor(Math.min(longest, to - from) / step) * step);
  const count = Math.ceil(whole / most);
  const each = Math.ceil(whole / count / step) * step;
  return Array.from({ length: count }, (_, k) => Math.min(each, whole - k * each)).filter((m) => m > 0);
}

function usesOf({ passive, place }: Piece, { places }: Around): Record<string, number> {
  if (!passive) return { mechanic: 1 };
  const found = place && places.get(place);
  return found ? { [found.id]: 1 } : {};
}

function blockOf(
  { job, tag }: JobWork,
  { stage, label, passive, waitsFor, earliest }: Piece,
  id: string,
  minutes: number,
  [k, count]: readonly [number, number],
): BenchBlock {
  return {
    id,
    job,
    tag,
    stage,
    label: count > 1 ? `${label}, ${k + 1} of ${count}` : label,
    minutes,
    passive,
    ...(waitsFor !== undefined && k === 0 && { waitsFor }),
    ...(earliest !== undefined && k === 0 && { heldUntil: earliest }),
  };
}

/** A block with its time, in wall-clock minutes. */
export interface PlacedBlock extends BenchBlock {
  readonly from: number;
  readonly to: number;
}

export interface BenchPlan {
  /** by job, in order of time */
  readonly jobs: readonly PlannedJob[];
  /** what a pair of hands takes up now or next */
  readonly next?: PlacedBlock;
  /** one sentence */
  readonly says: string;
  readonly ends: number;
  readonly optimal: boolean;
  /** whole minutes by which nothing could be finished sooner, and all is finished */
  readonly bound: number;
}

export interface PlannedJob {
  readonly work: JobWork;
  readonly blocks: readonly PlacedBlock[];
  /** when the last piece of it is done; nothing where nothing is left that can be planned */
  readonly ready?: number;
  /** minutes behind what was promised */
  readonly late: number;
}

/** The schedule read back as a plan for the bench. */
export function benchPlanOf(asked: BenchAsked, schedule: BenchSchedule): BenchPlan {
  const placed = [...asked.blocks.values()].map((block): PlacedBlock => {
    const from = asked.origin + (schedule.start[block.id] ?? 0);
    return { ...block, from, to: from + block.minutes };
  });
  const inTime = placed.sort((a, b) => a.from - b.from || a.to - b.to);
  const jobs = asked.jobs.map((work): PlannedJob => {
    const blocks = inTime.filter(({ job }) => job === work.job);
    const ready = blocks.reduce((end, { to }) => Math.max(end, to), 0);
    const late = work.due === undefined || blocks.length === 0 ? 0 : Math.max(0, ready - work.due);
    return { work, blocks, late, ...(blocks.length > 0 && { ready }) };
  });
  const next = inTime.find(({ passive }) => !passive);
  return {
    jobs,
    ...(next && { next }),
    says: nextWords(asked, next),
    ends: asked.origin + schedule.makespan,
    bound: asked.origin + schedule.bound,
    optimal: schedule.optimal,
  };
}

function nextWords(asked: BenchAsked, next: PlacedBlock | undefined): string {
  if (!next) {
    const waiting = asked.jobs.flatMap(({ waits }) => waits.slice(0, 1));
    return waiting.length === 0 ? 'Nothing is left to do.' : `Nothing to pick up now: ${waiting[0]}.`;
  }
  const what = `tag ${next.tag}: ${next.label}, about ${next.minutes} min`;
  if (next.from <= asked.origin) return `Pick up ${what}.`;
  return next.waitsFor === undefined ? `Next, ${what}.` : `Next, ${what}: ${next.waitsFor}.`;
}
