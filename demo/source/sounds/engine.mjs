/**
 * An invented engine heard from a bench: one push of pressure a firing, ringing in a muffler and a thin housing, a fan
 * tone, and the shop's own noise; a phone's microphone hears little below 100 Hz. Fixed seeds: the same file each time.
 */
export const sampleRate = 12_000;

/** mulberry32: small, fast, and the same on every machine */
export function chance(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}

const gauss = (next) => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());

/** The firings of a four-stroke single whose speed is `rpmAt(t)`, `missing` of them without a bang. */
function firings({ from, to, rpmAt, missing, jitter, next }) {
  const list = [];
  for (let t = from; t < to; t += (120 / rpmAt(t)) * (1 + jitter * gauss(next))) {
    list.push({ t, strength: next() < missing ? 0.08 : 0.8 + 0.25 * next() });
  }
  return list;
}

/** A pull of the rope: compression felt as three or four dull beats, and the rattle of the starter. */
function pull({ at, next }) {
  const beats = 3 + Math.floor(2 * next());
  return Array.from({ length: beats }, (_, i) => ({ t: at + 0.16 * i * (1 - 0.03 * i), strength: 0.22 }));
}

const rings = [
  { hz: 210, decay: 26, level: 0.9 },
  { hz: 540, decay: 60, level: 0.6 },
  { hz: 1450, decay: 190, level: 0.35 },
];

export function recorded({ seconds, pulls, runs, seed, noise = 0.012 }) {
  const next = chance(seed);
  const samples = new Float64Array(Math.round(seconds * sampleRate));
  const bangs = [
    ...pulls.flatMap((at) => pull({ at, next })),
    ...runs.flatMap((run) => firings({ missing: 0, jitter: 0.006, ...run, next })),
  ];
  for (const bang of bangs) ring(samples, bang);
  for (const at of pulls) rattle(samples, at, next);
  for (const run of runs) fan(samples, run);
  for (let i = 0; i < samples.length; i++) samples[i] += noise * gauss(next);
  return asHeard(samples);
}

function ring(samples, { t, strength }) {
  const start = Math.round(t * sampleRate);
  const end = Math.min(samples.length, start + Math.round(0.12 * sampleRate));
  for (let i = start; i < end; i++) {
    const s = (i - start) / sampleRate;
    for (const { hz, decay, level } of rings)
      samples[i] += strength * level * Math.exp(-decay * s) * Math.sin(2 * Math.PI * hz * s);
  }
}

function rattle(samples, at, next) {
  const start = Math.round(at * sampleRate);
  for (let i = 0; i < 0.5 * sampleRate && start + i < samples.length; i++)
    samples[start + i] += 0.05 * Math.exp((-3 * i) / sampleRate) * gauss(next);
}

/** Seven blades of a cooling fan. */
function fan(samples, { from, to, rpmAt }) {
  let turns = 0;
  for (let i = Math.round(from * sampleRate); i < Math.min(samples.length, to * sampleRate); i++) {
    turns += rpmAt(i / sampleRate) / 60 / sampleRate;
    samples[i] += 0.05 * Math.sin(2 * Math.PI * 7 * turns);
  }
}

/** A first-order high-pass at 100 Hz, then the loudest sample to 0.9. */
function asHeard(samples) {
  const keep = Math.exp((-2 * Math.PI * 100) / sampleRate);
  const out = new Float64Array(samples.length);
  for (let i = 1; i < samples.length; i++) out[i] = keep * (out[i - 1] + samples[i] - samples[i - 1]);
  const loudest = out.reduce((most, s) => Math.max(most, Math.abs(s)), 0);
  return out.map((s) => (0.9 * s) / loudest);
}

/** RIFF WAVE, one channel, 16 bits. */
export function wav(samples) {
  const bytes = Buffer.alloc(44 + 2 * samples.length);
  bytes.write('RIFF', 0);
  bytes.writeUInt32LE(36 + 2 * samples.length, 4);
  bytes.write('WAVEfmt ', 8);
  bytes.writeUInt32LE(16, 16);
  bytes.writeUInt16LE(1, 20);
  bytes.writeUInt16LE(1, 22);
  bytes.writeUInt32LE(sampleRate, 24);
  bytes.writeUInt32LE(2 * sampleRate, 28);
  bytes.writeUInt16LE(2, 32);
  bytes.writeUInt16LE(16, 34);
  bytes.write('data', 36);
  bytes.writeUInt32LE(2 * samples.length, 40);
  samples.forEach((s, i) => {
    bytes.writeInt16LE(Math.round(32_767 * s), 44 + 2 * i);
  });
  return bytes;
}
