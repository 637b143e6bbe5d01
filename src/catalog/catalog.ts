import type { z } from 'zod';
import type { figure } from './schema/fields/figure.js';
import type { when } from './schema/fields/when.js';
import type { Entry, SectionName } from './schema/sections.js';

type DeepReadonly<T> = T extends readonly (infer Item)[]
  ? readonly DeepReadonly<Item>[]
  : T extends object
    ? { readonly [Key in keyof T]: DeepReadonly<T[Key]> }
    : T;

/** All knowledge of all packs, as plain data: one list a section, each entry valid, each reference pointing at something. */
export type Catalog = { readonly [S in SectionName]: readonly DeepReadonly<Entry<S>>[] };

export type When = DeepReadonly<z.infer<typeof when>>;
export type Figure = DeepReadonly<z.infer<typeof figure>>;
export type MachineUse = Catalog['uses'][number];
export type Fault = Catalog['faults'][number];
export type Prior = Catalog['priors'][number];
export type EngineFunction = Catalog['functions'][number];
export type Complaint = Catalog['complaints'][number];
export type FirstLook = Catalog['firstLooks'][number];
export type Check = Catalog['checks'][number];
export type Link = Check['links'][number];
export type Evidence = Catalog['evidence'][number];
export type Component = Catalog['components'][number];
export type Assembly = Catalog['assemblies'][number];
export type Variant = Catalog['variants'][number];
export type Port = Catalog['ports'][number];
export type LookAlike = Catalog['lookAlikes'][number];
export type Memory = Catalog['memories'][number];
export type TorqueClass = Catalog['torqueClasses'][number];
export type Measurement = Catalog['measurements'][number];
export type Agent = Catalog['agents'][number];
export type Material = Catalog['materials'][number];
export type Cleaning = Catalog['cleanings'][number];
export type Consumable = Catalog['consumables'][number];
export type NeverCombine = Catalog['neverCombine'][number];
export type Hazard = Catalog['hazards'][number];
export type Caution = Catalog['cautions'][number];
export type StagePart = Catalog['stageParts'][number];
export type Gate = Catalog['gates'][number];
export type RunUpStep = Catalog['runUp'][number];
export type Acceptance = Catalog['acceptance'][number];
export type PlateScheme = Catalog['plateSchemes'][number];
export type Spec = Catalog['specs'][number];
export type OddsShift = Catalog['oddsShifts'][number];
export type Judgement = Catalog['judgements'][number];
export type Price = Catalog['prices'][number];
