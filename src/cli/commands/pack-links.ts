import { byId, type Catalog } from '../../catalog/index.js';
import { type LinkedPair, linkedPairs } from '../../diagnose/index.js';
import { counted } from '../../phrase/index.js';
import { Failed } from '../command.js';
import { suggestion } from '../nearest.js';

/** What shows a fault, or what a check speaks of: by itself, through which function, and where it is silent. */
export function linkLines(catalog: Catalog, id: string): string[] {
  const pairs = linkedPairs(catalog);
  if (id === '') return catalog.faults.map((f) => `${f.id}  ${inBrief(catalog, pairs, f.id)}`);
  const fault = byId(catalog.faults).get(id);
  if (fault) return [fault.name, ...linesOf(catalog, of(pairs, 'fault', id), 'check', catalog.checks.length)];
  const check = byId(catalog.checks).get(id);
  if (check)
    return [check.title, ...linesOf(catalog, of(pairs, 'check', id), 'fault', catalog.faults.length)];
  const ids = [...catalog.faults, ...catalog.checks].map((entry) => entry.id);
  throw new Failed(`“${id}” is neither a fault nor a check of the catalog.${suggestion(id, ids)}`);
}

type Side = 'fault' | 'check';

const of = (pairs: readonly LinkedPair[], side: Side, id: string): LinkedPair[] =>
  pairs.filter((p) => p[side] === id);

function inBrief(catalog: Catalog, pairs: readonly LinkedPair[], fault: string): string {
  const { alone, through, silent } = sorted(of(pairs, 'fault', fault), 'check', catalog.checks.length);
  return `${counted(alone.length, 'check shows it', 'checks show it')}, ${new Set(through.map((p) => p.check)).size} more through a function, ${silent} silent`;
}

function sorted(pairs: readonly LinkedPair[], other: Side, all: number) {
  const alone = pairs.filter((p) => p.through === undefined);
  const linked = new Set(alone.map((p) => p[other]));
  const through = pairs.filter((p) => p.through !== undefined && !linked.has(p[other]));
  return { alone, through, silent: all - linked.size - new Set(through.map((p) => p[other])).size };
}

function linesOf(catalog: Catalog, pairs: readonly LinkedPair[], other: Side, all: number): string[] {
  const { alone, through, silent } = sorted(pairs, other, all);
  const words = (p: LinkedPair): string => `${nameOf(catalog, p[other], other)}${outcomesOf(catalog, p)}`;
  const functions = [...new Set(through.map((p) => p.through!))];
  const kind = other === 'check' ? 'check' : 'fault';
  return [
    ...(alone.length > 0 ? ['  by itself', ...alone.map((p) => `    ${words(p)}`)] : []),
    ...functions.flatMap((f) => [
      `  through ${byId(catalog.functions).get(f)!.name}`,
      ...through.filter((p) => p.through === f).map((p) => `    ${words(p)}`),
    ]),
    `  silent: ${counted(silent, `other ${kind}`)}`,
  ];
}

const nameOf = (catalog: Catalog, id: string, side: Side): string =>
  side === 'check' ? byId(catalog.checks).get(id)!.title : byId(catalog.faults).get(id)!.name;

/** What the pair's own link names; a repeat of another check, and what a function does, name nothing of their own. */
function outcomesOf(catalog: Catalog, { fault, check, through }: LinkedPair): string {
  const { outcomes, links } = byId(catalog.checks).get(check)!;
  const own = new Set(
    through === undefined ? links.filter((l) => l.fault === fault).flatMap((l) => l.outcomes) : [],
  );
  const words = outcomes.filter((o) => own.has(o.id)).map((o) => o.words);
  return words.length > 0 ? `: ${words.join(', ')}` : '';
}
