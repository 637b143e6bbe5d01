import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { beforeAll, describe, expect, test } from 'vitest';
import { fold, readEntry } from '../../../src/job/index.js';
import { writeWav } from '../../../src/listen/index.js';
import {
  type BundledPicture,
  jobDigest,
  readBundle,
  standardBundleLimits,
  writeBundle,
} from '../../../src/record/index.js';
import { campaign } from '../../support/campaign.js';
import { jobId } from '../log.js';
import { type Fixture, ordinaryJob, sha256 } from '../ordinary-job.js';

let fixture: Fixture;
let pictures: readonly BundledPicture[];
let bundle: Uint8Array;
beforeAll(async () => {
  fixture = await ordinaryJob();
  pictures = [...fixture.pictures].map(([hash, { bytes, mime }]) => ({
    sha256: hash,
    mime,
    bytes: new Uint8Array(bytes),
  }));
  bundle = await writeBundle({ entries: fixture.entries, pictures });
});

/** All that a bundle gives, its pictures with their bytes. */
async function wholeOf(bytes: Uint8Array) {
  const { entries, digest, pictures, picture } = await readBundle(bytes);
  const read: BundledPicture[] = [];
  for (const each of pictures) read.push({ ...each, bytes: new Uint8Array(await picture(each.sha256)) });
  return { entries, digest, pictures: bySha(read) };
}

const bySha = (list: readonly BundledPicture[]) => [...list].sort((a, b) => (a.sha256 < b.sha256 ? -1 : 1));

describe('write then read', () => {
  test('gives the same log, the same job and the same pictures', async () => {
    const read = await wholeOf(bundle);
    const entries = read.entries.map((entry) => readEntry(entry));
    // in the order in which the store took them in: by it they can be shown to be the ones that were kept
    expect(entries).toEqual(fixture.entries);
    expect(fold(jobId, entries)).toEqual(fixture.job);
    expect(read.pictures.map(({ sha256 }) => sha256)).toEqual(bySha(pictures).map(({ sha256 }) => sha256));
    for (const [i, { bytes }] of read.pictures.entries())
      expect(Buffer.compare(bytes, bySha(pictures)[i]!.bytes)).toBe(0);
  });

  test('gives equal bytes for an equal log, in whatever order its pictures and however often its lines come', async () => {
    const doubled = [...fixture.entries, ...fixture.entries.slice(0, 5)];
    const other = await writeBundle({ entries: doubled, pictures: [...pictures].reverse() });
    expect(Buffer.compare(bundle, other)).toBe(0);
  });

  test('states the digest of its lines, which another log does not have', async () => {
    const { digest, entries } = await wholeOf(bundle);
    let by = '';
    // node:crypto as the reference; a line is its JSON with the fields of every object in order, as in the bundle
    for (const entry of entries)
      by = createHash('sha256')
        .update(`${by}\n${JSON.stringify(entry)}`)
        .digest('hex');
    expect(digest).toBe(by);
    expect(await jobDigest(fixture.entries.slice(0, 3))).not.toBe(digest);
    expect(await jobDigest(fixture.entries)).toBe(digest);
  });

  test('gives equal bytes in every time zone', async () => {
    const zone = process.env.TZ;
    const written: Uint8Array[] = [];
    for (const tz of ['UTC', 'America/Anchorage', 'Pacific/Kiritimati']) {
      process.env.TZ = tz;
      written.push(await writeBundle({ entries: fixture.entries, pictures }));
    }
    if (zone === undefined) delete process.env.TZ;
    else process.env.TZ = zone;
    for (const bytes of written) expect(Buffer.compare(bytes, bundle)).toBe(0);
  });

  test('leaves out what a store adds to an entry', async () => {
    const numbered = fixture.entries.map((entry, i) => ({ ...entry, number: i }));
    expect(Buffer.compare(await writeBundle({ entries: numbered, pictures }), bundle)).toBe(0);
  });

  test('holds the sound of a spoken note as it was kept, and says how many there are', async () => {
    const bytes = writeWav({
      samples: Float32Array.from({ length: 800 }, (_, n) => Math.sin(n / 9)),
      sampleRate: 16_000,
    });
    const sound = { sha256: sha256(bytes), mime: 'audio/wav', bytes } as const;
    const written = await writeBundle({ entries: fixture.entries, pictures: [...pictures, sound] });
    const read = await wholeOf(written);
    expect(read.pictures.find(({ mime }) => mime === 'audio/wav')).toEqual({
      ...sound,
      bytes: new Uint8Array(bytes),
    });
    expect(read.pictures).toHaveLength(pictures.length + 1);
    const files = unzipSync(written);
    expect(Object.keys(files)).toContain(`sounds/${sound.sha256}.wav`);
    expect(JSON.parse(strFromU8(files['about.json']!))).toMatchObject({
      pictures: pictures.length,
      sounds: 1,
    });
    const elsewhere = { ...files, [`pictures/${sound.sha256}.wav`]: files[`sounds/${sound.sha256}.wav`]! };
    await expect(readBundle(zipSync(elsewhere))).rejects.toThrow('has no place in a bundle');
    const { [`sounds/${sound.sha256}.wav`]: _, ...without } = files;
    await expect(readBundle(zipSync(without))).rejects.toThrow('should hold 1 sounds, but holds 0');
  });

  test('an empty log is a bundle too', async () => {
    expect(await wholeOf(await writeBundle({ entries: [], pictures: [] }))).toEqual({
      entries: [],
      digest: '',
      pictures: [],
    });
  });

  test('a picture whose hash does not fit its bytes is refused before it is written', async () => {
    const wrong = { ...pictures[0]!, sha256: 'ab'.repeat(32) };
    await expect(writeBundle({ entries: [], pictures: [wrong] })).rejects.toMatchObject({
      field: wrong.sha256,
    });
  });
});

