import type { z } from 'zod';
import { caution } from './caution.js';
import { check, checkKin, evidence } from './check.js';
import { agent, agentOnMaterial, cleaning, material, neverCombine } from './cleaning.js';
import { complaint, firstLook, splitter } from './complaint.js';
import { assembly, component, lookAlike, port, torqueClass, variant } from './component.js';
import { consumable } from './consumable.js';
import { fault, faultLookAlike, intakeShare, prior, strengthChance } from './fault.js';
import type { Target } from './fields/reference.js';
import { engineFunction } from './function.js';
import { hazard } from './hazard.js';
import { complaintChance, judgement, oddsShift } from './judgement.js';
import { discipline, measurement, measurementGroup } from './measurement.js';
import { memory } from './memory.js';
import { ownWords, sameWords } from './own-word.js';
import { platePlace, plateScheme } from './plate.js';
import { price, scrapChance, sharedRepair, workFactor } from './price.js';
import { role } from './role.js';
import { acceptance, layUp, nextDue, runUpStep } from './run-up.js';
import { spec, specWord } from './spec.js';
import { gate, jobTotal, stagePart } from './stage.js';
import { machineUse } from './use.js';

/** Every list a pack may hold, with the schema of its entries. A list's name is the same in the pack and the catalog. */
export const sections = {
  uses: machineUse,
  intakeShares: intakeShare,
  strengths: strengthChance,
  faults: fault,
  priors: prior,
  faultLookAlikes: faultLookAlike,
  functions: engineFunction,
  complaints: complaint,
  firstLooks: firstLook,
  splitters: splitter,
  checks: check,
  checkKin,
  evidence,
  variants: variant,
  ports: port,
  torqueClasses: torqueClass,
  lookAlikes: lookAlike,
  memories: memory,
  components: component,
  assemblies: assembly,
  measurementGroups: measurementGroup,
  measurements: measurement,
  disciplines: discipline,
  materials: material,
  agents: agent,
  agentsOnMaterials: agentOnMaterial,
  cleanings: cleaning,
  neverCombine,
  consumables: consumable,
  cautions: caution,
  hazards: hazard,
  stageParts: stagePart,
  jobTotals: jobTotal,
  gates: gate,
  runUp: runUpStep,
  acceptance,
  nextDue,
  layUps: layUp,
  plateSchemes: plateScheme,
  platePlaces: platePlace,
  specWords: specWord,
  specs: spec,
  prices: price,
  scrapChances: scrapChance,
  workFactors: workFactor,
  sharedRepairs: sharedRepair,
  oddsShifts: oddsShift,
  complaintChances: complaintChance,
  judgements: judgement,
  sameWords,
  ownWords,
  roles: role,
} as const satisfies Record<string, z.ZodType<{ id: string }>> & Record<Target, z.ZodType>;

export type SectionName = keyof typeof sections;
export const sectionNames = Object.keys(sections) as SectionName[];
export type Entry<S extends SectionName> = z.infer<(typeof sections)[S]>;

/** Components and assemblies are told apart by architecture and id, everything else by id. */
export function keyOf(
  section: string,
  entry: { readonly id?: unknown; readonly architecture?: unknown },
): string {
  const named = section === 'components' || section === 'assemblies';
  return named ? `${entry.architecture}/${entry.id}` : `${entry.id}`;
}
