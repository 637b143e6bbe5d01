import { clockWords, counted, money } from '../phrase/index.js';
import { showBoth } from '../quantity/index.js';
import type { EntryKind, EntryOf, Fastener, RawEntry, Written } from './entry.js';
import { boltOf, type LogLine, quantityOf } from './job.js';
import { isKnownKind } from './read-entry.js';

/** A log line in words: what, its value, and a quieter second line. */
export interface LineWords {
  readonly title: string;
  readonly value?: string;
  readonly detail?: string;
}

/** Never empty: a kind that this version does not know is named as it came. */
export function lineWords({ entry, known }: LogLine): LineWords {
  if (!known) return asItCame(entry);
  const words = (tellers[known.kind] as Teller<EntryKind>)(known as EntryOf<EntryKind>);
  return entry.spoken ? { ...words, detail: [words.detail, 'spoken'].filter(Boolean).join(' · ') } : words;
}

/** Of a kind that is known here it cannot be read: an older program wrote it, or it breaks a rule made since. */
function asItCame({ kind, body }: RawEntry): LineWords {
  if (!isKnownKind(kind)) return { title: `a line of a newer kind, “${kind}”`, detail: 'kept as it came' };
  const came = JSON.stringify(body) ?? '';
  return {
    title: `a line that cannot be read, “${kind}”`,
    value: came.length > asMuch ? `${came.slice(0, asMuch)}…` : came,
    detail: 'kept as it came, and counts for nothing: strike it and write it again',
  };
}

const asMuch = 200;

type Teller<K extends EntryKind> = (e: EntryOf<K>) => LineWords;

const say = (
  title: string,
  value?: string | false,
  ...details: readonly (string | undefined | false)[]
): LineWords => {
  const detail = details.filter(Boolean).join(' · ');
  return { title, ...(value && { value }), ...(detail && { detail }) };
};

const both = (w: Written | undefined) => w && showBoth(quantityOf(w), 'inch');
const sum = (m: { amount: number; currency: string } | undefined) => m && money(m.currency, m.amount);

const intakeNames: Readonly<Record<keyof EntryOf<'intake'>['body'], string>> = {
  machine: 'Machine',
  use: 'Used as',
  alsoUses: 'Drives as well',
  owner: 'Owner',
  contact: 'Reached at',
  complaint: 'Complaint',
  complaints: 'Complaint in the trade’s words',
  architecture: 'Engine',
  ignition: 'Ignition',
  fuelSystem: 'Carburetor',
  shaft: 'Shaft',
  governor: 'Governor',
  starter: 'Starter',
  variants: 'This engine',
  storedMonths: 'Months stored',
  fuelLeftIn: 'Fuel left in',
  tipped: 'Tipped',
  struck: 'Struck something',
  wrongFuel: 'Wrong fuel',
  tried: 'Already tried',
  missing: 'Missing or damaged',
  consent: 'Consent',
  stopLimit: 'Call above',
  worthRunning: 'Worth when it runs',
  promised: 'Promised for',
};

/** In a person's own words or a day; the others are names of choices. */
const asWritten: ReadonlySet<keyof EntryOf<'intake'>['body']> = new Set([
  'machine',
  'owner',
  'contact',
  'complaint',
  'tried',
  'missing',
  'promised',
]);

function intakeValue(key: keyof EntryOf<'intake'>['body'], body: EntryOf<'intake'>['body']): string {
  if (key === 'consent')
    return body.consent?.given
      ? `given by ${[body.consent.by, body.consent.how].filter(Boolean).join(', ')}`
      : 'not given';
  if (key === 'stopLimit' || key === 'worthRunning') return sum(body[key]) ?? '';
  if (key === 'variants') {
    return Object.entries(body.variants ?? {})
      .map(([variant, holds]) => `${variant.replaceAll('-', ' ')}: ${holds ? 'yes' : 'no'}`)
      .join(', ');
  }
  if (key === 'complaints') return (body.complaints ?? []).map((c) => c.replaceAll('-', ' ')).join(', ');
  const value = String(body[key]);
  return asWritten.has(key) ? value : value.replaceAll('-', ' ');
}

