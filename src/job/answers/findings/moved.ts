import { byId, type Catalog } from '../../../catalog/index.js';
import { byFault } from '../../../infer/index.js';
import { withinSentence } from '../../../phrase/index.js';
import type { RawEntry } from '../../entry.js';
import { fold } from '../../fold.js';
import type { Job, LogLine } from '../../job.js';
import { lineWords } from '../../line-words.js';
import type { Answers } from '../answers.js';

/** A fault that the last line raised or lowered. */
export interface Moved {
  readonly id: string;
  readonly name: string;
  readonly from: number;
  readonly to: number;
  /** a few words: what the line has to do with it */
  readonly why: string;
}

/** What the last line that says something of the machine has changed. */
export interface LastMove {
  readonly entry: string;
  /** "Bowl sample: varnish" */
  readonly line: string;
  /** those that moved most first */
  readonly faults: readonly Moved[];
}

/** Less is not worth a word. */
const leastMove = 0.03;
const telling = new Set(['intake', 'observation', 'decision', 'step', 'strike']);

/**
 * What the last line changed, worked out by leaving it out: so a page opened later, or on another device, says the same.
 * Undefined when there is no such line, when nothing moved, or when the log contradicts itself with or without it.
 */
export function lastMove(answers: Answers): LastMove | undefined {
  const { job, catalog, machine } = answers;
  const last = job.log.findLast((l) => telling.has(l.entry.kind) && !l.struck);
  if (!last) return undefined;
  const [was, now] = [likely(answers.on(withoutLine(job, last.entry))), likely(answers)];
  if (!was || !now) return undefined;
  const moved = machine.faults
    .map(({ id, fault }) => ({ id, name: fault.name, from: was.get(id) ?? 0, to: now.get(id) ?? 0 }))
    .filter((m) => Math.abs(m.to - m.from) >= leastMove)
    .sort((a, b) => Math.abs(b.to - b.from) - Math.abs(a.to - a.from));
  if (moved.length === 0) return undefined;
  const says = saysOf(catalog, last);
  const faults = moved.map((m) => ({ ...m, why: says(m, moved) }));
  return { entry: last.entry.id, line: wordsOf(job, last), faults };
}

const withoutLine = (job: Job, { id }: RawEntry): Job =>
  fold(
    job.id,
    job.log.map((l) => l.entry).filter((e) => e.id !== id),
  );

function likely({ machine, inference }: Answers): ReadonlyMap<string, number> | undefined {
  if (!inference) return undefined;
  const posterior = byFault(inference);
  return new Map(machine.faults.map(({ id }) => [id, posterior[machine.now(id)] ?? 0]));
}

function wordsOf(job: Job, line: LogLine): string {
  const struck = line.known?.kind === 'strike' && line.known.body.entry;
  const meant = struck ? job.log.find((l) => l.entry.id === struck) : undefined;
  const { title, value } = lineWords(meant ?? line);
  return `${meant ? 'struck: ' : ''}${title}${value ? `: ${value}` : ''}`;
}

type Step = Omit<Moved, 'why'>;
type Says = (moved: Step, all: readonly Step[]) => string;

function saysOf(catalog: Catalog, { known }: LogLine): Says {
  if (known?.kind === 'observation') return sightSays(catalog, known.body);
  if (known?.kind === 'strike') return () => 'without that line';
  if (known?.kind === 'intake') return () => 'by what was told of the machine';
  if (known?.kind === 'decision' && known.body.about === 'fault') {
    const { which } = known.body;
    return (m, all) => (m.id === which ? 'as you decided' : beside(m, all));
  }
  return beside;
}

function sightSays(
  catalog: Catalog,
  seen: { check?: string | undefined; outcomes: readonly string[] },
): Says {
  const check = byId(catalog.checks).get(seen.check ?? '');
  if (!check) return beside;
  const chosen = new Set(check.outcomes.filter((o) => seen.outcomes.includes(o.words)).map((o) => o.id));
  const links = new Map(check.links.map((l) => [l.fault, false]));
  for (const l of check.links) if (l.outcomes.some((o) => chosen.has(o))) links.set(l.fault, true);
  const bypassed = new Set(check.differentialOf?.bypasses ?? []);
  return (m, all) => {
    const up = m.to > m.from;
    if (check.differentialOf)
      return bypassed.has(m.id) ? (up ? 'right again without it' : 'no better without it') : beside(m, all);
    if (!links.has(m.id)) return beside(m, all);
    if (up) return links.get(m.id) ? 'shows itself so' : beside(m, all);
    return 'would have shown otherwise';
  };
}

/** A fault that the line does not speak of itself moves with those that it does speak of. */
function beside(m: Step, all: readonly Step[]): string {
  const up = m.to > m.from;
  const other = all.find((o) => o.id !== m.id && o.to > o.from !== up);
  if (!other) return '';
  const name = withinSentence(other.name);
  return up ? `left over when ${name} falls` : `no longer needed: ${name} explains it`;
}
