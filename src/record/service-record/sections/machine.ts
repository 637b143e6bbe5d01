import { type From, quantityOf } from '../../../job/index.js';
import { capital, counted, joined, listed } from '../../../phrase/index.js';
import { architectureLabels } from '../labels.js';
import { say } from '../numbers.js';
import type { Fact, Section } from '../section.js';
import type { Sheet } from '../sheet.js';

/** What the machine is and how the shop knows: plate, or measured, or not found. */
export function machine(sheet: Sheet): Section | undefined {
  const facts = [...identityFacts(sheet), ...kindFacts(sheet)];
  if (facts.length === 0) return undefined;
  return { id: 'machine', title: 'The machine', place: 'column', blocks: [{ type: 'facts', facts }] };
}

/** The latest reading of each way of knowing: a measured bore says more beside a plate, not instead of it. */
function identityFacts(sheet: Sheet): Fact[] {
  const latest = new Map(sheet.job.identities.map((identity) => [identity.how, identity]));
  // looked for in vain, then found: only what was found is so
  if (latest.has('plate')) latest.delete('not-found');
  return [...latest.values()].flatMap((identity) => {
    if (identity.how === 'plate') return plateFacts(identity);
    if (identity.how === 'measured') return measuredFacts(identity, sheet);
    return [{ label: 'Plate', value: 'not found', origin: lookedWords(identity, sheet) }];
  });
}

function lookedWords({ looked }: Identity<'not-found'>, { detail }: Sheet): string {
  return detail === 'brief' ? `looked in ${counted(looked.length, 'place')}` : `looked at ${listed(looked)}`;
}

type Identity<How extends string> = Extract<From<'identity'>, { how: How }>;

function plateFacts(identity: Identity<'plate'>): Fact[] {
  const plate = { label: 'Plate', value: identity.written, origin: `read ${identity.where}` };
  const parts = identity.reads.map((read) => ({
    label: capital(read.part),
    value: read.value === read.meaning || !read.meaning ? read.value : `${read.value}: ${read.meaning}`,
    origin: 'plate',
  }));
  return [plate, ...parts];
}

function measuredFacts(identity: Identity<'measured'>, sheet: Sheet): Fact[] {
  const size = sheet.detail === 'brief' ? [sizeInALine(identity, sheet)] : sizeFacts(identity, sheet);
  return identity.leavesOpen ? [...size, { label: 'Left open', value: identity.leavesOpen }] : size;
}

function sizeInALine({ shaft, ...identity }: Identity<'measured'>, { system }: Sheet): Fact {
  const value = joined(
    [
      `${say(identity.bore, system)} × ${say(identity.stroke, system)}`,
      `computed ${displacement(identity)}`,
      shaft && `shaft ${say(shaft, system)}`,
    ],
    ', ',
  );
  return { label: 'Bore × stroke', value, origin: 'measured' };
}

function sizeFacts(identity: Identity<'measured'>, { system }: Sheet): Fact[] {
  const facts: Fact[] = [
    {
      label: 'Bore × stroke',
      value: `${say(identity.bore, system)} × ${say(identity.stroke, system)}`,
      origin: 'measured',
    },
    { label: 'Displacement', value: displacement(identity), origin: 'computed from bore and stroke' },
  ];
  if (identity.shaft) facts.push({ label: 'Shaft', value: say(identity.shaft, system), origin: 'measured' });
  return facts;
}

/**
 * The volume the piston sweeps, π/4 · bore² · stroke, in cubic centimeters as the trade says it.
 * Example: 66 mm × 57 mm is 195 cc.
 */
function displacement({ bore, stroke }: Pick<Identity<'measured'>, 'bore' | 'stroke'>): string {
  const cubicMeters = (Math.PI / 4) * quantityOf(bore).si ** 2 * quantityOf(stroke).si;
  return `${Math.round(cubicMeters * 1e6)} cc`;
}

/** What was seen of the engine's kind, in a line; what nobody knew is left out rather than guessed. */
function kindFacts({ job }: Sheet): Fact[] {
  const { architecture, ignition, fuelSystem, governor } = job.intake;
  const value = joined(
    [
      architecture && architecture !== 'unknown' ? architectureLabels[architecture] : undefined,
      known(ignition) && `${known(ignition)} ignition`,
      known(fuelSystem) && `${known(fuelSystem)} carburetor`,
      governor === 'none' ? 'no governor' : known(governor) && `${known(governor)} governor`,
    ],
    ', ',
  );
  return value ? [{ label: 'Engine', value, origin: 'seen at intake' }] : [];
}

function known(value: string | undefined): string | undefined {
  return value === undefined || value === 'unknown' ? undefined : value.replaceAll('-', ' ');
}
