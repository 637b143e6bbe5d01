import type { Answers, From, Job, Shop } from '../../job/index.js';
import type { UnitSystem } from '../../quantity/index.js';
import type { Detail } from './section.js';

/** What every section is written from. */
export interface Sheet {
  readonly answers: Answers;
  readonly job: Job;
  readonly shop: Shop;
  readonly system: UnitSystem;
  readonly printedAt: string;
  readonly pictureLimit: number;
  readonly detail: Detail;
  /** what the catalog calls the healthy outcome of a check */
  readonly healthy: (check: string) => string | undefined;
  /** whether nothing is handed over before this run-up item is in order */
  readonly barsHandOver: (runUpItem: string) => boolean;
}

/** The system the shop's own setting names; inch when it says nothing. */
export function shopSystem(shop: Shop): UnitSystem {
  return shop.settings.units === 'metric' ? 'metric' : 'inch';
}

export function instrumentOf(sheet: Sheet, tool: string | undefined): From<'instrument'> | undefined {
  return sheet.shop.instruments.find((instrument) => instrument.tool === tool);
}

export function wrenchOf(sheet: Sheet, tool: string | undefined): From<'wrench'> | undefined {
  return sheet.shop.wrenches.find((wrench) => wrench.tool === tool);
}

/** A later decision on the same thing takes the place of an earlier one: a part put back for now, then renewed. */
export function standingDecisions(job: Job): From<'decision'>[] {
  const latest = new Map<string, From<'decision'>>();
  for (const decision of job.decisions) {
    const key =
      decision.about === 'machine' ? 'machine' : `${decision.about} ${decision.which ?? decision.title}`;
    latest.delete(key);
    latest.set(key, decision);
  }
  return [...latest.values()];
}

/** Wanted or ordered, and not here. */
export function awaitedParts(job: Job): From<'part'>[] {
  return [...job.parts.values()].filter((part) => ['wanted', 'ordered'].includes(part.state));
}
