import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { openPostgres, verifyFile, verifyPostgres } from '../../src/store/index.js';
import { cliWithFolder } from '../support/built-cli.js';
import { campaign } from '../support/campaign.js';
import { startPostgres } from '../support/postgres.js';
import { playRounds } from '../support/rounds.js';
import { KilledShop, type KillPlace } from './killed-shop.js';

const { cli } = cliWithFolder();
const postgres = await startPostgres();
afterAll(async () => {
  if (!('reason' in postgres)) await postgres.stop();
});

/** Each round has a store of its own; its kills are so many that the store is opened over what many kills left. */
const killsARound = campaign(3, 10);

async function onFile(work: (place: KillPlace) => Promise<void>): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'wristpin-kill-'));
  const file = join(folder, 'shop.db');
  await work({ args: ['--store', file], verify: () => verifyFile(file) });
  rmSync(folder, { recursive: true, force: true });
}

async function onDatabase(work: (place: KillPlace) => Promise<void>): Promise<void> {
  if ('reason' in postgres) throw new Error(postgres.reason);
  const url = await postgres.newDatabase();
  await (await openPostgres(url, { now: () => new Date().toISOString() })).close();
  await work({
    args: ['--database', url],
    verify: () => verifyPostgres(url),
    crash: async () => {
      await postgres.crash();
      await postgres.start();
    },
  });
}

const stores = { SQLite: onFile, PostgreSQL: onDatabase };

describe.each([
  [1, 'a server', 20],
  [2, 'one of two servers on one store', 5],
] as const)('%i: %s that is killed while lines and pictures are written', (servers, what, rounds) => {
  for (const [name, on] of Object.entries(stores)) {
    const isLeftOut = name === 'PostgreSQL' && 'reason' in postgres;
    test.skipIf(isLeftOut)(
      `on ${name} has kept every one that it acknowledged, whole and once`,
      { timeout: campaign(600_000, 7_200_000) },
      async () => {
        const kills = { name: `kills of ${what}, ${name}`, seed: 20261128, rounds: campaign(1, rounds) };
        const { counts } = await playRounds(kills, (round) =>
          on((place) => new KilledShop(cli, place, round).live(killsARound, servers)),
        );
        expect(counts.kills).toBeGreaterThanOrEqual(kills.rounds * killsARound);
        expect(counts['kills within a write']).toBeGreaterThan((counts.kills ?? 0) / 2);
        expect(counts['pictures acknowledged']).toBeGreaterThanOrEqual(kills.rounds);
      },
    );
  }
});
