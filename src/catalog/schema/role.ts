import { z } from 'zod';
import { ref } from './fields/reference.js';

/** What the program itself must know among the entries of the packs, and in which section each stands. */
const roles = {
  /** the reading of a bore at heights and directions; `nominalSpec` is its standard size, `rejectSpec` where it ends */
  bore: 'measurements',
  'bore-taper': 'measurements',
  'bore-out-of-round': 'measurements',
  'piston-clearance': 'measurements',
  /** on the gauge, at pull speed */
  compression: 'measurements',
  /** the check whose outcomes a gauge reading speaks for */
  'compression-check': 'checks',
  /** lifts a valve at pull speed */
  'compression-release': 'variants',
  stroke: 'specs',
  'compression-ratio': 'specs',
  'top-speed': 'specs',
  /** its soak loosens a joint */
  penetrant: 'agents',
} as const;

export type RoleId = keyof typeof roles;

const fields = {
  measurements: 'measurement',
  checks: 'check',
  variants: 'variant',
  specs: 'spec',
  agents: 'agent',
} as const;

/** Which entry of the packs plays a part that the program has to know by name. */
export const role = z
  .strictObject({
    id: z.enum(Object.keys(roles) as [RoleId, ...RoleId[]]),
    measurement: ref('measurements').optional(),
    check: ref('checks').optional(),
    variant: ref('variants').optional(),
    spec: ref('specs').optional(),
    agent: ref('agents').optional(),
  })
  .superRefine(({ id, ...named }, context) => {
    const wanted = fields[roles[id]];
    const given = Object.keys(named).filter((field) => named[field as keyof typeof named] !== undefined);
    if (given.length !== 1 || given[0] !== wanted)
      context.addIssue({
        code: 'custom',
        message: `"${id}" is played by ${wanted === 'agent' ? 'an' : 'a'} ${wanted} and by nothing else`,
      });
  });