describe('what is not a bundle is refused, saying why', () => {
  const log = strToU8('{"id":"x"}\n');
  const about = (more: object = {}) =>
    strToU8(
      JSON.stringify({
        format: 'wristpin bundle',
        version: 1,
        entries: 1,
        pictures: 0,
        logSha256: sha256(log),
        ...more,
      }),
    );
  const zip = (files: Record<string, Uint8Array>) =>
    zipSync({ 'about.json': about(), 'log.jsonl': log, ...files });
  const refused = (bytes: Uint8Array, limits = standardBundleLimits) =>
    expect(readBundle(bytes, limits)).rejects.toMatchObject({ name: 'RecordError' });
  const refusal = (bytes: Uint8Array, limits = standardBundleLimits) =>
    readBundle(bytes, limits).then(
      () => 'taken',
      (error: Error) => error.message,
    );

  test('the plain one is taken, so that each refusal below has one cause', async () => {
    expect((await readBundle(zip({}))).entries).toEqual([{ id: 'x' }]);
  });

  test.each([
    '../evil.sh',
    '/etc/passwd',
    'pictures/../../evil.jpg',
    'pictures\\evil.jpg',
    'log.jsonl/',
    'pictures/short.jpg',
  ])('a file named %s', async (name) => {
    expect(await refusal(zip({ [name]: strToU8('x') }))).toContain('has no place in a bundle');
  });

  test('a file named like an object’s own machinery', async () => {
    const bytes = Buffer.from(zip({ aaproto__: strToU8('x') }));
    for (let at = bytes.indexOf('aaproto__'); at >= 0; at = bytes.indexOf('aaproto__', at))
      bytes.write('__', at);
    expect(await refusal(bytes)).toContain('“__proto__” has no place in a bundle');
  });

  test('a picture that is not what its name says', async () => {
    const name = `pictures/${'0'.repeat(64)}.jpg`;
    expect(await refusal(zip({ [name]: strToU8('x'), 'about.json': about({ pictures: 1 }) }))).toContain(
      'is damaged',
    );
  });

  test('a format or version that this program does not know', async () => {
    expect(await refusal(zip({ 'about.json': about({ version: 2 }) }))).toContain('version 2');
    expect(await refusal(zip({ 'about.json': about({ format: 'other' }) }))).toContain('does not say');
    expect(await refusal(zip({ 'about.json': strToU8('{') }))).toContain('not JSON');
  });

  test('a missing part, a damaged log, a line that is not JSON, text that is not UTF-8, a wrong count', async () => {
    expect(await refusal(zipSync({ 'about.json': about() }))).toContain('holds no log.jsonl');
    expect(await refusal(zipSync({ 'log.jsonl': log }))).toContain('holds no about.json');
    expect(await refusal(zip({ 'log.jsonl': strToU8('{"id":"y"}\n') }))).toContain('is damaged');
    for (const bad of [strToU8('{"id":\n'), new Uint8Array([0xff, 0xfe, 0x0a])]) {
      await refused(zip({ 'log.jsonl': bad, 'about.json': about({ logSha256: sha256(bad) }) }));
    }
    expect(await refusal(zip({ 'about.json': about({ entries: 2 }) }))).toContain(
      'should hold 2 entries, but holds 1',
    );
  });

  test('a zip bomb: the stated size is over the limit, whatever the packed size is', async () => {
    const bomb = zip({ 'log.jsonl': new Uint8Array(5_000_000) });
    expect(bomb.length).toBeLessThan(20_000);
    expect(await refusal(bomb, { ...standardBundleLimits, logBytes: 1_000_000 })).toContain(
      'would unpack to 5000000 bytes',
    );
    expect(await refusal(bomb, { ...standardBundleLimits, totalBytes: 1_000_000 })).toContain(
      'the whole bundle',
    );
  });

  test('a zip bomb that lies about its size unpacks no more than it states', async () => {
    const bomb = Buffer.from(zip({ 'log.jsonl': new Uint8Array(5_000_000) }));
    const size = Buffer.alloc(4);
    size.writeUInt32LE(5_000_000);
    for (let at = bomb.indexOf(size); at >= 0; at = bomb.indexOf(size, at + 1)) bomb.writeUInt32LE(11, at);
    await refused(bomb, { ...standardBundleLimits, logBytes: 1_000_000 });
  });

  const stated = (log: Uint8Array, more = {}) =>
    zip({ 'log.jsonl': log, 'about.json': about({ logSha256: sha256(log), ...more }) });

  test('100 MB of brackets in a few kilobytes, a line nested 3,000 deep, a line without end, too many lines', async () => {
    const brackets = stated(new Uint8Array(100_000_000).fill(0x5b));
    expect(brackets.length).toBeLessThan(120_000);
    expect(await refusal(brackets)).toContain('would unpack to 100000000 bytes');
    const within = stated(new Uint8Array(30_000_000).fill(0x5b));
    expect(await refusal(within)).toContain('Line 1 of log.jsonl has 30000000 bytes');
    const deep = strToU8(`{"body":${'['.repeat(3000)}${']'.repeat(3000)}}\n`);
    expect(await refusal(stated(deep))).toContain('nested deeper than 64 levels');
    const quoted = strToU8(`{"id":"x","body":"${'[\\"['.repeat(3000)}"}\n`);
    expect(await refusal(stated(quoted))).toBe('taken');
    const many = strToU8('{}\n'.repeat(2000));
    expect(await refusal(stated(many), { ...standardBundleLimits, lines: 1000 })).toContain(
      'more than 1000 lines',
    );
    expect(await refusal(stated(strToU8('null\n')))).toContain('is no line of a log');
  });

  test('lines that do not have the digest that is stated', async () => {
    expect(await refusal(zip({ 'about.json': about({ digest: 'ab'.repeat(32) }) }))).toContain('digest');
  });

  test('more files than the limit', async () => {
    const many = await writeBundle({ entries: fixture.entries, pictures });
    expect(await refusal(many, { ...standardBundleLimits, files: 4 })).toContain('more than 4 files');
  });

  test('not a ZIP, an empty file, and a bundle cut off or changed anywhere', async () => {
    await refused(strToU8('plain text'));
    await refused(new Uint8Array());
    await fc.assert(
      fc.asyncProperty(fc.nat(bundle.length - 1), async (end) => {
        await refused(bundle.subarray(0, end));
      }),
      { seed: 9, numRuns: 60 },
    );
  });

  test('a changed byte is noticed or changes nothing', async () => {
    const whole = await readBundle(bundle);
    const said = ({ entries, digest, pictures: shown }: typeof whole) => ({
      entries,
      digest,
      pictures: shown,
    });
    await fc.assert(
      fc.asyncProperty(fc.nat(bundle.length - 1), fc.integer({ min: 1, max: 255 }), async (at, by) => {
        const changed = bundle.slice();
        changed[at]! ^= by;
        const read = await readBundle(changed).catch((error: Error) => error);
        if (read instanceof Error) expect(read.name).toBe('RecordError');
        else expect(said(read)).toEqual(said(whole)); // each picture was held against its hash
      }),
      { seed: 10, numRuns: campaign(40, 150) },
    );
  });
});
