import type { Body, PlannedStep } from '../../../job/index.js';
import { listed } from '../../../phrase/index.js';
import { type Count, countedFasteners } from './counter.js';

/** Why a picture was not taken, mostly. */
export const unseenBecause = ['Hands full', 'Nothing to see', 'On film elsewhere', 'Came in without it'];

export const missingViews = ({ views }: PlannedStep) => views.filter((v) => !v.shown && !v.gone);
export const openPorts = ({ plugs }: PlannedStep, plugged: readonly string[]) =>
  plugs.filter((p) => !plugged.includes(p.name));
export const notCounted = (counts: readonly Count[]) => counts.filter((c) => c.count === 0 && c.usual);

interface Off {
  readonly counts: readonly Count[];
  readonly plugged: readonly string[];
  /** why a picture is missing, a port open, a bolt not counted; empty where nothing is */
  readonly reason: string;
  readonly words?: string;
  /** what was said of missing pictures before */
  readonly unseen?: Body<'step'>['unseen'];
}

/** The line that says of a step that it is off, with what was not as it should be and why. */
export function offLine(step: PlannedStep, said: Off) {
  const { counts, plugged, reason } = said;
  return {
    step: step.step,
    stage: 'teardown' as const,
    title: step.name,
    state: 'done' as const,
    fasteners: countedFasteners(counts),
    plugged: [...plugged],
    unseen: reason === '' ? said.unseen : missingViews(step).map(({ view }) => ({ view, reason })),
    words: [said.words, reason && leftWords(step, said)].filter(Boolean).join('. ') || undefined,
    ...(step.components.length > 0 && { components: [...step.components] }),
    ...(step.components.length === 1 && { component: step.components[0] }),
  };
}

function leftWords(step: PlannedStep, { counts, plugged, reason }: Off): string | undefined {
  const open = openPorts(step, plugged);
  const uncounted = notCounted(counts);
  const left = [
    open.length > 0 && `left open: ${listed(open.map((p) => p.name))}`,
    uncounted.length > 0 && `not counted: ${listed(uncounted.map((c) => c.usual!))}`,
  ].filter(Boolean);
  return left.length > 0 ? `${left.join('; ')} (${reason})` : undefined;
}
