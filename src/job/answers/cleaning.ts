import {
  type Agent,
  byId,
  type Catalog,
  type Caution,
  type Cleaning,
  cautionsFor,
  type NeverCombine,
} from '../../catalog/index.js';
import type { From, Job } from '../job.js';
import type { Answers } from './answers.js';

/** What is to be cleaned: the materials that the agent will touch, and the way the catalog knows for such a part. */
export interface CleaningAsked {
  readonly component?: string;
  /** id of the catalog’s way of cleaning such a part */
  readonly way?: string;
  readonly materials: readonly string[];
}

/** What an agent does to it, said before it is started. */
export interface AgentAnswer {
  readonly agent: Agent;
  readonly verdict: 'allowed' | 'with-care' | 'never';
  /** the gravest first */
  readonly reasons: readonly string[];
  readonly hazards: readonly string[];
  readonly cautions: readonly Caution[];
  readonly soakMinutes?: number;
  readonly dryMinutes?: number;
}

/** The catalog’s ways of cleaning a component; all of them for a part that the catalog does not know. */
export function waysToClean(catalog: Catalog, component: string | undefined): readonly Cleaning[] {
  const own = catalog.cleanings.filter(({ components }) => components?.includes(component ?? ''));
  return own.length > 0 ? own : catalog.cleanings;
}

/**
 * Agents with their answer for this part: what the trade uses for it first, then what else is allowed, then what
 * would never be done. One material that an agent attacks is enough for never; so is something it must not meet that
 * was used on the part before. An agent judged on some of the materials only is taken with care; one that nobody
 * has judged on any of them is left out, for it is not known to be safe.
 */
export function cleaningAnswers({ job, catalog, components }: Answers, said: CleaningAsked): AgentAnswer[] {
  // whatever of it was named, the agent touches all that it is made of
  const madeOf = components.get(said.component ?? '')?.madeOf ?? [];
  const asked = { ...said, materials: [...new Set([...said.materials, ...madeOf])] };
  const way = asked.way === undefined ? undefined : byId(catalog.cleanings).get(asked.way);
  const answers = catalog.agents
    .map((agent) => answerFor(job, catalog, asked, way, agent))
    .filter(({ verdict, agent }) => verdict === 'never' || isJudged(catalog, asked, way, agent));
  const rank = ({ verdict, agent }: AgentAnswer) =>
    (way?.agents.includes(agent.id) ? 0 : 1) + { allowed: 0, 'with-care': 2, never: 4 }[verdict];
  return answers.toSorted((a, b) => rank(a) - rank(b));
}

function isJudged(catalog: Catalog, asked: CleaningAsked, way: Cleaning | undefined, { id }: Agent): boolean {
  const pair = catalog.agentsOnMaterials.some((j) => j.agent === id && asked.materials.includes(j.material));
  return pair || way?.agents.includes(id) === true;
}

function answerFor(
  job: Job,
  catalog: Catalog,
  asked: CleaningAsked,
  way: Cleaning | undefined,
  agent: Agent,
): AgentAnswer {
  const attacks = judged(catalog, asked, agent, 'never');
  const meets = neverMeets(job, catalog, asked, agent, attacks.length > 0);
  const avoided = way?.avoidAgents?.includes(agent.id) === true && attacks.length + meets.length === 0;
  const nevers = [
    ...(agent.never ? [agent.never] : []),
    ...attacks,
    ...meets,
    ...(avoided ? [`Not for this: ${way.avoid}`] : []),
  ];
  const cares = [...judged(catalog, asked, agent, 'with care'), ...unjudged(catalog, asked, way, agent)];
  const usual = way?.agents.includes(agent.id) === true;
  const times = usual && way ? timesOf(way) : {};
  const good = judged(catalog, asked, agent, 'good');
  return {
    agent,
    verdict: nevers.length > 0 ? 'never' : cares.length > 0 ? 'with-care' : 'allowed',
    reasons: nevers.length > 0 ? nevers : [...cares, ...good],
    hazards: agent.hazards.filter((hazard) => hazard !== 'none to speak of'),
    cautions: cautionsFor(catalog, { agent: agent.id }),
    ...times,
  };
}

/** The short ends: one looks after that time, and gives it more if it needs more. */
function timesOf({ soak, dry }: Cleaning): Pick<AgentAnswer, 'soakMinutes' | 'dryMinutes'> {
  return { ...(soak && { soakMinutes: soak.from }), ...(dry && { dryMinutes: dry.from }) };
}

