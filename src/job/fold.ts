import type { Body, Entry, EntryKind, EntryOf, RawEntry, Stage } from './entry.js';
import type { From, IntakeFacts, Job, LogLine, Shop } from './job.js';
import { understand } from './read-entry.js';

/** Order within a job: by the instant it was written, then by id, so that every device folds the same log. */
export function inOrder<E extends Pick<RawEntry, 'at' | 'id'>>(entries: readonly E[]): E[] {
  const instant = new Map(entries.map((e) => [e, Date.parse(e.at)]));
  return [...entries].sort(
    (a, b) => instant.get(a)! - instant.get(b)! || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0),
  );
}

/**
 * The job that a log tells of. Pure and total: any entry, known or not, yields a job; an unknown kind stands in the
 * log as it came. Sending an entry twice, or entries in another order, gives the same job.
 */
export function fold(id: string, entries: readonly RawEntry[]): Job {
  const log = standing(entries);
  const draft = emptyDraft();
  for (const { known, struck } of log) {
    if (known && !struck) take(draft, known);
  }
  const last = log.at(-1)?.entry.at;
  return { id, ...draft, log, ...(last === undefined ? {} : { lastAt: last }) };
}

/** The shop that its own log tells of. */
export function foldShop(entries: readonly RawEntry[]): Shop {
  const log = standing(entries);
  const wrenches = new Map<string, From<'wrench'>>();
  const instruments = new Map<string, From<'instrument'>>();
  const suppliers = new Map<string, From<'supplier'>>();
  const places = new Map<string, From<'place'>>();
  const packs = new Map<string, From<'pack'>>();
  const learning = new Map<string, From<'learning'>>();
  const settings: Partial<Record<Body<'setting'>['key'], string>> = {};
  for (const { known, struck } of log) {
    if (struck) continue;
    if (known?.kind === 'wrench') wrenches.set(known.body.tool, from(known));
    if (known?.kind === 'instrument') instruments.set(known.body.tool, from(known));
    if (known?.kind === 'supplier') suppliers.set(known.body.supplier, from(known));
    if (known?.kind === 'place') places.set(known.body.place, from(known));
    if (known?.kind === 'pack') packs.set(known.body.pack, from(known));
    if (known?.kind === 'learning') learning.set(known.body.job, from(known));
    if (known?.kind === 'setting') settings[known.body.key] = known.body.value;
  }
  return {
    log,
    wrenches: [...wrenches.values()].filter((w) => !w.retired),
    instruments: [...instruments.values()].filter((i) => !i.retired),
    suppliers: [...suppliers.values()].filter((s) => !s.retired),
    places: [...places.values()].filter((p) => !p.retired),
    packs: [...packs.values()].filter((p) => !p.removed),
    learning,
    settings,
  };
}

/**
 * The log in order with what is struck. A strike counts unless it is itself struck by a later one: reading from the
 * end, each strike is decided before the entries it points back to.
 */
function standing(entries: readonly RawEntry[]): LogLine[] {
  const unique = new Map(entries.map((e) => [e.id, e]));
  const lines = inOrder([...unique.values()]).map((entry) => ({ entry, known: understand(entry) }));
  const place = new Map(lines.map(({ entry }, i) => [entry.id, i]));
  const struckBy = new Map<string, EntryOf<'strike'>>();
  for (let i = lines.length - 1; i >= 0; i--) {
    const known = lines[i]!.known;
    if (known?.kind !== 'strike' || struckBy.has(known.id)) continue;
    const target = place.get(known.body.entry);
    if (target !== undefined && target < i) struckBy.set(known.body.entry, known);
  }
  return lines.map(({ entry, known }) => {
    const strike = struckBy.get(entry.id);
    return { entry, ...(known && { known }), ...(strike && { struck: strikeLine(strike) }) };
  });
}

function strikeLine(e: EntryOf<'strike'>): NonNullable<LogLine['struck']> {
  return { by: e.by, at: e.at, reason: e.body.reason, entry: e.id };
}

