// How well photographs on the mat are read: `npm run bench sight`. Scenes are rendered anew; WRISTPIN_SIGHT=held-out reads the
// other half, WRISTPIN_SIGHT_PART one part alone: “plates” (or another group), “refused” or “look-alikes”.
import sharp from 'sharp';
import { compare, type Plate, type Seen, see } from '../src/sight/index.js';
import { unfit } from './sight/refusals.js';
import { photograph } from './sight/render.js';
import { type Case, twinChanges, twins } from './sight/scenes.js';
import { type Score, score, table } from './sight/score.js';
import { guiding, heldOut } from './sight/sets.js';

async function read(
  each: Case & { readonly as?: 'plate' | 'bolts' },
): Promise<{ seen: Seen; score: Score; seconds: number }> {
  const { data, info } = await sharp(await photograph(each.scene))
    .raw()
    .toBuffer({ resolveWithObject: true });
  const before = process.cpuUsage().user;
  const { thickness: told } = each;
  const seen = see(
    { data, width: info.width, height: info.height, channels: 3 },
    {
      as: each.as ?? (each.truth.bolts ? 'bolts' : 'plate'),
      ...(told && { thickness: { mm: told.mm, u: told.u / 2 } }),
    },
  );
  return { seen, score: score(each, seen), seconds: (process.cpuUsage().user - before) / 1e6 };
}

const pairs = 6;
const part = process.env.WRISTPIN_SIGHT_PART;
const cases = process.env.WRISTPIN_SIGHT === 'held-out' ? heldOut() : guiding();
const seconds: number[] = [];
for (const title of new Set(cases.map(({ group }) => group))) {
  if (part && part !== title) continue;
  const scores: Score[] = [];
  for (const each of cases.filter(({ group }) => group === title)) {
    const answer = await read(each);
    scores.push(answer.score);
    seconds.push(answer.seconds);
  }
  console.log(table(title, scores));
}
if (!part || part === 'refused') {
  console.log('\nrefused                       right reason   another   read');
  for (const line of await refusals()) console.log(line);
}
if (!part || part === 'look-alikes') {
  console.log('\nlook-alikes     differ   found  else  missed (differ by)   of them refused');
  for (const change of twinChanges) console.log(await lookAlikes(change));
}
if (seconds.length > 0) {
  const most = Math.max(...seconds);
  const loop = reference();
  const median = seconds.toSorted((a, b) => a - b)[seconds.length >> 1]!;
  console.log(
    `processor time of one picture: ${most.toFixed(1)} s at most, ${median.toFixed(1)} s in the middle; ` +
      `the reference loop took ${loop.toFixed(2)} s, so ${(most / loop).toFixed(1)} and ${(median / loop).toFixed(1)} times that`,
  );
}

/** Seconds of the processor that a fixed piece of work takes here and now: how slow the machine is under its load. */
function reference(): number {
  const before = process.cpuUsage().user;
  const field = new Float32Array(1 << 20).fill(0.5);
  for (let round = 0; round < 100; round += 1)
    for (let i = 1; i < field.length; i += 1) field[i] = 0.5 * field[i]! + 0.25 * field[i - 1]! + 0.125;
  return (process.cpuUsage().user - before) / 1e6 + 0 * field[7]!;
}

/** Pairs that differ by half a millimetre in one thing or not at all: what was found, and what was found that is not there. */
async function lookAlikes(change: (typeof twinChanges)[number]): Promise<string> {
  const from = process.env.WRISTPIN_SIGHT === 'held-out' ? 90_000 : 60_000;
  const [found, missed]: [number[], number[]] = [[], []];
  let [invented, refused] = [0, 0];
  for (let i = 0; i < pairs; i += 1) {
    const pair = twins(from + 10 * i, change, { size: [1200, 1600] });
    const [first, second] = [await plateOf(pair.first), await plateOf(pair.second)];
    if (!first || !second) {
      refused += 1;
      continue;
    }
    const { differences } = compare(first, second);
    const wanted = pair.differs > 0;
    if (wanted) (differences.length > 0 ? found : missed).push(pair.differs);
    invented += Math.max(0, differences.length - (wanted ? 1 : 0));
  }
  const by = missed.map((mm) => mm.toFixed(2)).join(' ');
  return (
    `${change.padEnd(16)}${found.length + missed.length}`.padEnd(25) +
    `${found.length}`.padEnd(7) +
    `${invented}`.padEnd(6) +
    `${missed.length} ${by}`.padEnd(21) +
    refused
  );
}

async function plateOf(each: Case): Promise<Plate | undefined> {
  return (await read(each)).seen.plate;
}

/** What nobody should measure: how often it was refused for its own reason, for another, or read. */
async function refusals(): Promise<string[]> {
  const counts = new Map<string, [right: number, other: number, read: number]>();
  const from = process.env.WRISTPIN_SIGHT === 'held-out' ? 121 : 11;
  for (const seed of [from, from + 1, from + 2])
    for (const each of unfit(seed)) {
      const { refused } = (await read(each)).seen;
      const count = counts.get(each.group) ?? [0, 0, 0];
      count[refused ? (each.truth.refuse.includes(refused.kind) ? 0 : 1) : 2] += 1;
      counts.set(each.group, count);
    }
  return [...counts].map(
    ([group, [right, other, plain]]) =>
      `${group.padEnd(30)}${String(right).padEnd(15)}${String(other).padEnd(10)}${plain}`,
  );
}
