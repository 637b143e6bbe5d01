import type { Architecture } from '../../../catalog/index.js';
import {
  type Assumed,
  adapted,
  type GraphChange,
  PlanError,
  type TeardownGraph,
  teardownGraph,
} from '../../../plan/index.js';
import type { Fastener } from '../../entry.js';
import type { From } from '../../job.js';
import type { Answers } from '../answers.js';

type Differs = From<'differs'>;

/** How the engine of a job comes apart: the catalog's graph under its facts, with what was found to differ. */
export interface EngineGraph {
  readonly architecture: Architecture;
  readonly graph: TeardownGraph;
  readonly assumed: readonly Assumed[];
  /** components and assemblies whose minutes are the shop's own, from the clock of its logs */
  readonly timed: ReadonlySet<string>;
  /** the name of a component, an assembly or a piece added to this engine */
  readonly nameOf: (id: string) => string;
  /** what holds a component on this engine, where it was counted */
  readonly fasteners: ReadonlyMap<string, readonly Fastener[]>;
  /** lines about this engine that cannot be so, each with why; the plan goes on without them */
  readonly leftOut: readonly { readonly entry: string; readonly words: string }[];
}

export type NoGraph = {
  readonly state: 'cannot';
  readonly because: 'architecture' | 'graph';
  readonly words: string;
};

export function engineGraph(answers: Answers): EngineGraph | NoGraph {
  const { job, catalog, architecture } = answers;
  const shop = answers.jobs.minutes;
  if (architecture === undefined) {
    return {
      state: 'cannot',
      because: 'architecture',
      words: 'The kind of engine is not known: side-valve, overhead-valve or two-stroke.',
    };
  }
  try {
    const { graph, assumed } = teardownGraph(catalog, architecture, answers.engine.facts, shop);
    return {
      architecture,
      assumed,
      timed: new Set(Object.keys(shop)),
      ...withDifferences(withoutUnfitted(graph, answers), job.differs),
      nameOf: namer(answers, architecture),
      fasteners: countedFasteners(job.differs),
    };
  } catch (error) {
    if (!(error instanceof PlanError)) throw error;
    return {
      state: 'cannot',
      because: 'graph',
      words: `The catalog’s pieces do not fit together: ${error.message}`,
    };
  }
}

export const isGraph = (found: EngineGraph | NoGraph): found is EngineGraph => !('state' in found);

/** Pieces known not to be on this engine are out of the way, however that came to be known. */
function withoutUnfitted(graph: TeardownGraph, { engine, job }: Answers): TeardownGraph {
  const told = new Set(job.differs.map(({ component }) => component));
  return adapted(
    graph,
    graph.pieces
      .filter(({ id }) => engine.pieces.get(id)?.fitted === 'not fitted' && !told.has(id))
      .map(({ id }) => ({ kind: 'remove' as const, piece: id })),
  );
}

/** Said not to be there, and found there after all. */
const takenBack = ({ how, component }: Differs, later: readonly Differs[]): boolean =>
  how === 'absent' && later.some((line) => line.how === 'there' && line.component === component);

/** One difference after the other; one that cannot be so is left out and said, and the plan stands without it. */
function withDifferences(
  graph: TeardownGraph,
  differs: readonly Differs[],
): Pick<EngineGraph, 'graph' | 'leftOut'> {
  const leftOut: { entry: string; words: string }[] = [];
  let now = graph;
  for (const line of differs.filter((each, i) => !takenBack(each, differs.slice(i + 1)))) {
    try {
      now = adapted(now, changesFor(line, now));
    } catch (error) {
      if (!(error instanceof PlanError)) throw error;
      leftOut.push({ entry: line.entry, words: error.message });
    }
  }
  return { graph: now, leftOut };
}

/** A piece told a second time is corrected, not added twice. */
function changesFor(line: Differs, graph: TeardownGraph): GraphChange[] {
  const piece = line.component;
  switch (line.how) {
    case 'added':
      return graph.pieces.some(({ id }) => id === piece)
        ? [
            { kind: 'retie', piece, before: line.before },
            { kind: 'minutes', piece, minutes: line.minutes },
          ]
        : [{ kind: 'add', piece: { id: piece, minutes: line.minutes, before: line.before } }];
    case 'absent':
      return [{ kind: 'remove', piece }];
    case 'waits-for':
      return [{ kind: 'retie', piece, before: line.before }];
    case 'minutes':
      return [{ kind: 'minutes', piece, minutes: line.minutes }];
    case 'there':
    case 'fasteners':
      return [];
  }
}

function countedFasteners(differs: readonly Differs[]): EngineGraph['fasteners'] {
  return new Map(
    differs.flatMap((line) => (line.how === 'fasteners' ? [[line.component, line.fasteners] as const] : [])),
  );
}

function namer({ job, catalog, components }: Answers, architecture: Architecture): (id: string) => string {
  const wholes = new Map(
    catalog.assemblies.filter((a) => a.architecture === architecture).map((a) => [a.id, a.name]),
  );
  const own = new Map(
    job.differs.flatMap((line) => (line.how === 'added' ? [[line.component, line.name] as const] : [])),
  );
  return (id) => own.get(id) ?? components.get(id)?.name ?? wholes.get(id) ?? id.replaceAll('-', ' ');
}
