import { type Architecture, architectures } from '../../../catalog/index.js';
import type { From, Job } from '../../job.js';
import type { Answers } from '../answers.js';

export function architectureOf(job: Job): Architecture | undefined {
  return architectures.find((a) => a === job.intake.architecture);
}

/** Done steps in the order in which each was first done: a line mended later does not change what lay over what. */
export function inOrderDone(job: Job, stage: From<'step'>['stage']): From<'step'>[] {
  const first = new Map<string, number>();
  for (const [place, { known, struck }] of job.log.entries()) {
    if (struck || known?.kind !== 'step' || known.body.state !== 'done' || first.has(known.body.step))
      continue;
    first.set(known.body.step, place);
  }
  const done = [...job.steps.values()].filter((s) => s.stage === stage && s.state === 'done');
  return done.sort((a, b) => first.get(a.step)! - first.get(b.step)!);
}

/** The pieces of a step: as logged, or those of the assembly or component it is named for. None for a piece of one's own. */
export function piecesOf(
  { catalog, architecture, components }: Pick<Answers, 'catalog' | 'architecture' | 'components'>,
  step: Pick<From<'step'>, 'step' | 'component' | 'components'>,
): readonly string[] {
  if (step.components) return step.components;
  if (step.component !== undefined) return [step.component];
  if (components.has(step.step)) return [step.step];
  return (
    catalog.assemblies.find((a) => a.architecture === architecture && a.id === step.step)?.components ?? []
  );
}

/** Teardown steps that are done and that nothing has put back, in the order of taking off. */
export function stillOff({ takenOff, putBack }: Answers): From<'step'>[] {
  const back = new Set(putBack.map((s) => s.putsBack));
  return takenOff.filter((s) => !back.has(s.step));
}

/** Components that lie on the bench now. */
export function offNow(answers: Answers): ReadonlySet<string> {
  return new Set(answers.stillOff.flatMap((s) => piecesOf(answers, s)));
}

/** The step that took a component off last, and whether that was since a moment. */
export function lastOff(
  answers: Answers,
  component: string,
  at: string,
): { readonly step: From<'step'>; readonly since: boolean } | undefined {
  const step = answers.takenOff.findLast((s) => piecesOf(answers, s).includes(component));
  return step && { step, since: Date.parse(step.at) >= Date.parse(at) };
}

/** A handle for a step that is not taken yet: a piece that came off before gets a number. */
export function freeHandle(job: Job, id: string): string {
  const taken = (handle: string) => job.steps.get(handle)?.state === 'done';
  if (!taken(id)) return id;
  for (let n = 2; ; n += 1) if (!taken(`${id}-${n}`)) return `${id}-${n}`;
}
