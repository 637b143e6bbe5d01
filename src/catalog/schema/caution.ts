import { z } from 'zod';
import { figure } from './fields/figure.js';
import { origin } from './fields/origin.js';
import { refs } from './fields/reference.js';
import { engineDuring, id, line, words } from './fields/word.js';
import { stage } from './stage.js';

/** Shown before the step it hangs on, not after. */
export const caution = z.strictObject({
  id,
  title: line,
  words,
  /** 1 minor, 2 injury or fire possible, 3 serious */
  severity: z.union([z.literal(1), z.literal(2), z.literal(3)]),
  /** where it is shown: any of these */
  when: z
    .strictObject({
      stages: z.array(stage).min(1).optional(),
      components: refs('components').min(1).optional(),
      checks: refs('checks').min(1).optional(),
      /** every check and every step of the run-up during which the engine does this */
      engine: z.array(engineDuring).min(1).optional(),
      agents: refs('agents').min(1).optional(),
      runUp: refs('runUp').min(1).optional(),
      faults: refs('faults').min(1).optional(),
      uses: refs('uses').min(1).optional(),
    })
    .refine((value) => Object.keys(value).length > 0, 'a caution hangs on something'),
  figures: z.array(figure).optional(),
  origin,
});
