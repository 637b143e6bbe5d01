import { z } from 'zod';
import { word } from './word.js';

/** The sections of which another entry may name one. */
export type Target =
  | 'agents'
  | 'cautions'
  | 'checks'
  | 'complaints'
  | 'components'
  | 'faults'
  | 'functions'
  | 'hazards'
  | 'lookAlikes'
  | 'materials'
  | 'measurementGroups'
  | 'measurements'
  | 'ports'
  | 'prices'
  | 'runUp'
  | 'specs'
  | 'torqueClasses'
  | 'uses'
  | 'variants';

/** What an id points at: an entry of a section, or an outcome of the check that a field beside it names (its own without one). */
export type Reference = { readonly to: Target } | { readonly outcomeOf: string | undefined };

/** Every id of a schema that points at something. What stands here is all that the loader knows of references. */
export const references = z.registry<Reference>();

/** The id of an entry of another section: the loader refuses a catalog in which it points at nothing. */
export const ref = (to: Target) => word().register(references, { to });

/** Ids of entries of another section. */
export const refs = (to: Target) => z.array(ref(to));

/** The id of an outcome of the check named by the field `check` beside it; of the check that says it where none is given. */
export const outcomeOf = (check?: string) => word().register(references, { outcomeOf: check });
