import {
  type Kind,
  kinds,
  parse,
  parseThread,
  type Quantity,
  type ThreadName,
  to,
} from '../quantity/index.js';
import type { Answer } from './answer.js';
import { WorksheetError } from './error.js';
import type { Field } from './field.js';
import type { Group } from './group.js';
import { readCount, readNumberList, readPlainNumber, readQuantityList } from './read-list.js';
import { type Point, readPoints } from './read-points.js';
import type { Worksheet as NewWorksheet } from './worksheet.js';

/**
 * The way before typed worksheets, until the last room has left it. To leave it: import the new names; write each
 * sheet as `worksheet({ …, group, fields: { id: ask.… } , compute: ({ id }) => … })` as the docstring there says; give
 * `names` in place of `refusing({ … }, …)`; let the room's error be a Refusal (`boundsOf` makes its usual bounds); take
 * `adopt` out of the room's `worksheets.ts`, and list the sheets there in the order in which a group shall show them.
 */
export interface OldWorksheet extends Omit<NewWorksheet, 'compute' | 'fields' | 'group' | 'names'> {
  readonly fields: readonly Field[];
  readonly compute: (given: OldGiven) => readonly Answer[];
}

export const oldAsk = (kind: Kind, id: string, label: string, help: string, hint: string): Field => ({
  ...{ id, label, help, kind, hint },
});

export const oldOptional = (field: Field): Field => ({ ...field, required: false });

export const oldStanding = (field: Field, standard: string): Field => ({ ...field, standard });

export const oldChoice = (
  id: string,
  label: string,
  help: string,
  choices: readonly (readonly [id: string, label: string])[],
  standard?: string,
): Field => ({
  ...{ id, label, help, kind: 'choice' as const },
  choices: choices.map(([each, words]) => ({ id: each, label: words })),
  ...(standard !== undefined && { standard }),
});

export interface OldGiven {
  has(id: string): boolean;
  quantity(id: string): Quantity;
  si(id: string): number;
  in(id: string, unit: string): number;
  thread(id: string): ThreadName;
  choice(id: string): string;
  number(id: string): number;
  text(id: string): string;
  points(id: string): readonly Point[];
  list(id: string): readonly number[];
}

function givenOf(values: Readonly<Record<string, unknown>>): OldGiven {
  const value = <T>(id: string): T => values[id] as T;
  return {
    has: (id) => values[id] !== undefined,
    quantity: value,
    si: (id) => value<Quantity>(id).si,
    in: (id, unit) => to(value<Quantity>(id), unit),
    thread: value,
    choice: value,
    number: value,
    text: value,
    points: value,
    list: value,
  };
}

function readerOf({ kind, of = 'number', choices = [] }: Field): (text: string) => unknown {
  if ((kinds as readonly string[]).includes(kind)) return (text) => parse(text, kind as Kind);
  if (kind === 'thread') return parseThread;
  if (kind === 'number') return readPlainNumber;
  if (kind === 'count') return readCount;
  if (kind === 'points') return readPoints;
  if (kind === 'list')
    return of === 'number' ? readNumberList : (text) => readQuantityList(text, of).map(({ si }) => si);
  if (kind === 'text') return (text) => text;
  return (text) => {
    const said = text.toLowerCase();
    const found = choices.find(({ id, label }) => id.toLowerCase() === said || label.toLowerCase() === said);
    if (found) return found.id;
    throw new WorksheetError(`"${text}" is not one of ${choices.map(({ id }) => id).join(', ')}`);
  };
}

type Compute = (given: OldGiven) => readonly Answer[];

export function refusingAs<E extends Error & { readonly field?: string }>(
  isRefusal: (error: unknown) => error is E,
): (fieldOf: Readonly<Record<string, string>>, compute: Compute) => Compute {
  return (fieldOf, compute) => (given) => {
    try {
      return compute(given);
    } catch (error) {
      if (!isRefusal(error)) throw error;
      const refusal = new WorksheetError(error.message, fieldOf[error.field ?? ''] ?? error.field);
      refusal.cause = error;
      throw refusal;
    }
  };
}

const oldGroups: readonly { readonly title: Group; readonly worksheets: readonly string[] }[] = [
  {
    title: 'Is it worn?',
    worksheets: [
      'bore-map',
      'bore-oversize',
      'bore-growth-from-gaps',
      'ring-end-gap',
      'piston-clearance',
      'crankpin-clearance',
      'journal-wear',
      'roundness',
      'guide-clearance',
      'guide-wobble',
      'flatness',
      'flatness-straightedge',
      'flatness-survey',
    ],
  },
  {
    title: 'Setting clearances',
    worksheets: [
      'valve-clearance-side-valve',
      'valve-clearance-recheck',
      'valve-clearance-overhead',
      'end-play-gasket',
      'running-clearance',
      'coil-gap',
    ],
  },
  {
    title: 'Can I trust this reading?',
    worksheets: [
      'decide-limit',
      'settle-reading',
      'pooled-readings',
      'uncertainty-budget',
      'thermal-length',
      'convert',
    ],
  },
  {
    title: 'How tight?',
    worksheets: [
      'torque-units',
      'torque-for-bolt',
      'torque-from-clamp',
      'clamp-from-torque',
      'torque-long-form',
      'torque-plausible',
      'lubricant-correction',
      'into-aluminum',
      'bolt-strength',
      'plug-torque',
      'wrench-adapter',
      'wrench-fit',
    ],
  },
  { title: 'In which order?', worksheets: ['tightening-order', 'tightening-passes', 'loosening-order'] },
  {
    title: 'Threads',
    worksheets: ['thread-name', 'name-thread', 'thread-data', 'tap-drill', 'thread-repair'],
  },
  {
    title: 'Compression and leaks',
    worksheets: [
      'expected-compression',
      'leak-from-compression',
      'compression-at-altitude',
      'leak-down',
      'leak-down-testers',
      'compression-ratio',
      'engine-displacement',
      'piston-position',
    ],
  },
  { title: 'Firing and power', worksheets: ['expected-power', 'firing-load', 'ratio-change'] },
  {
    title: 'Speed and spark',
    worksheets: ['governor-droop', 'generator-speed', 'tip-speed', 'pulley-speed', 'spark-shift'],
  },
  {
    title: 'Fuel and oil',
    worksheets: [
      'fuel-age',
      'water-in-fuel',
      'two-stroke-mix',
      'ethanol-mixture',
      'oil-for-temperature',
      'oil-drag',
      'oil-viscosity',
      'oil-grade',
    ],
  },
  {
    title: 'Air and weather',
    worksheets: ['jet-for-altitude', 'mixture-today', 'power-correction', 'standard-air', 'air-density'],
  },
];

/** Old definitions as new ones. */
export const adopt = (sheets: readonly OldWorksheet[]): readonly NewWorksheet[] =>
  sheets.map(({ compute, fields, ...told }) => ({
    ...told,
    group: oldGroups.find(({ worksheets }) => worksheets.includes(told.id))!.title,
    names: {},
    fields: fields.map((field) => ({ ...field, read: readerOf(field) })),
    compute: (values) => compute(givenOf(values)),
  }));
