import { z } from 'zod';
import { origin } from './fields/origin.js';
import { ref, refs } from './fields/reference.js';
import { id, line, minutes, words } from './fields/word.js';

export const material = z.strictObject({ id, name: line });

export const agent = z.strictObject({
  id,
  name: line,
  hazards: z.array(line),
  cautions: refs('cautions').optional(),
  /** why it is never used to clean anything */
  never: line.optional(),
  /** its waste goes to this stream; streams are not mixed */
  waste: z.enum(['oil', 'fuel', 'dip', 'chelator', 'water', 'solid', 'none']),
  /** soaks there, on the bench plan; with the other soaks when left out */
  bath: z.literal('ultrasonic').optional(),
  note: words.optional(),
});

/** What an agent does to a material. A pair that is not listed has not been judged. */
export const agentOnMaterial = z.strictObject({
  id,
  agent: ref('agents'),
  material: ref('materials'),
  verdict: z.enum(['good', 'with care', 'never']),
  why: line,
  origin,
});

/** How one kind of part is cleaned. */
export const cleaning = z.strictObject({
  id,
  part: line,
  materials: refs('materials'),
  agents: refs('agents'),
  use: line,
  avoid: line,
  avoidAgents: refs('agents').optional(),
  soak: z.strictObject({ from: minutes, to: minutes }).optional(),
  dry: z.strictObject({ from: minutes, to: minutes }).optional(),
  /** what follows it */
  after: line,
  hazard: line,
  components: refs('components').optional(),
  origin,
});

/** Two things that must not meet. Each side is agents, materials or a condition in words. */
const side = z
  .strictObject({
    agents: refs('agents').optional(),
    materials: refs('materials').optional(),
    words: line.optional(),
  })
  .refine((value) => Object.keys(value).length > 0, 'name agents, materials, or say it in words');
export const neverCombine = z.strictObject({ id, a: side, b: side, gives: line, origin });
