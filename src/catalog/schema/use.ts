import { z } from 'zod';
import { origin } from './fields/origin.js';
import { id, line, words } from './fields/word.js';

/** What an engine drives. A pack that brings a new one brings its pieces with it; code names none. */
export const machineUse = z.strictObject({
  id,
  /** as it is asked for: "Log splitter" */
  name: line,
  /** the machine as a heading of its record; the name when left out */
  title: line.optional(),
  /** what its owner must know before pulling the rope */
  advice: z.array(z.strictObject({ lead: line, words })).optional(),
  origin,
});
