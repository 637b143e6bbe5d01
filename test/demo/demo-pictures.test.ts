import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import sharp from 'sharp';
import { afterAll, expect, test } from 'vitest';
import * as catalog from '../../src/catalog/index.js';
import * as job from '../../src/job/index.js';
import * as listen from '../../src/listen/index.js';
import { campaign } from '../support/campaign.js';
import { demoFolder, entriesOf, jobNames, jobOf, pump } from './invented.js';

const folder = mkdtempSync(join(tmpdir(), 'wristpin-demo-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const picturesIn = (root: string) =>
  jobNames.flatMap((name) => jobOf(entriesOf(name, root)).photographs).flatMap((p) => p.picture ?? []);

/** Whatever draws the pictures, the logs and the files must agree. */
async function agrees(root: string): Promise<void> {
  const shown = picturesIn(root);
  expect(shown.length).toBeGreaterThan(10);
  expect(new Set(readdirSync(join(root, 'pictures')))).toEqual(new Set(shown.map((p) => `${p.sha256}.jpg`)));
  for (const { sha256, mime, bytes, width, height } of shown) {
    const file = readFileSync(join(root, 'pictures', `${sha256}.jpg`));
    expect(createHash('sha256').update(file).digest('hex')).toBe(sha256);
    const seen = await sharp(file).metadata();
    expect({ mime, bytes, width, height }).toEqual({
      mime: `image/${seen.format}`,
      bytes: file.length,
      width: seen.width,
      height: seen.height,
    });
    expect(bytes).toBeLessThan(90_000);
  }
}

test('each photograph is a JPEG of the stated size in the folder, and nothing else lies there', () =>
  agrees(demoFolder));

test('the pump is shown from every side, before and after', () => {
  const at = (stage: string) => pump.photographs.filter((p) => p.stage === stage && p.picture).length;
  expect(['intake', 'findings', 'parts', 'teardown', 'measure', 'assembly', 'hand-over'].map(at)).toEqual([
    5, 1, 1, 4, 1, 1, 1,
  ]);
  expect(pump.photographs.filter((p) => p.clip)).toHaveLength(1);
  const about = (when: string) => pump.photographs.filter((p) => p.when === when).map((p) => p.about);
  expect(about('before')).toEqual(expect.arrayContaining(about('after')));
});

test('a picture of a teardown step names the step', () => {
  const views = pump.photographs.filter(({ stage }) => stage === 'teardown');
  expect(views.filter(({ about }) => !pump.steps.has(about ?? ''))).toEqual([]);
});

test('the script writes the committed logs again, byte for byte but for what it says of the pictures', async () => {
  const script = pathToFileURL(resolve(demoFolder, 'source/write.mjs')).href;
  const { writeDemo } = (await import(script)) as { writeDemo: WriteDemo };
  const rooms = { ...catalog, ...listen, ...job };
  expect(await writeDemo({ folder, rooms })).toMatchObject({ jobs: 2 });
  await agrees(folder);
  for (const name of jobNames) expect(logText(folder, name)).toBe(logText(demoFolder, name));
  for (let again = 1; again < campaign(1, 3); again++)
    expect(await writeDemo({ folder, rooms })).toMatchObject({ jobs: 2, changed: 0 });
}, 240_000);

type WriteDemo = (options: {
  folder: string;
  rooms: object;
}) => Promise<{ jobs: number; pictures: number; changed: number }>;

/** Another build of the picture library may write other bytes for the same drawing. */
function logText(root: string, name: string): string {
  return readFileSync(join(root, 'jobs', `${name}.json`), 'utf8')
    .replaceAll(/"sha256": "[0-9a-f]{64}"/g, '"sha256": ""')
    .replaceAll(/"bytes": \d+/g, '"bytes": 0');
}
