import { sections } from '../schema/sections.js';
import type { CatalogProblem } from './error.js';
import { problem, type RawEntry, type ReadPack } from './pack.js';

type Origins = ReadonlyMap<string, { readonly from: string; readonly detail: string }>;

/** The origins of all packs by id. */
export function collectOrigins(packs: readonly ReadPack[], problems: CatalogProblem[]): Origins {
  const known = new Map<string, { from: string; detail: string }>();
  for (const pack of packs) {
    for (const [index, { id, from, detail }] of pack.origins.entries()) {
      if (known.has(id))
        problems.push(problem(pack.file, pack.lineOf, ['origins', index], `origin "${id}" is there already`));
      known.set(id, { from, detail });
    }
  }
  return known;
}

/**
 * An entry with every named origin in full. A number with a unit that names no origin has the entry's; an entry
 * that names none has its pack's. Names that no pack knows are left, for the schema to refuse.
 */
export function withOrigins(entry: RawEntry, origins: Origins): RawEntry {
  const own = entry.value.origin ?? entry.pack.defaults.origin;
  const resolved = named(own, origins);
  const value = spread(entry.value, origins, resolved) as Record<string, unknown>;
  const speaks = 'origin' in sections[entry.section].shape && own !== undefined;
  return { ...entry, value: speaks ? { ...value, origin: resolved } : value };
}

function spread(value: unknown, origins: Origins, inherited: unknown): unknown {
  if (Array.isArray(value)) return value.map((item) => spread(item, origins, inherited));
  if (typeof value !== 'object' || value === null) return value;
  const fields = Object.entries(value).map(([name, item]) => [
    name,
    name === 'origin' ? named(item, origins) : spread(item, origins, inherited),
  ]);
  const copy = Object.fromEntries(fields);
  return typeof copy.unit === 'string' && !('origin' in copy) && hasSpan(copy)
    ? { ...copy, origin: inherited }
    : copy;
}

const hasSpan = (value: object) => 'from' in value || 'to' in value || 'low' in value;

function named(value: unknown, origins: Origins): unknown {
  return typeof value === 'string' ? (origins.get(value) ?? value) : value;
}
