import { createHash } from 'node:crypto';
import { strToU8, zipSync } from 'fflate';
import { bodies } from '../../src/job/entry.js';
import { jobA, uuid } from './support.js';

/** Inputs as nobody should send them, the same for the same seed. */
export type Chance = () => number;

const pick = <T>(next: Chance, from: readonly T[]): T => from[Math.floor(next() * from.length)]!;
const upTo = (next: Chance, most: number) => Math.floor(next() * most);
const repeated = (next: Chance, sign: string, most: number) => sign.repeat(upTo(next, most));

const words = [
  '',
  'head bolts 140 in-lb',
  '=HYPERLINK("http://x","y")',
  '\u001b[2J\u0007',
  '\u0000',
  '\ud800',
  '\u202e1-81/5',
  'constructor',
  '__proto__',
  'toString',
  '140 in-lb',
  `0.${'1'.repeat(150)} mm`,
  `1e${'9'.repeat(20)} in`,
  '5/16-18',
  '-1/0 psi',
  'NaN rpm',
  '../../etc/passwd',
  '<script>alert(1)</script>',
  '٣٫٥ mm',
  '½ qt',
] as const;

function text(next: Chance): string {
  if (next() < 0.8) return pick(next, words);
  return repeated(
    next,
    pick(next, ['"', '[', '{', "'", '- ', 'a: ', '\n', '\t', '&a ', '*a ', '|', '💥']),
    4000,
  );
}

export function value(next: Chance, depth = 0): unknown {
  const kind = upTo(next, depth > 5 ? 5 : 9);
  if (kind === 0) return text(next);
  if (kind === 1) return pick(next, [0, -1, 1, 1e308, -0, 2 ** 53, 0.1, 1e-320, 999_999]);
  if (kind === 2) return pick(next, [null, true, false]);
  if (kind === 3) return pick(next, Object.keys(bodies));
  if (kind === 4)
    return {
      written: text(next),
      kind: pick(next, ['torque', 'length', 'x']),
      si: upTo(next, 9),
      unit: text(next),
    };
  if (kind === 5) return Array.from({ length: upTo(next, 6) }, () => value(next, depth + 1));
  if (kind === 6) return nested(next);
  return Object.fromEntries(
    Array.from({ length: upTo(next, 6) }, () => [pick(next, fieldNames(next)), value(next, depth + 1)]),
  );
}

/** Of the kinds' own fields most of all: what fits half is what slips through. */
const fieldsOf = (kind: string): string[] =>
  Object.keys((bodies[kind as keyof typeof bodies] as { shape?: object } | undefined)?.shape ?? { a: 0 });

function fieldNames(next: Chance): readonly string[] {
  const kind = pick(next, Object.keys(bodies));
  return [...fieldsOf(kind), '__proto__', 'constructor', 'toJSON', 'length'];
}

function nested(next: Chance): unknown {
  let inner: unknown = 1;
  for (let i = upTo(next, next() < 0.02 ? 3000 : 90); i > 0; i--)
    inner = next() < 0.5 ? [inner] : { a: inner };
  return inner;
}

/** A line whose envelope fits more often than not, so that its body is looked at. */
export function line(next: Chance): Record<string, unknown> {
  const kind = pick(next, [...Object.keys(bodies), 'kind-of-tomorrow']);
  const shape = fieldsOf(kind);
  const body = Object.fromEntries(shape.filter(() => next() < 0.8).map((field) => [field, value(next)]));
  const own = {
    id: uuid(100_000 + upTo(next, 1e9)),
    job: pick(next, [jobA, jobA, 'shop', uuid(upTo(next, 50))]),
    at: pick(next, [
      '2026-03-01T08:00:00Z',
      '2026-03-01T08:00:00+14:00',
      '9999-12-31T23:59:59Z',
      '0001-01-01T00:00:00Z',
    ]),
    by: 'bench',
    kind,
    v: pick(next, [1, 1, 1, 2, 2 ** 31 - 1]),
    body: next() < 0.85 ? body : value(next),
  };
  if (next() < 0.2)
    return { ...own, [pick(next, ['id', 'job', 'at', 'by', 'kind', 'v', 'rank'])]: value(next) };
  return own;
}

/** Bytes with a few of them changed, cut off or doubled. */
export function mutated(next: Chance, given: Uint8Array): Uint8Array {
  const bytes = given.slice(0, next() < 0.3 ? upTo(next, given.length + 1) : given.length);
  for (let i = upTo(next, 12); i > 0 && bytes.length > 0; i--)
    bytes[upTo(next, bytes.length)] = upTo(next, 256);
  return next() < 0.1 ? Uint8Array.from([...bytes, ...bytes.subarray(0, 500)]) : bytes;
}

export const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');