type Verdict = Catalog['agentsOnMaterials'][number]['verdict'];

function judged(catalog: Catalog, { materials }: CleaningAsked, agent: Agent, verdict: Verdict): string[] {
  return byReason(
    catalog,
    catalog.agentsOnMaterials
      .filter((j) => j.agent === agent.id && materials.includes(j.material) && j.verdict === verdict)
      .map(({ material, why }) => [material, why]),
  );
}

/** "Aluminum, zinc alloy: pits it": materials with the same reason stand together. */
function byReason(catalog: Catalog, pairs: readonly (readonly [string, string])[]): string[] {
  const names = byId(catalog.materials);
  const groups = new Map<string, string[]>();
  for (const [material, why] of pairs) {
    const name = (names.get(material)?.name ?? material).split(':')[0]!;
    const known = groups.get(why);
    if (known) known.push(name.toLowerCase());
    else groups.set(why, [name]);
  }
  return [...groups].map(([why, list]) => `${list.join(', ')}: ${why}`);
}

/** What the trade uses on such a part is judged by that, whatever pair is not listed. */
function unjudged(
  catalog: Catalog,
  { materials }: CleaningAsked,
  way: Cleaning | undefined,
  agent: Agent,
): string[] {
  const unlisted = materials.filter(
    (material) =>
      !catalog.agentsOnMaterials.some((j) => j.agent === agent.id && j.material === material) &&
      !(way?.agents.includes(agent.id) && way.materials.includes(material)),
  );
  const why = 'nobody has judged this pair; try it where it does not matter';
  return byReason(
    catalog,
    unlisted.map((material) => [material, why]),
  );
}

/** What must not meet: the part’s own material, where that is not said already, or what was used on it before. */
function neverMeets(
  job: Job,
  catalog: Catalog,
  asked: CleaningAsked,
  agent: Agent,
  saidOfMaterial: boolean,
): string[] {
  const used = usedBefore(job, asked.component);
  const agents = byId(catalog.agents);
  return catalog.neverCombine.flatMap((rule) =>
    sidesOf(rule).flatMap(([own, other]) => {
      if (!own.agents?.includes(agent.id)) return [];
      const material = !saidOfMaterial && other.materials?.some((id) => asked.materials.includes(id));
      const before = used.find((c) => other.agents?.includes(c.agent));
      if (material) return [`${agent.name.split(':')[0]} on it gives ${rule.gives}`];
      if (!before) return [];
      const name = agents.get(before.agent)?.name ?? before.agent;
      return [`${name.split(':')[0]} was used on it: together they give ${rule.gives}`];
    }),
  );
}

const sidesOf = ({ a, b }: NeverCombine) =>
  [
    [a, b],
    [b, a],
  ] as const;

/** Cleanings of the same component that were begun; planned ones have not touched it. */
function usedBefore(job: Job, component: string | undefined): From<'cleaning'>[] {
  if (component === undefined) return [];
  return job.log.flatMap(({ known, struck, entry }) => {
    if (struck || known?.kind !== 'cleaning' || known.body.component !== component) return [];
    const { state } = known.body;
    return state === 'planned' || state === 'dropped'
      ? []
      : [{ ...known.body, entry: entry.id, at: entry.at, by: entry.by }];
  });
}

/** A cleaning under way: what it does now and until when, as a moment in time. */
export interface CleaningState {
  readonly cleaning: From<'cleaning'>;
  /** milliseconds since 1970, where a time runs */
  readonly until?: number;
}

export function cleaningStates(job: Job): CleaningState[] {
  return [...job.cleanings.values()]
    .filter(({ state }) => state !== 'dropped')
    .map((cleaning) => {
      const { state, soakMinutes, dryMinutes, at } = cleaning;
      const minutes = state === 'soaking' ? soakMinutes : state === 'drying' ? dryMinutes : undefined;
      return { cleaning, ...(minutes !== undefined && { until: Date.parse(at) + minutes * 60_000 }) };
    });
}

/** Why a cleaning that was planned must not be started now: something may have been used on the part since. */
export function cleaningRefused(answers: Answers, cleaning: From<'cleaning'>): string | undefined {
  const asked = {
    materials: cleaning.materials,
    ...(cleaning.component !== undefined && { component: cleaning.component }),
  };
  const answer = cleaningAnswers(answers, asked).find(({ agent }) => agent.id === cleaning.agent);
  return answer?.verdict === 'never' ? answer.reasons[0] : undefined;
}
