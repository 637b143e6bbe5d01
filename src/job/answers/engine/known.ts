import { byId, type Catalog } from '../../../catalog/index.js';
import type { KnownOfEngine, PieceTold, SeenCheck } from '../../../diagnose/index.js';
import type { Job } from '../../job.js';
import type { Answers } from '../answers.js';
import { partFor } from '../parts/part-for.js';
import { piecesOf } from '../steps/taken.js';

/** What a job's log tells of its engine. */
export function knownOfEngine(answers: Answers): KnownOfEngine {
  const { job, catalog, faultsSaid } = answers;
  const repaired = faultsSaid.filter((f) => f.present && f.repairedAt !== undefined);
  const ranAt = ranLast(job, catalog);
  return {
    facts: job.intake,
    seen: seenOf(answers),
    complaints: job.intake.complaints ?? [],
    confirmed: faultsSaid.filter((f) => f.present && f.repairedAt === undefined).map((f) => f.fault),
    excluded: faultsSaid.filter((f) => !f.present).map((f) => f.fault),
    repairs: repaired.map((f) => ({ fault: f.fault, at: inZulu(f.repairedAt!) })),
    told: toldOf(answers),
    off: answers.offNow,
    renewed: renewedIn(answers),
    opened: new Set(answers.takenOff.flatMap((step) => piecesOf(answers, step))),
    filled: filledOf(answers),
    ...(ranAt !== undefined && { ranAt }),
  };
}

/** Checks made, and those that an item of the run-up has proved sound. */
function seenOf({ job, catalog, sights }: Answers): SeenCheck[] {
  const checks = byId(catalog.checks);
  const made = sights.flatMap(({ check, outcomes, doubtful, at }) =>
    check === undefined ? [] : [{ check, outcomes, doubtful, at: inZulu(at) }],
  );
  const proved = catalog.runUp.flatMap((step) => {
    const said = job.runUp.get(step.id);
    const check = step.check === undefined ? undefined : checks.get(step.check);
    if (said?.result !== 'ok' || !check) return [];
    return [{ check: check.id, outcomes: [check.outcomes[0]!.id], at: inZulu(said.at) }];
  });
  return [...made, ...proved].toSorted((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
}

/** What was said or shown of a piece, the latest last. */
function toldOf(answers: Answers): PieceTold[] {
  const { job, catalog } = answers;
  const specs = byId(catalog.specs);
  const all: (PieceTold & { readonly at: string })[] = [
    ...[...job.specs.values()].flatMap(({ spec, at }) => {
      const piece = specs.get(spec)?.component;
      return piece === undefined ? [] : [{ piece, fitted: true, why: 'it is on the maker’s sheet', at }];
    }),
    ...job.photographs.flatMap(({ about, at: written, still }) => {
      const piece = about?.split(':')[0];
      return piece === undefined || !answers.components.has(piece)
        ? []
        : [{ piece, fitted: true, why: 'a picture shows it', at: still?.at ?? written }];
    }),
    ...answers.takenOff.flatMap((step) =>
      piecesOf(answers, step).map((piece) => ({ piece, fitted: true, why: 'it was taken off', at: step.at })),
    ),
    ...job.differs.flatMap(({ how, component, at }) =>
      how === 'absent'
        ? [{ piece: component, fitted: false, why: 'said not to be there', at }]
        : [{ piece: component, fitted: true, why: 'said of this engine', at }],
    ),
  ];
  return all.toSorted((a, b) => Date.parse(a.at) - Date.parse(b.at));
}

/** Fuel and oil are in again when the act that let them out is put back. */
function filledOf(answers: Answers): NonNullable<KnownOfEngine['filled']> {
  const { putBack, takenOff, components } = answers;
  const off = new Map(takenOff.map((s) => [s.step, s]));
  const filled: { fuel?: string; oil?: string } = {};
  for (const { putsBack, at } of putBack) {
    const step = off.get(putsBack ?? '');
    for (const id of step ? piecesOf(answers, step) : []) {
      const piece = components.get(id);
      if (piece?.holds && piece.holds !== 'squeeze' && piece.comesOffAs === 'action')
        filled[piece.holds] = inZulu(at);
    }
  }
  return filled;
}

/** Pieces that were decided to be renewed, or of which a new part was fitted. */
function renewedIn({ job, components }: Answers): ReadonlySet<string> {
  const fitted = [...job.parts.values()].filter((part) => part.state === 'fitted');
  const decided = job.decisions.filter((d) => d.about === 'component' && d.choice === 'renew');
  const named = [...components.values()].filter(({ id, name, oneTimeParts }) =>
    [name.toLowerCase(), ...oneTimeParts].some((part) => {
      const found = partFor(job, id, part);
      return found !== undefined && fitted.includes(found);
    }),
  );
  return new Set([
    ...fitted.flatMap((part) => part.component ?? []),
    ...decided.flatMap((d) => d.which ?? []),
    ...named.map(({ id }) => id),
  ]);
}

/** When the log last says that the engine was running or hot. */
function ranLast(job: Job, catalog: Catalog): string | undefined {
  const during = (engine: string | undefined): boolean => engine === 'running' || engine === 'hot';
  const checks = byId(catalog.checks);
  const steps = byId(catalog.runUp);
  return [
    ...job.observations.filter((o) => during(checks.get(o.check ?? '')?.engine)),
    ...[...job.runUp.values()].filter(
      (r) => during(steps.get(r.item)?.engine) && (r.result === 'ok' || r.result === 'reading'),
    ),
    ...job.recordings.values(),
  ]
    .map((x) => x.at)
    .toSorted((a, b) => Date.parse(a) - Date.parse(b))
    .at(-1);
}

/** Times are compared as text further down; entries carry the offset of the device that wrote them. */
const inZulu = (at: string): string => new Date(at).toISOString();
