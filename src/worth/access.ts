import type { Architecture, Catalog, Component, Facts, Fault } from '../catalog/index.js';
import { withWhatStandsBefore } from '../diagnose/index.js';

/**
 * What has to come off for a repair: the fault's own places and all that stands before them, each once. A place that
 * is needed only on some machines counts: better one piece too many than one forgotten.
 */
export function componentsToReach(
  catalog: Catalog,
  architecture: Architecture,
  facts: Facts,
  { offFirst }: Fault,
): readonly Component[] {
  const places = offFirst.filter(({ on }) => !on || on.includes(architecture));
  return withWhatStandsBefore(
    catalog,
    { ...facts, architecture },
    places.flatMap(({ component }) => component ?? []),
  );
}