/** A ZIP that is a bundle to look at, with a log that is not to be believed. */
export function bundle(next: Chance): Uint8Array {
  const lines = Array.from({ length: upTo(next, 20) }, () =>
    next() < 0.9 ? JSON.stringify(line(next)) : text(next),
  );
  const filled =
    next() < 0.05 ? new Uint8Array(upTo(next, 40_000_000)).fill(0x5b) : strToU8(lines.join('\n'));
  const about = {
    ...{
      format: 'wristpin bundle',
      version: 1,
      entries: lines.length,
      pictures: 0,
      logSha256: sha256(filled),
    },
    ...(next() < 0.2 && { [pick(next, ['entries', 'version', 'digest', 'logSha256'])]: value(next) }),
  };
  const files = { 'about.json': strToU8(JSON.stringify(about)), 'log.jsonl': filled };
  return next() < 0.3 ? mutated(next, zipSync(files)) : zipSync(files);
}

/** A pack, or what calls itself one. */
export function pack(next: Chance): string {
  const head = next() < 0.7 ? 'pack: { id: ours, title: Ours }\n' : '';
  const parts = [
    () => `faults: ${repeated(next, '[', 3000)}`,
    () => repeated(next, '"', 60_000),
    () => repeated(next, '- ', 60_000),
    () => `a: &a [${'*a,'.repeat(upTo(next, 2000))}]`,
    () => Array.from({ length: 9 }, (_, i) => `a${i}: &a${i} [${`*a${i - 1},`.repeat(9)}]`).join('\n'),
    () => `faults:\n${'  - id: x\n    name: y\n'.repeat(upTo(next, 500))}`,
    () => `? ${repeated(next, '{ ? ', 800)}`,
    () => `checks: ${JSON.stringify(value(next))}`,
    () => `x: !!js/function "${text(next)}"`,
    () => text(next),
  ];
  return head + pick(next, parts)();
}

const heads = [
  'GET / HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n',
  'POST /api/entries HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Length: 2\r\n\r\n{}',
  'POST /api/entries HTTP/1.1\r\nHost: 127.0.0.1\r\nTransfer-Encoding: chunked\r\n\r\n2\r\n{}\r\n0\r\n\r\n',
  'PUT /api/pictures/ HTTP/1.1\r\nHost: x\r\nContent-Length: -1\r\n\r\n',
  'GET http://elsewhere.example/ HTTP/1.0\r\n\r\n',
  'CONNECT 127.0.0.1:1 HTTP/1.1\r\n\r\n',
  'GET /api/events HTTP/1.1\r\nHost: 127.0.0.1\r\nLast-Event-ID: 9\r\n\r\n',
  '\u0016\u0003\u0001\u0002\u0000\u0001',
] as const;

/** What is written to the port itself, whether it is HTTP or not. */
export function wire(next: Chance): Uint8Array {
  const head = strToU8(pick(next, heads), true);
  return mutated(next, next() < 0.1 ? strToU8(head.join(repeated(next, 'A', 3000))) : head);
}

export function sheet(next: Chance): string {
  if (next() < 0.05) return 'oil 1\n'.repeat(10_000);
  return Array.from({ length: upTo(next, 30) }, () => text(next)).join(
    pick(next, ['\n', '\r\n', ' ', '\u2028']),
  );
}

export function table(next: Chance): string {
  const rows = Array.from({ length: upTo(next, 30) }, () =>
    Array.from({ length: upTo(next, 8) }, () => pick(next, [text(next), '12.50', '"', 'part'])).join(
      pick(next, [',', ';', '\t']),
    ),
  );
  return (next() < 0.7 ? 'part,supplier,price\n' : '') + rows.join('\n');
}

/** A RIFF file whose head says anything. */
export function sound(next: Chance): Uint8Array {
  const bytes = new Uint8Array(44 + upTo(next, 4000));
  const view = new DataView(bytes.buffer);
  bytes.set(strToU8('RIFF'), 0);
  view.setUint32(4, next() < 0.7 ? bytes.length - 8 : upTo(next, 2 ** 32), true);
  bytes.set(strToU8('WAVEfmt '), 8);
  view.setUint32(16, 16, true);
  view.setUint16(20, pick(next, [1, 3, 7, 0xfffe, 0]), true);
  view.setUint16(22, pick(next, [1, 2, 0, 65_535]), true);
  view.setUint32(24, pick(next, [44_100, 8000, 0, 1, 2 ** 31]), true);
  view.setUint16(34, pick(next, [8, 16, 24, 32, 64, 0, 7]), true);
  bytes.set(strToU8('data'), 36);
  view.setUint32(40, next() < 0.7 ? bytes.length - 44 : upTo(next, 2 ** 32), true);
  return next() < 0.3 ? mutated(next, bytes) : bytes;
}
