import { z } from 'zod';
import { refs } from './reference.js';

/**
 * What an act needs of the engine as it stands, in one small vocabulary for checks, run-up steps and whatever is done to an
 * engine. `cannotDo` (diagnose) reads it.
 */
export const needs = z.strictObject({
  /** pieces that must be on; a piece that is not on this engine is not asked for */
  inPlace: refs('components').min(1).optional(),
  /** the engine together and with all that it needs to fire */
  firing: z.literal(true).optional(),
  /** fuel in the tank, of whatever age */
  fuel: z.literal(true).optional(),
  /** new ones of these were put in */
  renewed: refs('components').min(1).optional(),
  /** one of these was off at this job */
  opened: refs('components').min(1).optional(),
  /** an engine that does not run: on one that does it finds nothing out */
  dead: z.literal(true).optional(),
});

/** What an outcome says of the pieces and of what is in the engine. */
export const says = z.strictObject({
  fuel: z.enum(['fresh', 'foul', 'none']).optional(),
  oil: z.enum(['good', 'foul', 'low', 'none']).optional(),
  /** pieces that belong there and are not */
  missing: refs('components').min(1).optional(),
  /** pieces that this kind of engine may have and this one has not */
  without: refs('components').min(1).optional(),
});
