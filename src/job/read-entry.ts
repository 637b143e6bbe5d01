import { z } from 'zod';
import type { Catalog } from '../catalog/index.js';
import { parse, QuantityError, show } from '../quantity/index.js';
import {
  type Body,
  bodies,
  type Entry,
  type EntryKind,
  type RawEntry,
  shopLog,
  type Written,
  writtenSchema,
} from './entry.js';
import { latestPlace } from './order.js';
import type { RuleContext } from './rules/rule.js';
import { brokenRule } from './rules/rules.js';
import { valveWay } from './valve.js';

/** An entry that cannot be taken into the log: which field, and why, in words. */
export class EntryError extends Error {
  constructor(
    message: string,
    readonly field?: string,
  ) {
    super(message);
    this.name = 'EntryError';
  }
}

/** The present version of every kind's body. A body written by an older version goes through `upgrades`. */
export const entryVersion = 1;

/** Numbered and gapless: upgrades[n] turns a body of version n into one of version n + 1. */
const upgrades: Readonly<Record<number, (kind: string, body: unknown) => unknown>> = {};

const envelope = z.object({
  // RFC 9562, section 4: digits are written in small letters and read in either case
  id: z.uuid('an entry id is a UUID').toLowerCase(),
  job: z.union([z.uuid('a job id is a UUID').toLowerCase(), z.literal(shopLog)]),
  at: z.iso.datetime({ offset: true, message: 'a time is ISO 8601 with its offset' }),
  rank: z
    .number('a rank is a whole number of milliseconds')
    .int('a rank is a whole number of milliseconds')
    .min(0)
    .max(latestPlace)
    .optional(),
  spoken: z.literal(true, 'a line is marked as spoken or not marked').optional(),
  by: z.string().min(1, 'says who wrote it').max(120),
  kind: z.string().min(1).max(40),
  v: z.number().int().min(1),
  body: z.unknown(),
});

export function isKnownKind(kind: string): kind is EntryKind {
  return Object.hasOwn(bodies, kind);
}

/**
 * Takes an entry that came from outside (a device, a file, a command) into the log's form.
 *
 * Checks the envelope, the body's schema, that every written number says what its parsed quantity says, and the rules of
 * its kind. A kind or version that this program does not know passes with its envelope checked only, so that a newer
 * device's line is kept and never dropped.
 *
 * @param context whoever knows the job that it is written to says so, and the line is held against this very engine too:
 * a clearance is read at a valve that it has. Left out, the line is judged by itself.
 * @throws EntryError naming the field and what is wrong with it
 */
export function readEntry(input: unknown, context?: RuleContext): RawEntry {
  const outer = envelope.safeParse(input);
  if (!outer.success) throw fromZod(outer.error);
  const raw = outer.data as RawEntry;
  requireNotItself(raw);
  if (!isKnownKind(raw.kind) || raw.v > entryVersion) return raw;
  return { ...raw, v: entryVersion, body: readBody(raw.kind, upgraded(raw), context) };
}

function requireNotItself({ id, kind, body }: RawEntry): void {
  if (kind !== 'strike' || typeof body !== 'object' || body === null) return;
  const { entry } = body as { entry?: unknown };
  if (typeof entry === 'string' && entry.toLowerCase() === id)
    throw new EntryError('body.entry: a line cannot strike itself', 'body.entry');
}

/** The same for a body alone, such as a form makes while it is typed. @throws EntryError */
export function readBody<K extends EntryKind>(kind: K, given: unknown, context?: RuleContext): Body<K> {
  const parsed = bodies[kind].safeParse(given, { reportInput: false });
  if (!parsed.success) throw fromZod(parsed.error, 'body');
  for (const [path, written] of writtenIn(parsed.data, 'body')) requireAgreement(written, path);
  const body = parsed.data as Body<K>;
  const broken = brokenRule(kind, body, context);
  if (broken) throw new EntryError(`body.${broken.field}: ${broken.words}`, `body.${broken.field}`);
  return body;
}

/** A line is understood once in its life, however often it is folded. */
const understood = new WeakMap<RawEntry, Entry | undefined>();

/**
 * The typed entry, or undefined when the kind or its version is not known here, or when its body breaks a rule that holds
 * of a line by itself: an older store may hold such a line. It is shown as it came and can be struck.
 */
export function understand(raw: RawEntry): Entry | undefined {
  if (!understood.has(raw)) understood.set(raw, understoodAnew(raw));
  return understood.get(raw);
}

/** Whether a line is held against the engine of its job: who must read a log to know that engine asks this first. */
export function asksTheEngine(raw: RawEntry, catalog: Catalog): boolean {
  const known = understand(raw);
  return known?.kind === 'measurement' && valveWay(catalog, known.body.measure) !== undefined;
}

function understoodAnew(raw: RawEntry): Entry | undefined {
  if (!isKnownKind(raw.kind) || raw.v > entryVersion) return undefined;
  try {
    return { ...raw, v: entryVersion, body: readBody(raw.kind, upgraded(raw)) } as Entry;
  } catch (error) {
    if (error instanceof EntryError) return undefined;
    throw error;
  }
}

function upgraded(raw: RawEntry): unknown {
  let body = raw.body;
  for (let v = raw.v; v < entryVersion; v++) {
    const step = upgrades[v];
    if (!step) throw new EntryError(`no way up from version ${v} of ${raw.kind}`, 'v');
    body = step(raw.kind, body);
  }
  return body;
}

function fromZod(error: z.ZodError, prefix?: string): EntryError {
  const issue = error.issues[0];
  const field = [prefix, ...(issue?.path ?? [])].filter((p) => p !== undefined).join('.');
  return new EntryError(`${field || 'entry'}: ${issue?.message ?? 'not an entry'}`, field || undefined);
}

function* writtenIn(value: unknown, path: string): Generator<[string, Written]> {
  if (value === null || typeof value !== 'object') return;
  if ('written' in value && 'si' in value) {
    const asWritten = writtenSchema.safeParse(value);
    if (asWritten.success) {
      yield [path, asWritten.data];
      return;
    }
  }
  for (const [key, inner] of Object.entries(value)) yield* writtenIn(inner, `${path}.${key}`);
}

/** The words and the number must be the same reading, or one of them was mistyped or converted in the head. */
function requireAgreement(written: Written, path: string): void {
  let read: ReturnType<typeof parse>;
  try {
    read = parse(written.written, written.kind, { unit: written.unit });
  } catch (error) {
    if (error instanceof QuantityError) throw new EntryError(`${path}: ${error.message}`, path);
    throw error;
  }
  if (read.unit !== written.unit)
    throw new EntryError(
      `${path}: “${written.written}” is in ${read.unit}, but the unit beside it is “${written.unit}”`,
      path,
    );
  const scale = Math.max(Math.abs(read.si), Math.abs(written.si), 1e-12);
  if (Math.abs(read.si - written.si) / scale > 1e-9) {
    throw new EntryError(
      `${path}: “${written.written}” is ${show(read)}, but the number beside it says otherwise`,
      path,
    );
  }
}

/** Turns what a person wrote into the form an entry keeps. @throws QuantityError */
export function written(text: string, kind: Written['kind'], assumeUnit?: string): Written {
  const q = parse(text, kind, assumeUnit ? { unit: assumeUnit } : {});
  return { written: text.trim(), kind: q.kind, si: q.si, unit: q.unit };
}
