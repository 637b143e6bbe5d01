import type { Body, Entry, EntryKind, EntryOf, RawEntry, Stage } from './entry.js';
import type { From, IntakeFacts, Job, LogLine, Shop } from './job.js';
import { inOrder, whenOf } from './order.js';
import { understand } from './read-entry.js';

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
  const last = log.at(-1)?.entry;
  return { id, ...draft, log, ...(last && { lastAt: whenOf(last) }) };
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

/** The log in order with what is struck. */
function standing(entries: readonly RawEntry[]): LogLine[] {
  const lines = numbered(inOrder(unique(entries)).map((entry) => ({ entry, known: understand(entry) })));
  const struckBy = strikesThatStand(lines);
  return lines.map(({ entry, known }) => {
    const strike = struckBy.get(spelled(entry.id));
    return { entry, ...(known && { known }), ...(strike && { struck: strikeLine(strike) }) };
  });
}

/** Bolts are named by their place in the order in which they are tightened, also where an older line tells only the hole. */
function numbered(lines: readonly { readonly entry: RawEntry; readonly known: Entry | undefined }[]) {
  const orders = new Map<string, readonly number[]>();
  return lines.map((line) => {
    const { known } = line;
    if (known?.kind === 'joint') orders.set(known.body.joint, known.body.order);
    if (known?.kind !== 'torque' || known.body.bolt !== undefined) return line;
    const place = orders.get(known.body.joint)?.indexOf(known.body.hole) ?? -1;
    return place < 0 ? line : { ...line, known: { ...known, body: { ...known.body, bolt: place + 1 } } };
  });
}

/** Older logs may hold an id in capitals: it is the same id. */
const spelled = (id: string): string => id.toLowerCase();

function unique(entries: readonly RawEntry[]): RawEntry[] {
  const known = new Map<string, RawEntry>();
  for (const e of entries) {
    const other = known.get(spelled(e.id));
    if (!other || other.id < e.id) known.set(spelled(e.id), e);
  }
  return [...known.values()];
}

/**
 * By the line it takes back, the first strike that stands. A strike strikes whatever the clocks say, for who wrote it had
 * read the line; it counts unless a strike that stands is aimed at itself. So a strike is decided once all that are aimed
 * at it are; strikes that go round in a ring, which no device can have written, are never decided and strike nothing.
 */
function strikesThatStand(
  lines: readonly { readonly entry: RawEntry; readonly known: Entry | undefined }[],
): ReadonlyMap<string, EntryOf<'strike'>> {
  const strikes = new Map<string, EntryOf<'strike'>>();
  for (const { known } of lines) if (known?.kind === 'strike') strikes.set(spelled(known.id), known);
  const undecided = new Map<string, number>();
  const targetOf = (strike: EntryOf<'strike'>) => spelled(strike.body.entry);
  for (const strike of strikes.values())
    undecided.set(targetOf(strike), (undecided.get(targetOf(strike)) ?? 0) + 1);
  const struckBy = new Map<string, EntryOf<'strike'>>();
  const ready = [...strikes.values()].filter(({ id }) => !undecided.has(spelled(id)));
  for (let strike = ready.pop(); strike; strike = ready.pop()) {
    const target = targetOf(strike);
    const before = struckBy.get(target);
    if (!struckBy.has(spelled(strike.id)) && (!before || inOrder([before, strike])[0] === strike))
      struckBy.set(target, strike);
    const left = undecided.get(target)! - 1;
    undecided.set(target, left);
    const next = strikes.get(target);
    if (left === 0 && next) ready.push(next);
  }
  return struckBy;
}

function strikeLine(e: EntryOf<'strike'>): NonNullable<LogLine['struck']> {
  return { by: e.by, at: whenOf(e), reason: e.body.reason, entry: e.id };
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
  spokenNotes: From<'spoken-note'>[];
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
    spokenNotes: [],
  };
}

function from<K extends EntryKind>(e: EntryOf<K>): From<K> {
  return { ...e.body, entry: e.id, at: whenOf(e), by: e.by };
}

type Taker<K extends EntryKind> = (draft: Draft, entry: EntryOf<K>) => void;

/** Every kind is handled here or says why it is not part of a job. */
const takers: { readonly [K in EntryKind]: Taker<K> } = {
  open: (d, e) => {
    d.tag = e.body.tag;
    d.title = e.body.title;
    d.invented = e.body.invented ?? false;
    d.opened ??= whenOf(e);
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
  photograph: (d, e) => photographed(d.photographs, from(e)),
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
  'spoken-note': (d, e) => d.spokenNotes.push(from(e)),
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

/** A picture of which it is said anew what it shows keeps its place and its time; one that was struck meanwhile is not brought back. */
function photographed(all: From<'photograph'>[], said: From<'photograph'>): void {
  const { insteadOf } = said;
  if (insteadOf === undefined) return void all.push(said);
  const place = all.findIndex((p) => p.entry === insteadOf || p.insteadOf === insteadOf);
  if (place >= 0) all[place] = { ...said, at: all[place]!.at, by: all[place]!.by };
}
