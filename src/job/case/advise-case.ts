import { type Architecture, architectures, byId, type Catalog } from '../../catalog/index.js';
import {
  type CaseHistory,
  type EngineNow,
  engineNow,
  enoughToAct,
  type KnownOfEngine,
  type MachineFacts,
  machineNetwork,
  nextChecks,
  outcomeOfValue,
  type Repair,
  type SeenCheck,
} from '../../diagnose/index.js';
import { type ExactInference, inferExactly, NetworkError } from '../../infer/index.js';
import { type Estimate, estimateOf, worthIt } from '../../worth/index.js';
import { barredChecks } from '../answers/findings/findings.js';
import { type Case, CaseError } from './case.js';

export interface CaseAdvice {
  /** the likeliest first */
  readonly faults: readonly { readonly id: string; readonly probability: number }[];
  /** the best first; of the outcomes the sound one first */
  readonly next: readonly {
    readonly check: string;
    readonly minutes: number;
    readonly outcomes: readonly string[];
  }[];
  readonly barred: readonly { readonly check: string; readonly why: string }[];
  readonly stop?: string;
  readonly enough: boolean;
  readonly pieces: Readonly<Record<string, 'fitted' | 'not fitted' | 'not known'>>;
  readonly worth: Estimate;
}

/**
 * What is wrong with a machine told in a file, what to look at next and what it will take: the same answers as those of a
 * job, by the same functions, without a log.
 *
 * @throws CaseError `impossible` when what was seen and decided rules each other out
 */
export function adviseCase(catalog: Catalog, told: Case): CaseAdvice {
  const known = knownOf(catalog, told);
  const engine = engineNow(catalog, known);
  const { machine, inference } = inferred(catalog, told, engine, known);
  const off = new Set(told.off ?? []);
  const ranked = nextChecks(machine, inference, { off, runs: told.runs, engine }, Number.POSITIVE_INFINITY);
  const place = new Map(inference.faults.map((id, i) => [id, i]));
  const probability = (id: string): number => inference.posterior[place.get(machine.now(id))!]!;
  const checks = byId(catalog.checks);
  return {
    faults: machine.faults
      .map(({ id }) => ({ id, probability: probability(id) }))
      .sort((a, b) => b.probability - a.probability),
    next: ranked.best.map(({ id, minutes }) => ({
      check: id,
      minutes,
      outcomes: checks.get(id)!.outcomes.map((o) => o.id),
    })),
    barred: barredChecks({ catalog, engine }).map(({ id, why }) => ({ check: id, why })),
    ...(engine.stop !== undefined && { stop: engine.stop }),
    enough: enoughToAct(machine, inference, ranked).enough,
    pieces: Object.fromEntries([...engine.pieces.values()].map((p) => [p.id, p.fitted])),
    worth: worthOfCase({ catalog, told, engine, inference, standing: standingOf(machine, told) }),
  };
}

/** A minute between lines: their order is all that a file tells. */
const stamp = (minute: number): string => new Date(Date.UTC(2000, 0, 1, 0, minute)).toISOString();

const sound: ReadonlySet<string> = new Set(['none', 'no-fault', 'reuse', 'excluded', 'absent']);
const leaves: ReadonlySet<string> = new Set(['declined']);

function knownOf(catalog: Catalog, told: Case): KnownOfEngine {
  const facts: MachineFacts = { ...told.facts, variants: { ...told.facts.variants, ...told.variants } };
  const checks = byId(catalog.checks);
  const seen = told.seen.map(({ check, outcomes = [], value, doubtful }, i): SeenCheck => {
    const read = value === undefined ? undefined : outcomeOfValue(checks.get(check)!, value, facts);
    const all = outcomes.length > 0 ? outcomes : read === undefined ? [] : [read];
    return { check, outcomes: all, ...(doubtful && { doubtful }), at: stamp(i) };
  });
  const decided = told.decided ?? [];
  const repairs = decided
    .filter((d) => d.choice === 'repaired')
    .map(({ fault }): Repair => ({ fault, at: stamp(told.seen.length) }));
  return {
    facts,
    seen,
    complaints: told.complaints ?? [],
    confirmed: decided.filter((d) => !sound.has(d.choice) && d.choice !== 'repaired').map((d) => d.fault),
    excluded: decided.filter((d) => sound.has(d.choice)).map((d) => d.fault),
    repairs,
    off: new Set(told.off ?? []),
    ...(told.runs !== undefined && { runs: told.runs }),
  };
}

function inferred(catalog: Catalog, told: Case, engine: EngineNow, known: KnownOfEngine) {
  const history: CaseHistory = {
    complaints: known.complaints ?? [],
    confirmed: [...(known.confirmed ?? []), ...(known.repairs ?? []).map((r) => r.fault)],
    excluded: known.excluded ?? [],
    repairs: known.repairs ?? [],
    tried: told.runs,
  };
  const machine = machineNetwork(catalog, engine.facts, known.seen, history);
  try {
    return { machine, inference: inferExactly(machine.network) };
  } catch (error) {
    if (!(error instanceof NetworkError)) throw error;
    throw new CaseError('impossible', 'seen', 'what was seen and what was decided rule each other out');
  }
}

function standingOf(machine: ReturnType<typeof machineNetwork>, told: Case): ReadonlyMap<string, string> {
  const declined = new Set((told.decided ?? []).filter((d) => leaves.has(d.choice)).map((d) => d.fault));
  const wanted = machine.faults.filter(({ id, fault }) => !declined.has(id) || fault.blocksHandOver);
  return new Map(wanted.map(({ id }) => [machine.now(id), id]));
}

interface WorthCase {
  readonly catalog: Catalog;
  readonly told: Case;
  readonly engine: EngineNow;
  readonly inference: ExactInference;
  readonly standing: ReadonlyMap<string, string>;
}

/** The same question gets the same answer. */
const seed = 1;

function worthOfCase({ catalog, told, engine, inference, standing }: WorthCase): Estimate {
  const { architecture } = engine.facts;
  if (!isArchitecture(architecture)) return nothing;
  const asked = { catalog, architecture, facts: engine.facts, inference, standing, seed };
  const off = new Set(told.off ?? []);
  const rate = told.rate === undefined ? {} : { ratePerHour: told.rate };
  return estimateOf(worthIt({ ...asked, off, ...rate }));
}

const isArchitecture = (said: string | undefined): said is Architecture =>
  architectures.some((a) => a === said);

const zero = { low: 0, median: 0, high: 0 };
/** While nobody knows the kind of engine nothing can be priced. */
const nothing: Estimate = { minutes: zero, parts: zero };
