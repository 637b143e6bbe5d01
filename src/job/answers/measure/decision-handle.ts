export const sideValve = 'valve-clearance-side-valve';
export const overheadValve = 'valve-clearance-overhead-valve';

/** What a decision names: the measure, and for valves which one. */
export function decisionHandle(measure: string, place?: string): string {
  const valve = [sideValve, overheadValve].includes(measure) ? valveOf(place) : undefined;
  return valve ? `${measure}.${valve}` : measure;
}

export function valveOf(place = ''): 'intake' | 'exhaust' | undefined {
  if (/\bex/i.test(place)) return 'exhaust';
  return /\bin/i.test(place) ? 'intake' : undefined;
}
