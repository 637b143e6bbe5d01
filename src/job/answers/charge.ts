import { nothingKnown, usualMinutes } from '../../worth/index.js';
import type { From, Job } from '../job.js';
import type { Answers } from './answers.js';
import { doneSteps } from './steps/tally.js';
import { benchMinutes, lookedMinutes, shopRate } from './worth-it.js';

/** What the work comes to, by the list: hours, parts, and both in money. */
export interface Charge {
  readonly currency: string;
  /** of the repairs and the service that were made, as a quote counts them; of the steps where nothing was decided */
  readonly minutes: number;
  /** steps: only of taking off and putting back, because no repair was decided on; no price is made of that */
  readonly by: 'repairs' | 'steps';
  /** of the checks made, not charged here */
  readonly lookedMinutes: number;
  readonly parts: number;
  /** parts on the machine whose price is not written down in this currency */
  readonly unpriced: number;
  readonly ratePerHour?: number;
  readonly labor?: number;
  readonly total?: number;
  /** what the owner was told */
  readonly quoted?: { readonly amount: number; readonly currency: string };
}

/** Undefined while nothing was done. */
export function chargeOf(answers: Answers): Charge | undefined {
  const { job, shop, partsUsed } = answers;
  const made = repairsMade(answers);
  // whole, so that hours times the rate is the price that stands beside them
  const minutes = Math.round(made.length > 0 ? repairMinutes(answers, made) : benchMinutes(answers));
  if (minutes === 0 && partsUsed.length === 0) return undefined;
  const currency = shop.settings.currency ?? '$';
  const priced = partsUsed.filter((p) => p.price?.currency === currency);
  const parts = priced.reduce((sum, p) => sum + p.price!.amount * p.count, 0);
  const ratePerHour = made.length > 0 ? shopRate(shop, currency) : undefined;
  const labor = ratePerHour === undefined ? undefined : (minutes / 60) * ratePerHour;
  const quoted = job.decisions.findLast((d) => d.about === 'machine' && d.amount)?.amount;
  return {
    currency,
    minutes,
    by: made.length > 0 ? 'repairs' : 'steps',
    lookedMinutes: lookedMinutes(answers),
    parts,
    unpriced: partsUsed.length - priced.length,
    ...(ratePerHour !== undefined && { ratePerHour }),
    ...(labor !== undefined && { labor, total: labor + parts }),
    ...(quoted && { quoted }),
  };
}

/** Faults of the catalog whose repair or service is in. */
function repairsMade({ catalog, architecture, faultsSaid, servicesMade }: Answers): string[] {
  if (architecture === undefined) return [];
  const repaired = faultsSaid.flatMap((f) => (f.repairedAt === undefined ? [] : [f.fault]));
  const known = new Set(catalog.faults.map((f) => f.id));
  return [...new Set([...repaired, ...servicesMade])].filter((fault) => known.has(fault));
}

function repairMinutes({ catalog, architecture, engine, shop }: Answers, made: readonly string[]): number {
  const currency = shop.settings.currency ?? '$';
  const asked = { catalog, architecture: architecture!, facts: engine.facts, parts: nothingKnown, currency };
  return usualMinutes(asked, made);
}

/**
 * Parts that are on the machine: logged as fitted, or here when the piece that they go with went back on. Nobody logs
 * each gasket, and a part that lay here while its piece was put back is not awaited.
 */
export function partsUsed({ job, provisionals }: Pick<Answers, 'job' | 'provisionals'>): From<'part'>[] {
  const forNow = new Set(provisionals.flatMap(({ part }) => part?.part ?? []));
  return [...job.parts.values()].filter(
    (part) =>
      part.state === 'fitted' ||
      (part.state === 'arrived' && !forNow.has(part.part) && wentBackWith(job, part)),
  );
}

const wentBackWith = (job: Job, { component, at }: From<'part'>): boolean =>
  component !== undefined &&
  doneSteps(job, 'assembly').some((s) => s.component === component && Date.parse(s.at) >= Date.parse(at));
