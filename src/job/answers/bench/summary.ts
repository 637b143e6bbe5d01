import type { Body } from '../../entry.js';
import type { Job } from '../../job.js';
import { type LastDone, lastDoneOf } from './last-done.js';

/** What the bench shows of a job without opening it. */
export interface JobSummary {
  readonly id: string;
  readonly tag: number;
  readonly title: string;
  readonly machine?: string;
  readonly architecture?: NonNullable<Body<'intake'>['architecture']>;
  /** the owner's words, cut to one glance */
  readonly complaint?: string;
  readonly invented: boolean;
  readonly opened?: string;
  readonly lastAt?: string;
  readonly handedOver: boolean;
  readonly last?: LastDone;
}

const glance = 140;

export function jobSummary(job: Job): JobSummary {
  const { machine, architecture, complaint } = job.intake;
  const last = lastDoneOf(job);
  return {
    id: job.id,
    tag: job.tag,
    title: job.title,
    ...(machine !== undefined && { machine }),
    ...(architecture !== undefined && { architecture }),
    ...(complaint !== undefined && { complaint: atAGlance(complaint) }),
    invented: job.invented,
    ...(job.opened !== undefined && { opened: job.opened }),
    ...(job.lastAt !== undefined && { lastAt: job.lastAt }),
    handedOver: job.handOver !== undefined,
    ...(last !== undefined && { last }),
  };
}

/** Cut by code points, so that a sign outside the basic plane is never halved. */
function atAGlance(words: string): string {
  const signs = [...words.replace(/\s+/g, ' ').trim()];
  return signs.length <= glance ? signs.join('') : `${signs.slice(0, glance - 1).join('')}…`;
}