function tellIntake({ body }: EntryOf<'intake'>): LineWords {
  const keys = (Object.keys(body) as (keyof typeof body)[]).filter((k) => body[k] !== undefined);
  const [only] = keys;
  if (keys.length === 1 && only) return say(intakeNames[only], intakeValue(only, body));
  return say('Taken in', false, ...keys.map((k) => `${intakeNames[k]}: ${intakeValue(k, body)}`));
}

function tellIdentity({ body }: EntryOf<'identity'>): LineWords {
  if (body.how === 'plate')
    return say(
      'Plate',
      body.written,
      body.where,
      ...body.reads.map((r) => `${r.part} ${r.value}: ${r.meaning}`),
    );
  if (body.how === 'measured')
    return say('Identity measured', `${body.bore.written} × ${body.stroke.written}`, body.leavesOpen);
  return say('No plate found', false, body.looked.length > 0 && `looked ${body.looked.join(', ')}`);
}

function tellDiffers({ body }: EntryOf<'differs'>): LineWords {
  const plain = (id: string) => id.replaceAll('-', ' ');
  const title = `This engine: ${body.how === 'added' ? body.name : plain(body.component)}`;
  if (body.how === 'added') return say(title, 'there as well', `${body.minutes} min`, waitsFor(body.before));
  if (body.how === 'absent') return say(title, 'not there');
  if (body.how === 'there') return say(title, 'it has one');
  if (body.how === 'waits-for') return say(title, waitsFor(body.before) || 'waits for nothing');
  if (body.how === 'minutes') return say(title, `${body.minutes} min`);
  return say(title, false, ...body.fasteners.map(fastenerWords));
}

const waitsFor = (before: readonly string[]) =>
  before.length > 0 && `after ${before.map((id) => id.replaceAll('-', ' ')).join(', ')}`;

/** Where the title does not say it already. */
function stepState({ state, component, stage, title }: EntryOf<'step'>['body']): string | false {
  const said =
    state === 'done' && component !== undefined ? { teardown: 'off', assembly: 'back on' }[stage] : state;
  return !title.endsWith(`: ${said}`) && said;
}

const fastenerWords = (f: Fastener) =>
  [`${f.count} ×`, f.size, f.length, f.what, f.hole].filter(Boolean).join(' ');

