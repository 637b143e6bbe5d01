import { counted } from '../../../phrase/index.js';
import type { Stage } from '../../entry.js';
import type { From, Job } from '../../job.js';
import type { Answers } from '../answers.js';
import { piecesOf } from './taken.js';

/** A picture that someone will want later, and whether there is one. */
export interface WantedView {
  /** what a picture of it carries as `about` */
  readonly key: string;
  readonly view: string;
  /** the component that hides it, or the gate that asks for it */
  readonly of: string;
  readonly title: string;
  /** the photograph or the piece of film that shows it */
  readonly shown?: From<'photograph'>;
  /** why it was not taken */
  readonly reason?: string;
  /** too late: what showed it is off */
  readonly gone: boolean;
}

/** How much of what is worth a picture has one, in one stage. */
export interface Coverage {
  readonly stage: Stage;
  readonly wanted: readonly WantedView[];
  readonly present: number;
  /** can still be taken */
  readonly missing: readonly WantedView[];
  /** "7 of 9 views" */
  readonly figure: string;
}

/** Of a step that is planned or done: what shows before it. */
export interface StepViews {
  readonly step: string;
  readonly title: string;
  readonly components: readonly string[];
  readonly done?: From<'step'>;
}

/** The mark by which a picture says what it shows. */
export const viewKey = (of: string, view: string): string => `${of}:${view}`.slice(0, 120);

/**
 * Views wanted, present and missing in a stage. Teardown wants what each step hides: of the steps done and of those
 * still to come, which the caller brings. Assembly wants what a gate asks to be seen. A picture counts by what it is
 * about or by its caption, a piece of film as much as a photograph.
 */
export function coverageOf(
  answers: Answers,
  stage: 'teardown' | 'assembly',
  toCome: readonly StepViews[] = [],
): Coverage {
  const wanted = stage === 'teardown' ? teardownViews(answers, toCome) : gateViews(answers);
  const present = wanted.filter((v) => v.shown).length;
  return {
    stage,
    wanted,
    present,
    missing: wanted.filter((v) => !v.shown && !v.gone),
    figure: `${present} of ${counted(wanted.length, 'view')}`,
  };
}

function teardownViews(answers: Answers, toCome: readonly StepViews[]): WantedView[] {
  const done = answers.takenOff.map((s) => ({
    step: s.step,
    title: s.title,
    components: piecesOf(answers, s),
    done: s,
  }));
  return [...done, ...toCome].flatMap((step) => viewsOf(answers, step));
}

/** What shows before one step and not after it. */
export function viewsOf(
  { job, components: known }: Answers,
  { title, step, components, done }: StepViews,
): WantedView[] {
  const views = components.flatMap((of) => (known.get(of)?.views ?? []).map((view) => ({ of, view })));
  const once = [...new Map(views.map((v) => [v.view, v])).values()];
  return once.map(({ of, view }) => {
    const shown = pictureOf(job, [viewKey(of, view), viewKey(step, view)], view);
    const reason = done?.unseen?.find((u) => u.view === view)?.reason;
    return {
      key: viewKey(of, view),
      view,
      of,
      title,
      gone: done !== undefined && !shown,
      ...(shown && { shown }),
      ...(reason !== undefined && { reason }),
    };
  });
}

function gateViews(answers: Answers): WantedView[] {
  const { job, catalog, takenOff } = answers;
  const back = new Set(takenOff.flatMap((s) => piecesOf(answers, s)));
  return catalog.gates
    .filter((gate) => gate.stage === 'assembly' && gate.after.some((id) => back.has(id)))
    .flatMap((gate) =>
      (gate.views ?? []).map((view): WantedView => {
        const key = viewKey(`gate-${gate.id}`, view);
        const shown = pictureOf(job, [key], view);
        return { key, view, of: gate.id, title: gate.name, gone: false, ...(shown && { shown }) };
      }),
    );
}

function pictureOf(job: Job, keys: readonly string[], view: string): From<'photograph'> | undefined {
  return job.photographs.findLast(
    (p) => (p.about !== undefined && keys.includes(p.about)) || p.caption === view,
  );
}