interface Draft {
  tag: number;
  title: string;
  invented: boolean;
  opened?: string;
  intake: IntakeFacts;
  intakeFrom: Partial<Record<keyof IntakeFacts, string>>;
  identities: From<'identity'>[];
  specs: Map<string, From<'spec'>>;
  observations: From<'observation'>[];
  measurements: From<'measurement'>[];
  photographs: From<'photograph'>[];
  decisions: From<'decision'>[];
  parts: Map<string, From<'part'>>;
  offers: Map<string, From<'offer'>>;
  goals: Map<string, From<'goal'>>;
  differs: From<'differs'>[];
  cleanings: Map<string, From<'cleaning'>>;
  recordings: Map<string, From<'recording'>>;
  steps: Map<string, From<'step'>>;
  joints: Map<string, From<'joint'>>;
  torques: From<'torque'>[];
  runUp: Map<string, From<'run-up'>>;
  stages: Map<Stage, From<'stage'>>;
  notes: From<'note'>[];
  handOver?: From<'hand-over'>;
}

function emptyDraft(): Draft {
  return {
    tag: 0,
    title: '',
    invented: false,
    intake: {},
    intakeFrom: {},
    identities: [],
    specs: new Map(),
    observations: [],
    measurements: [],
    photographs: [],
    decisions: [],
    parts: new Map(),
    offers: new Map(),
    goals: new Map(),
    differs: [],
    cleanings: new Map(),
    recordings: new Map(),
    steps: new Map(),
    joints: new Map(),
    torques: [],
    runUp: new Map(),
    stages: new Map(),
    notes: [],
  };
}

function from<K extends EntryKind>(e: EntryOf<K>): From<K> {
  return { ...e.body, entry: e.id, at: e.at, by: e.by };
}

type Taker<K extends EntryKind> = (draft: Draft, entry: EntryOf<K>) => void;

/** Every kind is handled here or says why it is not part of a job. */
const takers: { readonly [K in EntryKind]: Taker<K> } = {
  open: (d, e) => {
    d.tag = e.body.tag;
    d.title = e.body.title;
    d.invented = e.body.invented ?? false;
    d.opened ??= e.at;
  },
  intake: (d, e) => {
    for (const key of Object.keys(e.body) as (keyof IntakeFacts)[]) {
      if (e.body[key] === undefined) continue;
      Object.assign(d.intake, { [key]: e.body[key] });
      d.intakeFrom[key] = e.id;
    }
  },
  identity: (d, e) => d.identities.push(from(e)),
  spec: (d, e) => d.specs.set(e.body.spec, from(e)),
  observation: (d, e) => d.observations.push(from(e)),
  measurement: (d, e) => d.measurements.push(from(e)),
  photograph: (d, e) => d.photographs.push(from(e)),
  decision: (d, e) => d.decisions.push(from(e)),
  part: (d, e) => d.parts.set(e.body.part, from(e)),
  offer: (d, e) => d.offers.set(e.body.offer, from(e)),
  goal: (d, e) => d.goals.set(e.body.component, from(e)),
  differs: (d, e) => d.differs.push(from(e)),
  cleaning: (d, e) => d.cleanings.set(e.body.cleaning, from(e)),
  recording: (d, e) => d.recordings.set(e.body.recording, from(e)),
  step: (d, e) => d.steps.set(e.body.step, from(e)),
  joint: (d, e) => d.joints.set(e.body.joint, from(e)),
  torque: (d, e) => d.torques.push(from(e)),
  'run-up': (d, e) => d.runUp.set(e.body.item, from(e)),
  stage: (d, e) => d.stages.set(e.body.stage, from(e)),
  note: (d, e) => d.notes.push(from(e)),
  'hand-over': (d, e) => {
    d.handOver = from(e);
  },
  strike: () => {}, // worked out before the fold, see `standing`
  wrench: () => {}, // the shop's, see `foldShop`
  instrument: () => {},
  supplier: () => {},
  place: () => {},
  pack: () => {},
  learning: () => {},
  setting: () => {},
};

function take(draft: Draft, entry: Entry): void {
  (takers[entry.kind] as Taker<EntryKind>)(draft, entry as EntryOf<EntryKind>);
}
