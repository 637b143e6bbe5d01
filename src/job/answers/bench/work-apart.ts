import { byId, roleOf } from '../../../catalog/index.js';
import { lowerFirst } from '../../../phrase/index.js';
import type { From, Job } from '../../job.js';
import { dayAfter } from '../parts/order.js';
import { wallMinute, wallTime } from '../shop/working-hours.js';
import { lastOff } from '../steps/taken.js';
import { isGraph } from '../teardown/engine-graph.js';
import { type Draft, ends, isClosed, notOrdering, put, usualMinutes } from './work-piece.js';

export function addTeardown(draft: Draft): void {
  const { job, stepsToCome: coming, offNow } = draft.answers;
  const known = new Set(coming.flatMap(({ components }) => components));
  const minutes = coming.reduce((sum, step) => sum + step.minutes, 0) + plannedBeyond(draft, known);
  put(draft, {
    id: 'teardown',
    stage: 'teardown',
    label: 'teardown',
    minutes,
    after: ends(draft, notOrdering),
  });
  if (minutes === 0 && !isClosed(draft, 'teardown') && offNow.size === 0)
    draft.takenAs.push(`tag ${job.tag}: what has to come off is not said yet; nothing is planned for it`);
}

/** Steps that a person planned beyond what the goals ask for. */
function plannedBeyond(draft: Draft, known: ReadonlySet<string>): number {
  const off = minutesOff(draft);
  return [...draft.answers.job.steps.values()]
    .filter((s) => s.stage === 'teardown' && s.state === 'planned' && !known.has(s.component ?? ''))
    .reduce((sum, s) => sum + off(s.component ?? ''), 0);
}

/** For a piece that the catalog does not know. */
const unknownPiece = 5;

const minutesOff =
  ({ answers: { components } }: Draft) =>
  (component: string): number =>
    components.get(component)?.minutesOff ?? unknownPiece;

export function addCleaning(draft: Draft): void {
  const { job } = draft.answers;
  const before = ends(draft, notOrdering);
  const open = [...job.cleanings.values()].filter(
    (each) => each.state !== 'done' && each.state !== 'dropped' && !hasLoosened(draft, each),
  );
  const planned = open.filter(({ state }) => state === 'planned').length;
  if (job.cleanings.size === 0 && isApart(draft))
    put(draft, {
      id: 'clean',
      stage: 'measure',
      label: 'clean the parts',
      minutes: usualMinutes(draft, 'clean'),
      after: before,
    });
  for (const cleaning of open) addOneCleaning(draft, cleaning, before, planned);
}

/** A joint that came off since it was wetted needs its soak no longer. */
const hasLoosened = ({ answers }: Draft, { agent, component, at }: From<'cleaning'>): boolean =>
  agent === roleOf(answers.catalog, 'penetrant') &&
  component !== undefined &&
  lastOff(answers, component, at)?.since === true;

const isApart = ({ answers, pieces }: Draft): boolean =>
  answers.offNow.size > 0 || pieces.some(({ stage }) => stage === 'teardown');

/** Hands put it in; then it soaks and dries by itself. What is under way has only the rest of its time left. */
function addOneCleaning(
  draft: Draft,
  { cleaning: id, title, state, soakMinutes = 0, dryMinutes = 0, agent, at }: From<'cleaning'>,
  before: readonly string[],
  planned: number,
): void {
  const name = lowerFirst(title);
  const left = (minutes: number) => Math.max(0, wallMinute(at) + minutes - draft.now);
  let after = state === 'planned' ? before : [];
  const add = (piece: Omit<Parameters<typeof put>[1], 'stage' | 'after'>) => {
    put(draft, { ...piece, stage: 'measure', after });
    if (piece.minutes > 0) after = [piece.id];
  };
  const soak = state === 'planned' ? soakMinutes : state === 'soaking' ? left(soakMinutes) : 0;
  const dry = state === 'drying' ? left(dryMinutes) : dryMinutes;
  if (state === 'planned')
    add({
      id: `put-in-${id}`,
      label: `clean: ${name}`,
      minutes: usualMinutes(draft, 'clean') / planned,
    });
  add({
    id: `soak-${id}`,
    label: `soaks: ${name}`,
    minutes: soak,
    passive: true,
    place: byId(draft.answers.catalog.agents).get(agent ?? '')?.bath ?? 'soak',
  });
  add({ id: `dry-${id}`, label: `dries: ${name}`, minutes: dry, passive: true });
  if (state === 'soaking') draft.waits.push(`${name}, soaking${until(draft, soak)}`);
  if (state === 'drying') draft.waits.push(`${name}, drying${until(draft, dry)}`);
}

const until = ({ now }: Draft, minutes: number) =>
  minutes > 0 ? ` until ${wallTime(now + minutes).slice(11)}` : ': its time is up';

export function addMeasuring(draft: Draft): void {
  if (!isApart(draft) || isClosed(draft, 'measure') || draft.answers.job.measurements.length > 0) return;
  put(draft, {
    id: 'measure',
    stage: 'measure',
    label: 'measure',
    minutes: usualMinutes(draft, 'measure'),
    after: ends(draft, notOrdering),
  });
}

