import { normal, random } from './engine-sound.js';

/** Sounds of a shop and its yard that are no engine, made from first causes; each seed is another one of its kind. */
type Made = (t: number, n: number) => number;

const rate = 16_000;
const seconds = 5;

const made = (of: Made) => ({
  sampleRate: rate,
  samples: Float32Array.from({ length: seconds * rate }, (_, i) => 0.2 * of(i / rate, i)),
});
const sine = (hz: number, t: number) => Math.sin(2 * Math.PI * hz * t);

/** A universal motor’s whine that breathes with its load, and much air. */
function vacuum(seed: number) {
  const uniform = random(seed);
  const hz = 320 + 260 * uniform();
  let turns = 0;
  let air = 0;
  return made((t) => {
    turns += (hz * (1 + 0.01 * sine(0.4, t))) / rate;
    air = 0.7 * air + 0.5 * normal(uniform);
    return 0.5 * Math.sin(2 * Math.PI * turns) + 0.2 * Math.sin(4 * Math.PI * turns) + 0.9 * air;
  });
}

/** Blades in a stream of air: little tone, much rush. */
function fan(seed: number) {
  const uniform = random(seed);
  const hz = 60 + 90 * uniform();
  let air = 0;
  return made((t) => {
    air = 0.95 * air + 0.3 * normal(uniform);
    return (1 + 0.15 * sine(hz, t)) * air + 0.1 * sine(hz, t);
  });
}

/** Blows by hand: about two a second, never quite in time. */
function hammer(seed: number) {
  const uniform = random(seed);
  const blows: number[] = [];
  for (let t = 0.2; t < seconds; t += 0.35 + 0.25 * uniform()) blows.push(t);
  return made((t) =>
    blows.reduce((sum, at) => {
      const s = t - at;
      return s < 0 || s > 0.4
        ? sum
        : sum + Math.exp(-s / 0.04) * (sine(830, s) + sine(2140, s) + normal(uniform));
    }, 0.01 * normal(uniform)),
  );
}

/** Strokes of a hand saw: rasping, two and a half a second. */
function handSaw(seed: number) {
  const uniform = random(seed);
  const pace = 1 + 0.4 * uniform();
  return made((t) => {
    const stroke = Math.abs(sine(pace * (1 + 0.05 * sine(0.3, t)), t));
    return stroke ** 2 * normal(uniform) * (0.6 + 0.4 * sine(170 + 40 * stroke, t));
  });
}

/** Calls that glide, with pauses. */
function bird(seed: number) {
  const uniform = random(seed);
  const [base, pace] = [2200 + 1500 * uniform(), 2 + 3 * uniform()];
  let turns = 0;
  return made((t) => {
    const part = (t * pace) % 1;
    turns += (base * (1 + 0.3 * Math.sin(7 * part))) / rate;
    return (
      (part < 0.5 ? Math.sin(Math.PI * 2 * part) : 0) * Math.sin(2 * Math.PI * turns) + 0.02 * normal(uniform)
    );
  });
}

/** Chords of a tune, a new one each half second, over a bass. */
function tune(seed: number) {
  const uniform = random(seed);
  const chords = Array.from({ length: 12 }, () =>
    Array.from({ length: 4 }, () => 110 * 2 ** (Math.floor(30 * uniform()) / 12)),
  );
  return made((t) => {
    const s = t % 0.5;
    return chords[Math.floor(t / 0.5)]!.reduce(
      (sum, hz) => sum + 0.25 * Math.exp(-s) * (sine(hz, t) + 0.5 * sine(2 * hz, t) + 0.3 * sine(3 * hz, t)),
      0.005 * normal(uniform),
    );
  });
}

function rain(seed: number) {
  const uniform = random(seed);
  let drop = 0;
  return made(() => {
    drop = 0.9 * drop + (uniform() < 0.004 ? 3 * normal(uniform) : 0);
    return drop * normal(uniform) + 0.3 * normal(uniform);
  });
}

/** One steady tone, as of a beeper. */
function tone(seed: number) {
  const uniform = random(seed);
  const hz = 150 + 900 * uniform();
  return made((t) => sine(hz, t) + 0.01 * normal(uniform));
}

export const otherSounds = { vacuum, fan, hammer, handSaw, bird, tune, rain, tone };
