import { byId, type Catalog } from '../catalog/index.js';

type Measures = Pick<Catalog, 'measurements'>;

/** How a valve whose clearance this measures is set right; undefined for everything else that is measured. */
export function valveWay({ measurements }: Measures, measure: string): 'stem' | 'adjuster' | undefined {
  const reads = byId(measurements).get(measure)?.reads;
  return reads === 'valve-stem' ? 'stem' : reads === 'valve-adjuster' ? 'adjuster' : undefined;
}

/** What a decision names: the measure, and for valves which one. */
export function decisionHandle(catalog: Measures, measure: string, place?: string): string {
  const valve = valveWay(catalog, measure) && valveOf(place);
  return valve ? `${measure}.${valve}` : measure;
}

export function valveOf(place = ''): 'intake' | 'exhaust' | undefined {
  if (/\bex/i.test(place)) return 'exhaust';
  return /\bin/i.test(place) ? 'intake' : undefined;
}
