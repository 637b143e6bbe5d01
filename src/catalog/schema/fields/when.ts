import { z } from 'zod';
import { refs } from './reference.js';

export const architectures = ['side-valve', 'overhead-valve', 'two-stroke'] as const;
export type Architecture = (typeof architectures)[number];
export const architecture = z.enum(architectures);

/** The facts of a machine that a piece of knowledge may depend on: one of each list must hold, and all that is named. */
export const when = z.strictObject({
  architecture: z.array(architecture).min(1).optional(),
  ignition: z
    .array(z.enum(['points', 'solid-state']))
    .min(1)
    .optional(),
  fuelSystem: z
    .array(z.enum(['float-bowl', 'diaphragm']))
    .min(1)
    .optional(),
  shaft: z
    .array(z.enum(['vertical', 'horizontal']))
    .min(1)
    .optional(),
  governor: z
    .array(z.enum(['air-vane', 'flyweight', 'none']))
    .min(1)
    .optional(),
  starter: z
    .array(z.enum(['rope', 'electric']))
    .min(1)
    .optional(),
  /** one of what it drives */
  use: refs('uses').min(1).optional(),
  storedMonthsAtLeast: z.number().min(0).optional(),
  struck: z.literal('yes').optional(),
  tipped: z.literal('yes').optional(),
  wrongFuel: z.literal('yes').optional(),
  /** variants that must hold */
  variants: refs('variants').min(1).optional(),
  /** variants that must not hold */
  notVariants: refs('variants').min(1).optional(),
  /** pieces of the engine, or of what it drives, that must all be fitted */
  pieces: refs('components').min(1).optional(),
  /** pieces of which one at least must be fitted */
  anyPiece: refs('components').min(1).optional(),
});