/** Until when a component, or all that is left, has to wait for its part. */
interface Hold {
  readonly until: number;
  readonly part: string;
  readonly words: string;
}

/** What goes back without waiting goes back first; the rest when its last part is here. */
export function addAssembly(draft: Draft): void {
  const back = draft.answers.catalog.workFactors.find(({ id }) => id === 'put-back')?.likely ?? 1;
  const units = unitsBack(draft);
  const held = heldBack(draft, new Set(units.flatMap(({ components }) => components)));
  const groups = new Map<number, { hold: Hold | undefined; minutes: number }>();
  for (const unit of units) {
    const hold = unit.components.map((id) => held.get(id)).reduce(later, undefined);
    const minutes = (groups.get(hold?.until ?? 0)?.minutes ?? 0) + unit.minutes * back;
    groups.set(hold?.until ?? 0, { hold, minutes });
  }
  const inOrder = [...groups].sort(([a], [b]) => a - b).map(([, group]) => group);
  for (const [k, { hold, minutes }] of inOrder.entries())
    put(draft, {
      id: `assembly-${k}`,
      stage: 'assembly',
      label: hold
        ? `put back with the ${hold.part}`
        : inOrder.length > 1
          ? 'put back what can go'
          : 'put it together',
      minutes,
      after: hold ? ends(draft) : ends(draft, notOrdering),
      ...(hold && { earliest: hold.until, waitsFor: hold.words }),
    });
}

/** What will have to go back: each component that is off now, and each step that is to come, whole or single. */
function unitsBack(draft: Draft): { components: readonly string[]; minutes: number }[] {
  const minutes = minutesOff(draft);
  const { offNow, stepsToCome } = draft.answers;
  return [...[...offNow].map((id) => ({ components: [id], minutes: minutes(id) })), ...stepsToCome];
}

/** Each component that is off, with what holds it: its own part, or one that goes back underneath it. */
function heldBack(draft: Draft, off: ReadonlySet<string>): Map<string, Hold | undefined> {
  const { graph: engine } = draft.answers;
  const pieces = isGraph(engine) ? engine.graph.pieces : [];
  const own = ownHolds(draft);
  const held = new Map<string, Hold | undefined>();
  const holdOf = (component: string): Hold | undefined => {
    if (held.has(component)) return held.get(component);
    held.set(component, own.get(component));
    const under = pieces.filter(({ id, before }) => off.has(id) && before.includes(component));
    const hold = under.map(({ id }) => holdOf(id)).reduce(later, own.get(component));
    held.set(component, hold);
    return hold;
  };
  for (const component of off) holdOf(component);
  return held;
}

const later = (a: Hold | undefined, b: Hold | undefined): Hold | undefined =>
  !a || (b && b.until > a.until) ? b : a;

/** Days that a part takes that nobody has offered yet: "usual 3 to 10" by the catalog. */
const usualLead = 5;

function ownHolds(draft: Draft): Map<string, Hold> {
  const { job } = draft.answers;
  const holds = new Map<string, Hold>();
  for (const part of job.parts.values()) {
    const hold = holdFor(draft, part);
    if (!hold || part.component === undefined || isProvisional(job, part)) continue;
    holds.set(part.component, later(holds.get(part.component), hold)!);
  }
  return holds;
}

function holdFor(draft: Draft, part: From<'part'>): Hold | undefined {
  const name = lowerFirst(part.name);
  if (part.state === 'ordered' && part.due !== undefined) {
    const due = wallMinute(`${part.due}T00:00`);
    return due > draft.now ? { until: due, part: name, words: `${name} is due ${part.due}` } : undefined;
  }
  if (!draft.answers.toBuy.includes(part)) return undefined;
  const days = leadDays(draft, part);
  const due = dayAfter(draft.today, days);
  return {
    until: wallMinute(`${due}T00:00`),
    part: name,
    words: `${name}, ordered today, would be here ${due}`,
  };
}

function leadDays({ answers: { job }, takenAs }: Draft, { part, name }: From<'part'>): number {
  const offers = [...job.offers.values()].filter(
    (o) => !o.withdrawn && o.fit !== 'unsure' && o.contains[part] !== undefined,
  );
  if (offers.length > 0) return Math.min(...offers.map((o) => o.leadDays ?? 0));
  takenAs.push(`tag ${job.tag}: nobody has offered ${lowerFirst(name)} yet; ${usualLead} days are taken`);
  return usualLead;
}

/** The old part is put back for now: it holds nothing up. */
function isProvisional(job: Job, { part, component, at }: From<'part'>): boolean {
  return job.decisions.some(
    (d) =>
      d.choice === 'provisional' &&
      (d.which === part || d.which === component) &&
      Date.parse(d.at) >= Date.parse(at),
  );
}

/** Parts that belong to no component hold up the first start at the latest. */
export function looseHold(draft: Draft): Hold | undefined {
  const { job } = draft.answers;
  return [...job.parts.values()]
    .filter((part) => part.component === undefined && !isProvisional(job, part))
    .map((part) => holdFor(draft, part))
    .reduce(later, undefined);
}
