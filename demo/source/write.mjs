import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { drawings } from './drawings.mjs';
import { printed } from './json.mjs';
import { knowledge } from './knowledge.mjs';
import { mowerJob } from './mower.mjs';
import { pumpJob } from './pump/job.mjs';
import { wav } from './sounds/engine.mjs';
import { pumpAfter, pumpBefore } from './sounds/pump.mjs';

/**
 * Draws the pictures, makes the sounds, writes the logs that refer to them, and takes away what nothing refers to any
 * more. `rooms` holds the public faces of `catalog`, `listen` and `job`, built or not.
 */
export async function writeDemo({ folder, rooms }) {
  const pictures = await drawn();
  const sounds = { 'pump-before.wav': wav(pumpBefore()), 'pump-after.wav': wav(pumpAfter()) };
  const know = knowledge(rooms, sounds);
  const jobs = { 'market-garden-pump': pumpJob(know, pictures), 'school-mower': mowerJob(know, pictures) };
  const files = new Map([
    ...Object.entries(jobs).map(([name, entries]) => [join('jobs', `${name}.json`), printed({ entries })]),
    ...[...pictures.values()].map((p) => [join('pictures', `${p.facts.sha256}.jpg`), p.bytes]),
    ...Object.entries(sounds).map(([name, bytes]) => [join('sounds', name), bytes]),
  ]);
  const changed = takeAwayStale(folder, files) + writeChanged(folder, files);
  return { jobs: Object.keys(jobs).length, pictures: pictures.size, changed };
}

/** name → the JPEG and what a photograph entry says of it */
async function drawn() {
  const all = Object.entries(drawings).map(async ([name, svg]) => [name, await photographed(svg())]);
  return new Map(await Promise.all(all));
}

async function photographed(svg) {
  const { data, info } = await sharp(Buffer.from(svg))
    .flatten({ background: '#fff' })
    .jpeg({ quality: 72, mozjpeg: true })
    .toBuffer({ resolveWithObject: true });
  const sha256 = createHash('sha256').update(data).digest('hex');
  const facts = { sha256, mime: 'image/jpeg', bytes: data.length, width: info.width, height: info.height };
  return { bytes: data, facts };
}

function takeAwayStale(folder, files) {
  const kept = ['jobs', 'pictures', 'sounds'].flatMap((part) => {
    const path = join(folder, part);
    return existsSync(path) ? readdirSync(path).map((name) => join(part, name)) : [];
  });
  const stale = kept.filter((name) => !files.has(name));
  for (const name of stale) rmSync(join(folder, name));
  return stale.length;
}

function writeChanged(folder, files) {
  let changed = 0;
  for (const [name, content] of files) {
    const path = join(folder, name);
    if (existsSync(path) && readFileSync(path).equals(Buffer.from(content))) continue;
    mkdirSync(join(path, '..'), { recursive: true });
    writeFileSync(path, content);
    changed++;
  }
  return changed;
}
