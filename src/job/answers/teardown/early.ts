import { roleOf } from '../../../catalog/index.js';
import type { LeastTeardown, Wait } from '../../../plan/index.js';
import type { From, Job } from '../../job.js';
import type { Answers } from '../answers.js';
import type { EngineGraph } from './engine-graph.js';

/** A wait that is begun before the work, so that it runs while other things come off. */
export interface EarlyWait {
  readonly kind: 'soak' | 'cool';
  readonly component: string;
  readonly name: string;
  readonly words: string;
  /** as a rule */
  readonly minutes: number;
  /** minutes left of it; the whole of a soak that nobody has begun */
  readonly left: number;
  readonly begun: boolean;
}

/**
 * The soaks and cool-downs of the pieces that come off. A soak counts unless someone said that the joint is not
 * stuck; it has begun when a cleaning with penetrant is logged for the component. A cool-down counts from the last
 * line that says the engine ran, and only where that is not long ago. Without `now` nothing runs down.
 */
export function earlyWaits(
  answers: Answers,
  { nameOf }: EngineGraph,
  removals: LeastTeardown['removals'],
  now?: string,
): EarlyWait[] {
  const { job, components: known, catalog } = answers;
  const penetrant = roleOf(catalog, 'penetrant');
  return removals
    .flatMap(({ pieces }) => pieces)
    .flatMap((component) => {
      const { soak, cool } = known.get(component) ?? {};
      const base = { component, name: nameOf(component) };
      const wetted = soakOf(job, component, penetrant);
      return [
        ...(soak && wetted?.state !== 'dropped' && wetted?.state !== 'done'
          ? [{ kind: 'soak' as const, ...base, ...soak, ...running(soak.minutes, wetted?.at, now) }]
          : []),
        ...(cool ? cooling(cool, base, answers.engine.state.ranAt, now) : []),
      ];
    });
}

function cooling(
  cool: { readonly minutes: number; readonly words: string },
  base: Pick<EarlyWait, 'component' | 'name'>,
  ranAt: string | undefined,
  now: string | undefined,
): EarlyWait[] {
  if (ranAt === undefined || now === undefined) return [];
  const { left } = running(cool.minutes, ranAt, now);
  return left > 0 ? [{ kind: 'cool', ...base, ...cool, left, begun: true }] : [];
}

function running(minutes: number, from: string | undefined, now: string | undefined) {
  if (from === undefined) return { left: minutes, begun: false };
  const passed = now === undefined ? 0 : (Date.parse(now) - Date.parse(from)) / 60_000;
  return { left: Math.max(0, Math.ceil(minutes - Math.max(0, passed))), begun: true };
}

function soakOf(job: Job, component: string, penetrant: string): From<'cleaning'> | undefined {
  return [...job.cleanings.values()].findLast((c) => c.component === component && c.agent === penetrant);
}

/** As the plan takes them: the longest wait of each piece. */
export function waitsFrom(early: readonly EarlyWait[]): Wait[] {
  return early
    .filter(({ left }) => left > 0)
    .map(({ component, left }) => ({ piece: component, minutes: left }));
}
