import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { seeded } from '../../src/infer/index.js';

/** Rounds of a campaign, each with a chance of its own, so that round 4711 can be played alone. */
export interface Campaign {
  /** what it is called where its figures are told; no two campaigns share one */
  readonly name: string;
  readonly seed: number;
  readonly rounds: number;
}

export interface Round {
  /** from 0 on */
  readonly number: number;
  readonly chance: () => number;
  /** adds to what is told at the end */
  readonly count: (what: string, by?: number) => void;
  /** keeps the greatest */
  readonly most: (what: string, value: number) => void;
}

export interface Figures {
  readonly counts: Readonly<Record<string, number>>;
  readonly greatest: Readonly<Record<string, number>>;
}

interface Standing extends Figures {
  readonly campaign: Campaign;
  /** the round to go on with */
  readonly next: number;
}

/** Often enough that an interruption costs little, seldom enough that it costs nothing itself. */
const saveEveryMs = 500;

/**
 * Plays the rounds one after the other. In `npm run trust`, which names a folder for it, how far it came is written down: a
 * run that was broken off goes on there, and one that failed begins with the round that failed.
 *
 * @throws what `play` throws, with the round and the campaign's seed before it
 */
export async function playRounds(
  campaign: Campaign,
  play: (round: Round) => Promise<void>,
  folder = process.env.WRISTPIN_TRUST_STATE,
): Promise<Figures> {
  const file = folder && join(folder, `${campaign.name.replaceAll(/[^\w]+/g, '-')}.json`);
  const before = file ? standing(file, campaign) : undefined;
  const counts: Record<string, number> = { ...before?.counts };
  const greatest: Record<string, number> = { ...before?.greatest };
  const first = before?.next ?? 0;
  if (first > 0) console.info(`${campaign.name}: goes on with round ${first} of ${campaign.rounds}`);
  const save = (next: number) => file && write(file, { campaign, next, counts, greatest });
  let saved = performance.now();
  for (let number = first; number < campaign.rounds; number++) {
    const its = await played(campaign, number, play).catch((error: unknown) => {
      save(number);
      throw error;
    });
    for (const [what, by] of Object.entries(its.counts)) counts[what] = (counts[what] ?? 0) + by;
    for (const [what, value] of Object.entries(its.greatest))
      greatest[what] = Math.max(greatest[what] ?? Number.NEGATIVE_INFINITY, value);
    if (performance.now() - saved < saveEveryMs && number + 1 < campaign.rounds) continue;
    save(number + 1);
    saved = performance.now();
  }
  console.info(`${campaign.name} (seed ${campaign.seed}): ${inWords({ counts, greatest })}`);
  return { counts, greatest };
}

/** What a round that fails had counted is not counted: it is played again. */
async function played(
  { name, seed, rounds }: Campaign,
  number: number,
  play: (round: Round) => Promise<void>,
): Promise<Figures> {
  const counts: Record<string, number> = {};
  const greatest: Record<string, number> = {};
  const round: Round = {
    number,
    chance: seeded(seed + number),
    count: (what, by = 1) => {
      counts[what] = (counts[what] ?? 0) + by;
    },
    most: (what, value) => {
      greatest[what] = Math.max(greatest[what] ?? Number.NEGATIVE_INFINITY, value);
    },
  };
  try {
    await play(round);
  } catch (error) {
    if (error instanceof Error)
      error.message = `${name}, round ${number} of ${rounds}, seed ${seed}: ${error.message}`;
    throw error;
  }
  return { counts, greatest };
}

export const inWords = ({ counts, greatest }: Figures): string =>
  [
    ...Object.entries(counts).map(([what, count]) => `${count} ${what}`),
    ...Object.entries(greatest).map(([what, value]) => `at most ${Math.round(value)} ${what}`),
  ].join(', ');

/** Another seed or size is another campaign: it begins anew. */
function standing(file: string, { seed, rounds }: Campaign): Standing | undefined {
  try {
    const found = JSON.parse(readFileSync(file, 'utf8')) as Standing;
    return found.campaign.seed === seed && found.campaign.rounds === rounds ? found : undefined;
  } catch {
    return undefined;
  }
}

/** Put in place whole: a kill must not leave half of it. */
function write(file: string, state: Standing): void {
  mkdirSync(join(file, '..'), { recursive: true });
  writeFileSync(`${file}.part`, JSON.stringify(state));
  renameSync(`${file}.part`, file);
}
