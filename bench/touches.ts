/**
 * What the tool asks of a person's hands: two invented jobs, played whole on a phone in Chromium through what is on the
 * screen and nothing else. Printed: touches, typed words, swipes, pictures and log lines, by stage and in all, beside what
 * each job may cost.
 */
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { phone, type RunningShop, startBrowser, startShop } from '../test/e2e/running.js';
import { blower } from './touches/blower.js';
import { AtJob } from './touches/job.js';
import { tiller } from './touches/tiller.js';

const jobs = [
  { name: 'A: tiller, head off', play: tiller, touches: 150, words: 100 },
  { name: 'B: blower, declined', play: blower, touches: 30, words: 25 },
];

const picture = join(mkdtempSync(join(tmpdir(), 'wristpin-touches-')), 'shot.jpg');
writeFileSync(
  picture,
  await sharp({ create: { width: 640, height: 480, channels: 3, background: '#8a9a7b' } })
    .jpeg()
    .toBuffer(),
);
const browser = await startBrowser();
for (const { name, play, touches, words } of jobs) {
  const shop = await startShop();
  const page = await (await browser.newContext(phone)).newPage();
  page.setDefaultTimeout(45_000);
  await page.goto(shop.address);
  const at = new AtJob(page, picture);
  try {
    await play(at);
    await at.settled();
  } catch (error) {
    await page.screenshot({ path: 'test-results/touches.png' });
    console.log(await page.locator('body').ariaSnapshot());
    console.error(error);
    process.exitCode = 1;
  }
  await print(name, at, await logLines(shop), { touches, words });
  await page.context().close();
  await shop.stop();
}
await browser.close();

async function logLines(shop: RunningShop): Promise<number> {
  const { jobs } = (await (await fetch(`${shop.address}/api/jobs`)).json()) as { jobs: { id: string }[] };
  const { entries } = (await (await fetch(`${shop.address}/api/jobs/${jobs[0]!.id}/entries`)).json()) as {
    entries: unknown[];
  };
  return entries.length;
}

function print(name: string, { hand }: AtJob, lines: number, may: { touches: number; words: number }): void {
  const all = hand.all;
  console.log(
    `\n${name}: ${all.touches} touches (at most ${may.touches}), ${all.words} typed words (at most ${may.words}), ${all.scrolls} swipes, ${all.pictures} pictures, ${lines} lines of the log`,
  );
  console.log(
    `${''.padEnd(12)}${['touches', 'words', 'swipes', 'pictures'].map((w) => w.padStart(9)).join('')}`,
  );
  for (const [stage, done] of hand.byStage)
    console.log(
      stage.padEnd(12) +
        [done.touches, done.words, done.scrolls, done.pictures].map((n) => String(n).padStart(9)).join(''),
    );
}
