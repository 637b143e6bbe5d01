import { byId } from '../../../catalog/index.js';
import type { Findings, Machine } from '../../../diagnose/index.js';
import type { From } from '../../job.js';
import type { Answers } from '../answers.js';
import { seenWords } from './typed-value.js';

/** One line of the evidence: what was seen or decided, and how heavily it weighs on which faults. */
export interface EvidenceLine {
  readonly entry: string;
  readonly at: string;
  /** the catalog's check, when it was one */
  readonly check?: string;
  readonly title: string;
  readonly value: string;
  readonly detail?: string;
  readonly decided: boolean;
  readonly doubtful: boolean;
  /** the heaviest first: the odds are so many times what they would be without this line; below 1 it speaks against */
  readonly says: readonly { readonly id: string; readonly name: string; readonly times: number }[];
  /** why it moves nothing */
  readonly silent?: string;
  /** why it says less on this engine than it would on another */
  readonly usual?: string;
  /** faults repaired since: the machine is another one now */
  readonly repairedSince: readonly string[];
}

const silence: Readonly<Record<string, string>> = {
  'read again': 'read again since; the later reading counts',
  'not in the catalog': 'not one of the catalog’s checks: kept, but it moves nothing',
  'outcome not in the catalog': 'not one of the catalog’s outcomes: kept, but it moves nothing',
  'cannot tell': 'it told nothing',
  'could not be done': 'could not be done then',
  'waits for its first reading': 'counts once the check that it repeats is logged',
};

const numberWithoutMeaning = 'kept as read; what it means on this engine is not known yet';

/** Everything that was seen, and every fault decided on, the latest first. */
export function evidenceLog(answers: Answers): EvidenceLine[] {
  const { job, catalog, machine, faultsSaid, findings: said } = answers;
  if (said.state === 'cannot') return [];
  const repairs = faultsSaid.flatMap((f) => (f.repairedAt === undefined ? [] : [f]));
  const names = byId(catalog.faults);
  const repairedSince = (at: string): string[] =>
    repairs
      .filter((r) => Date.parse(r.repairedAt!) > Date.parse(at))
      .map((r) => names.get(r.fault)?.name ?? r.fault);
  const seen = answers.sights.map((o) => {
    const usual = usualHere(answers, o);
    return {
      ...sight(o, machine, said.findings, repairedSince(o.at)),
      ...(usual !== undefined && { usual }),
    };
  });
  const decided = job.decisions.filter((d) => d.about === 'fault').map(decision);
  return [...seen, ...decided].sort(
    (a, b) => Date.parse(b.at) - Date.parse(a.at) || (a.entry < b.entry ? 1 : -1),
  );
}

function sight(
  o: From<'observation'>,
  machine: Machine,
  said: Findings,
  repairedSince: readonly string[],
): EvidenceLine {
  const { entry, at, title, check, doubtful = false } = o;
  const detail = [o.words, o.conditions].filter(Boolean).join(' · ');
  const reading = machine.readings.find(
    (r) => r.seen.check === check && Date.parse(r.seen.at) === Date.parse(at),
  );
  const what = reading && `${reading.title}: ${reading.words.join(', ')}`;
  const says = what === undefined || reading?.silent ? [] : weights(said, check!, what);
  const untold = o.value !== undefined && o.outcomes.length === 0 ? numberWithoutMeaning : undefined;
  const silent = reading
    ? (untold ?? (reading.silent && (silence[reading.silent] ?? reading.silent)))
    : silence['not in the catalog'];
  return {
    entry,
    at,
    ...(check !== undefined && { check }),
    title,
    value: seenWords(o),
    ...(detail && { detail }),
    decided: false,
    doubtful,
    says,
    ...(silent && { silent }),
    repairedSince,
  };
}

/** An outcome that a sound engine shows as well, because of how it is built or may be built. */
function usualHere(
  { catalog, engine: { facts } }: Answers,
  { check, outcomes }: From<'observation'>,
): string | undefined {
  const seen = byId(catalog.checks)
    .get(check ?? '')
    ?.outcomes.filter((o) => outcomes.includes(o.words));
  const fitting = catalog.variants.filter(
    (v) =>
      seen?.some((o) => o.usualWith?.includes(v.id)) &&
      v.architectures.some((a) => a === facts.architecture) &&
      facts.variants?.[v.id] !== false,
  );
  const [variant] = fitting;
  if (!variant) return undefined;
  const known = facts.variants?.[variant.id] === true;
  return [known ? 'Says little here.' : `May say little. ${variant.asks}`, variant.words]
    .filter(Boolean)
    .join(' ');
}

function weights({ faults }: Findings, check: string, what: string): EvidenceLine['says'] {
  return faults
    .flatMap((f) =>
      f.evidence
        .filter((e) => e.check === check && e.what.startsWith(what))
        .map((e) => ({ id: f.id, name: f.name, times: 2 ** e.weight })),
    )
    .sort((a, b) => Math.abs(Math.log(b.times)) - Math.abs(Math.log(a.times)));
}

function decision(d: From<'decision'>): EvidenceLine {
  return {
    entry: d.entry,
    at: d.at,
    title: d.title,
    value: '',
    ...(d.reason && { detail: d.reason }),
    decided: true,
    doubtful: false,
    says: [],
    repairedSince: [],
  };
}

/** "× 12" as a person says it: how much likelier one line makes a fault, in odds. */
export function timesWords(times: number): string {
  if (times >= 1000) return 'all but settles it';
  if (times <= 0.001) return 'all but rules it out';
  const factor = times >= 1 ? times : 1 / times;
  const shown = factor < 10 ? factor.toFixed(1).replace('.0', '') : String(Math.round(factor));
  return `${times >= 1 ? '×' : '÷'} ${shown}`;
}
