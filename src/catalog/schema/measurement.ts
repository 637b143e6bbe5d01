import { z } from 'zod';
import { kinds } from '../../quantity/index.js';
import { figure } from './fields/figure.js';
import { origin } from './fields/origin.js';
import { ref, refs } from './fields/reference.js';
import { when } from './fields/when.js';
import { id, line, words } from './fields/word.js';

/** What a mechanic is working on when a reading is taken: the Measure sheet lists measurements under these, in this order. */
export const measurementGroup = z.strictObject({ id, title: line });

export const measurement = z.strictObject({
  id,
  name: line,
  /** on the Measure sheet, where the name says how as well as what */
  shortName: line.optional(),
  /** after all others on the Measure sheet when left out */
  group: ref('measurementGroups').optional(),
  /**
   * read in a way of its own. face: point by point. valve-stem, valve-adjuster: one reading a valve, set right by
   * shortening the stem or by turning the adjuster.
   */
  reads: z.enum(['face', 'valve-stem', 'valve-adjuster']).optional(),
  /** what is read, as a heading: "Carburetor flange" */
  surface: line.optional(),
  /** what comes off here is lost to the combustion chamber */
  closesChamber: z.literal(true).optional(),
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
  /** the line of the maker's sheet that says what it should be */
  spec: ref('specs').optional(),
  /** the same for the exhaust valve, where it has a line of its own */
  exhaustSpec: ref('specs').optional(),
  /** the line that says from which size it wears: it bounds nothing */
  nominalSpec: ref('specs').optional(),
  /** the line that says where it is to be rejected */
  rejectSpec: ref('specs').optional(),
  /** the worksheet that goes on from the reading, the field it fills, and what it is asked */
  goesOn: z.strictObject({ worksheet: line, field: line, words: line }).optional(),
  note: words.optional(),
  origin,
});

/** A habit of measuring, shown beside the sheet. */
export const discipline = z.strictObject({ id, words, origin });
