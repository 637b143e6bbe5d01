import { z } from 'zod';
import { kinds } from '../../quantity/index.js';
import { figure } from './fields/figure.js';
import { origin } from './fields/origin.js';
import { ref, refs } from './fields/reference.js';
import { when } from './fields/when.js';
import { id, line, words } from './fields/word.js';

export const measurement = z.strictObject({
  id,
  name: line,
  /** left out where the answer is not a number */
  kind: z.enum(kinds).optional(),
  when: when.optional(),
  /** typical of the class, an example of size; the right number is in the engine's own service data */
  typicalNew: z.array(figure),
  typicalReject: z.array(figure),
  newWords: line.optional(),
  rejectWords: line.optional(),
  instruments: z.array(
    z.strictObject({
      name: line,
      resolution: figure.optional(),
      /** expanded, k about 2, practised hands; `to` is the half width */
      uncertainty: figure.optional(),
      uncertaintyPercent: z.number().gt(0).optional(),
    }),
  ),
  /** how many places and directions: bore heights × directions */
  places: z.array(line).optional(),
  directions: z.array(line).optional(),
  decision: words,
  /** what a band of readings means */
  bands: z.array(figure).optional(),
  components: refs('components').optional(),
  spec: ref('specs').optional(),
  rejectSpec: ref('specs').optional(),
  note: words.optional(),
  origin,
});

/** A habit of measuring, shown beside the sheet. */
export const discipline = z.strictObject({ id, words, origin });
