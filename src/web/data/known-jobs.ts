import type { RuleContext } from '../../job/index.js';

const known = new Map<string, RuleContext>();

/** Which engine a job on this page is: its lines are held against it before they are kept on the device. */
export const contextOf = (job: string): RuleContext | undefined => known.get(job);

export const knowJob = (job: string, context: RuleContext): void => void known.set(job, context);