/** Every kind tells itself; a new kind does not compile until it does. */
const tellers: { readonly [K in EntryKind]: Teller<K> } = {
  open: ({ body }) =>
    say('Tag hung', String(body.tag), body.title, body.invented && 'invented for demonstration'),
  intake: tellIntake,
  identity: tellIdentity,
  spec: ({ body }) =>
    say(
      body.label,
      body.text ?? [both(body.value), both(body.upTo)].filter(Boolean).join(' to '),
      body.origin.from,
      body.origin.detail,
    ),
  observation: ({ body }) =>
    say(
      body.title,
      [body.value, ...body.outcomes].filter(Boolean).join(', '),
      body.words,
      body.conditions,
      body.doubtful && 'doubtful reading',
    ),
  measurement: ({ body }) =>
    say(
      body.title,
      body.value.written,
      body.place,
      body.direction,
      body.instrument?.replaceAll('-', ' '),
      body.phase === 'after' && 'after the work',
    ),
  photograph: ({ body }) =>
    say(
      body.insteadOf ? 'Picture, said anew' : body.clip ? 'Film' : 'Photograph',
      body.caption || false,
      body.clip && `film ${body.clip.file}, ${body.clip.from} to ${body.clip.to}`,
      body.still && `out of the film ${body.still.film}, ${body.still.at.slice(11, 19)}`,
      body.when,
    ),
  decision: ({ body }) =>
    say(
      body.title,
      body.choice.replaceAll('-', ' '),
      body.reason,
      sum(body.amount),
      body.until && `until ${body.until}`,
    ),
  part: ({ body }) =>
    say(
      body.name,
      body.state,
      body.count > 1 && `${body.count} pieces`,
      body.number,
      body.supplier,
      sum(body.price),
      body.due && `due ${body.due}`,
      body.words,
    ),
  offer: ({ body }) =>
    say(
      body.name,
      body.withdrawn ? 'no longer offered' : sum(body.price),
      `offered by ${body.supplier.replaceAll('-', ' ')}`,
      ...Object.entries(body.contains).map(([part, n]) => `${n} × ${part.replaceAll('-', ' ')}`),
      body.leadDays !== undefined && `${body.leadDays} days`,
      body.fit !== 'sure' && `fit ${body.fit}`,
    ),
  goal: ({ body }) => say(`To be reached: ${body.title}`, body.state === 'dropped' && 'no longer', body.why),
  differs: tellDiffers,
  cleaning: ({ body }) =>
    say(
      body.title,
      body.state,
      body.agent.replaceAll('-', ' '),
      body.soakMinutes !== undefined && `soak ${body.soakMinutes} min`,
      body.dryMinutes !== undefined && `dry ${body.dryMinutes} min`,
      body.words,
    ),
  recording: ({ body }) =>
    say(
      `Recording ${body.name}`,
      body.mean ? `${Math.round(body.mean.rpm)} ± ${Math.ceil(body.mean.u * 2)} rpm` : 'no speed heard',
      body.phase === 'before' ? 'before the work' : 'after the work',
      body.temperature !== 'unknown' && body.temperature,
      body.rivalsRpm.length > 0 && `or ${body.rivalsRpm.map(Math.round).join(' or ')} rpm`,
      body.starts && counted(body.starts.attempts, 'pull'),
      body.says,
    ),
  step: ({ body }) =>
    say(
      body.title,
      stepState(body),
      ...(body.fasteners ?? []).map(fastenerWords),
      body.bag && `bag ${body.bag}`,
      body.plugged?.length ? `plugged ${body.plugged.join(', ')}` : undefined,
      body.unplugged?.length ? `opened ${body.unplugged.join(', ')}` : undefined,
      ...(body.unseen ?? []).map(({ view, reason }) => `no picture of ${view}: ${reason}`),
      body.checked?.length ? `checked: ${body.checked.join('; ')}` : undefined,
      body.words,
    ),
  joint: ({ body }) =>
    say(
      `${body.name} laid out`,
      both(body.target),
      `${body.holes.length} holes`,
      body.orderOrigin.detail ?? body.orderOrigin.from,
    ),
  torque: ({ body }) =>
    say(
      `${body.joint.replaceAll('-', ' ')}, bolt ${boltOf(body)}`,
      `${both(body.set)} ${body.result}`,
      `pass ${body.pass}`,
      body.wrench?.replaceAll('-', ' '),
    ),
  'run-up': ({ body }) =>
    say(
      body.title,
      body.value?.written ?? (body.result === 'ok' ? 'in order' : body.result.replace('-', ' ')),
      body.words,
    ),
  stage: ({ body }) =>
    say(`Stage ${body.stage.replaceAll('-', ' ')}`, body.state.replace('-', ' '), body.reason),
  note: ({ body }) => say(body.words),
  'spoken-note': ({ body }) => say('Spoken note', clockWords(body.sound.seconds), body.about),
  strike: ({ body }) => say('Line struck', false, body.reason),
  'hand-over': ({ body }) =>
    say(
      'Handed over',
      body.receivedBy && `to ${body.receivedBy}`,
      body.told,
      ...body.declined.map((d) => `declined: ${d}`),
    ),
  wrench: ({ body }) =>
    say(
      body.name,
      `${body.min.written} to ${body.max.written}`,
      `± ${body.accuracyPercent} %`,
      body.retired && 'retired',
    ),
  instrument: ({ body }) =>
    say(
      body.name,
      `± ${body.uncertainty.written}`,
      `reads to ${body.resolution.written}`,
      body.retired && 'retired',
    ),
  supplier: ({ body }) =>
    say(
      body.name,
      body.minimum !== undefined && `orders from ${body.minimum}`,
      ...body.shipping.map(({ from, cost }) => `shipping ${cost} from ${from}`),
      body.retired && 'retired',
    ),
  place: ({ body }) => say(body.name, `room for ${body.capacity}`, body.retired && 'retired'),
  pack: ({ body }) => say(`Catalog pack ${body.pack}`, body.removed ? 'removed' : 'added'),
  learning: ({ body }) =>
    say('The shop’s own frequencies', body.counted ? 'count this job' : 'leave this job out', body.reason),
  setting: ({ body }) => say(body.key.replaceAll('-', ' '), body.value),
};
