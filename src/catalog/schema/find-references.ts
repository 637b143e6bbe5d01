import type { z } from 'zod';
import { type Reference, references } from './fields/reference.js';

type Path = readonly (string | number)[];
type Fields = Readonly<Record<string, unknown>>;

/** An id in an entry that points at something. */
export interface FoundReference {
  readonly path: Path;
  readonly value: string;
  readonly points: Reference;
  /** the map that the id, or the list of it, stands in */
  readonly holder: Fields;
}

type Visit = (value: unknown, path: Path, holder: Fields, found: FoundReference[]) => void;

/** Every reference that an entry holds, as its schema declares them. */
export function referencesIn(schema: z.core.$ZodType, entry: Fields): FoundReference[] {
  const found: FoundReference[] = [];
  visitOf(schema)?.(entry, [], entry, found);
  return found;
}

const visits = new WeakMap<z.core.$ZodType, { readonly visit: Visit | undefined }>();

/** How to reach the references below a schema, made once; undefined where there are none. */
function visitOf(schema: z.core.$ZodType): Visit | undefined {
  const known = visits.get(schema);
  if (known) return known.visit;
  const visit = made(schema as z.core.$ZodTypes);
  visits.set(schema, { visit });
  return visit;
}

function made(schema: z.core.$ZodTypes): Visit | undefined {
  const points = references.get(schema);
  if (points)
    return (value, path, holder, found) => {
      if (typeof value === 'string') found.push({ path, value, points, holder });
    };
  const { def } = schema._zod;
  switch (def.type) {
    case 'optional':
      return visitOf(def.innerType);
    case 'pipe':
      return visitOf(def.out);
    case 'array':
      return inList(visitOf(def.element));
    case 'object':
      return inMap(Object.entries(def.shape).map(([field, each]) => [field, visitOf(each)] as const));
    case 'string':
    case 'number':
    case 'boolean':
    case 'literal':
    case 'enum':
    case 'transform':
      return undefined;
    case 'union':
      return noneIn(def.options, def.type);
    case 'tuple':
      return noneIn(def.items, def.type);
    case 'record':
      return noneIn([def.keyType, def.valueType], def.type);
    default:
      throw new TypeError(`no way is known to look for references in a ${def.type}`);
  }
}

const inList = (item: Visit | undefined): Visit | undefined =>
  item &&
  ((list, path, holder, found) => {
    if (Array.isArray(list))
      for (const [index, value] of list.entries()) item(value, [...path, index], holder, found);
  });

function inMap(all: readonly (readonly [string, Visit | undefined])[]): Visit | undefined {
  const fields = all.filter((each): each is [string, Visit] => each[1] !== undefined);
  if (fields.length === 0) return undefined;
  return (map, path, _, found) => {
    if (typeof map !== 'object' || map === null) return;
    for (const [field, visit] of fields) {
      if (field in map) visit((map as Fields)[field], [...path, field], map as Fields, found);
    }
  };
}

/** Where references have never been needed; one put there later is a mistake at once, not a reference that nobody checks. */
function noneIn(parts: readonly z.core.$ZodType[], type: string): undefined {
  if (parts.some(visitOf)) throw new TypeError(`no way is known to look for references in a ${type}`);
}
