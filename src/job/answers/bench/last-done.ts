import { cutShort } from '../../../phrase/index.js';
import { type Entry, type Stage, stages } from '../../entry.js';
import { stageOf } from '../../find/places.js';
import type { Job } from '../../job.js';
import { lineWords } from '../../line-words.js';
import { whenOf } from '../../order.js';

/** Where the work on a job stopped: what was done last, and where it goes on. */
export interface LastDone {
  /** the sheet on which it goes on */
  readonly stage: Stage;
  /** the page below the job's own: a sheet, or step mode where a step or a bolt was the last */
  readonly page: string;
  /** "Fuel tank: off" */
  readonly words: string;
  readonly at: string;
  readonly by: string;
}

/** None while only the tag was hung. Struck lines count for nothing. */
export function lastDoneOf(job: Job): LastDone | undefined {
  const line = job.log.findLast(({ known, struck }) => !struck && known && stageOf(known) !== undefined);
  if (!line?.known || line.known.kind === 'open') return undefined;
  const stage = goesOn(line.known);
  const { title, value } = lineWords(line);
  const words = cutShort(plainLine(value ? `${title}: ${value}` : title), glance);
  return { stage, page: pageOf(line.known, stage), words, at: whenOf(line.entry), by: line.entry.by };
}

/** A finished sheet leads to the next one. */
function goesOn(entry: Entry): Stage {
  const stage = stageOf(entry)!;
  const closed = entry.kind === 'stage' && entry.body.state !== 'reopened';
  return (closed && stages[stages.indexOf(stage) + 1]) || stage;
}

function pageOf(entry: Entry, stage: Stage): string {
  if (entry.kind === 'torque') return `tighten/${entry.body.joint}`;
  if (entry.kind !== 'step' || entry.body.state === 'planned') return stage;
  return entry.body.stage === 'teardown' ? 'take-apart' : 'put-together';
}

const glance = 120;
const plainLine = (words: string): string => words.replace(/\s+/g, ' ').trim();
