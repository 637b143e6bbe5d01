import type { From, Job } from '../../job.js';

/** An old part put back for now. It stays open until the new one is fitted or someone decides otherwise. */
export interface Provisional {
  readonly decision: From<'decision'>;
  readonly part?: From<'part'>;
  /** waiting: the part is not here; here: fit it now; service: no part is coming, the next service brings it back */
  readonly state: 'waiting' | 'here' | 'service';
  /** when it comes back, in words */
  readonly comesBack: string;
}

/**
 * Provisional decisions that stand. One is closed by the part fitted or dropped after it, or by a later decision on
 * the same thing.
 */
export function provisionalsOf(job: Job): Provisional[] {
  const latest = new Map<string, From<'decision'>>();
  for (const decision of job.decisions)
    latest.set(`${decision.about} ${decision.which ?? decision.title}`, decision);
  return [...latest.values()]
    .filter((decision) => decision.choice === 'provisional')
    .flatMap((decision) => {
      const part = decision.which === undefined ? undefined : partOf(job, decision.which);
      return part && closes(part, decision) ? [] : [standing(decision, part)];
    });
}

/** A decision names the part, or the component that the part goes with. */
function partOf(job: Job, which: string): From<'part'> | undefined {
  return job.parts.get(which) ?? [...job.parts.values()].find((p) => p.component === which && !p.consumable);
}

function closes(part: From<'part'>, decision: From<'decision'>): boolean {
  return (
    (part.state === 'fitted' || part.state === 'dropped') && Date.parse(part.at) >= Date.parse(decision.at)
  );
}

function standing(decision: From<'decision'>, part: From<'part'> | undefined): Provisional {
  const state = part === undefined ? 'service' : part.state === 'arrived' ? 'here' : 'waiting';
  return { decision, ...(part && { part }), state, comesBack: comesBack(decision, part, state) };
}

function comesBack(
  { until }: From<'decision'>,
  part: From<'part'> | undefined,
  state: Provisional['state'],
): string {
  if (state === 'here') return `now: ${part!.name} is here`;
  if (until) return until;
  return part
    ? `when ${part.name} is here${part.due ? `, due ${part.due}` : ''}, at the latest with the next service`
    : 'with the next service';
}

/** What the hand-over’s due list owes to parts put back for now. */
export function dueFromProvisionals(provisionals: readonly Provisional[]): { what: string; when: string }[] {
  return provisionals.map(({ decision, part, comesBack: when }) => ({
    what: part ? `Fit ${part.name}, the old one is in for now` : decision.title,
    when,
  }));
}
