import { cycleOf, type EngineKind, firingHz } from './engine-kind.js';
import { decimate } from './resample.js';
import { requireSound, type Sound, seconds } from './sound.js';
import type { TrackPoint } from './track.js';
import { complexSpectrum, hann, nextPowerOfTwo } from './transform.js';

/** Levels over time and frequency, for a picture. */
export interface Spectrogram {
  /** middles of the columns, seconds */
  readonly times: readonly number[];
  /** from one row to the next; row 0 is 0 Hz */
  readonly stepHz: number;
  /** one column a time, decibels below the loudest place of the whole picture, 0 or less */
  readonly columnsDb: readonly Float32Array[];
}

const windowS = 0.25;
/** Below this everything is black. */
const lowestDb = -90;

/**
 * Levels over time and frequency: at most `columns` columns, evenly over the sound, up to `topHz`.
 *
 * Method: Hann windows of 0.25 s on the sound at a lower rate, filled up with zeros to twice their length; decibels below
 * the loudest place, cut at −90. A line is 6 Hz wide, so that lines of firings nearer than that run into one.
 * A sound shorter than a window is one column. Throws a ListenError for a sound that cannot be listened to.
 */
export function spectrogram(sound: Sound, { topHz = 800, columns = 600 } = {}): Spectrogram {
  requireSound(sound);
  const step = Math.max(1, Math.floor(sound.sampleRate / (2.5 * topHz)));
  const { values, rate } = decimate({ values: sound.samples, rate: sound.sampleRate }, step);
  const length = Math.min(values.length, Math.round(windowS * rate));
  const size = nextPowerOfTwo(2 * length);
  const taper = hann(length);
  const count = Math.max(1, Math.min(columns, Math.floor(seconds(sound) / (windowS / 8))));
  const spare = values.length - length;
  const starts = Array.from({ length: count }, (_, n) => Math.round((spare * n) / Math.max(1, count - 1)));
  const rows = Math.min(size / 2, Math.floor((topHz * size) / rate) + 1);
  const raw = starts.map((from) => columnOf(values, from, taper, size, rows));
  const top = raw.reduce(
    (best, column) => column.reduce((a, b) => Math.max(a, b), best),
    Number.NEGATIVE_INFINITY,
  );
  return {
    times: starts.map((from) => (from + length / 2) / rate),
    stepHz: rate / size,
    columnsDb: raw.map((column) => column.map((level) => Math.max(lowestDb, level - top))),
  };
}

function columnOf(
  values: Float32Array,
  from: number,
  taper: Float64Array,
  size: number,
  rows: number,
): Float32Array {
  const spectrum = complexSpectrum(size, values, from, taper);
  return Float32Array.from(
    { length: rows },
    (_, k) => 10 * Math.log10(spectrum[2 * k]! ** 2 + spectrum[2 * k + 1]! ** 2 + 1e-12),
  );
}

/** One firing order of the tracked speed, to be drawn over the spectrogram: believe a track whose lines lie under it. */
export interface OrderLine {
  readonly order: number;
  readonly points: readonly { readonly t: number; readonly hz: number }[];
}

/**
 * The first firing orders of a tracked speed: order × firings a second, rpm/120 × cylinders of a four-stroke, rpm/60 of a
 * two-stroke. Example: a four-stroke single at 3000 rpm: 25, 50, 75 … Hz.
 */
export function orderLines(
  track: readonly TrackPoint[],
  engine: EngineKind,
  orders = 6,
): readonly OrderLine[] {
  const cycle = cycleOf(engine);
  return Array.from({ length: orders }, (_, i) => ({
    order: i + 1,
    points: track.map(({ t, rpm }) => ({ t, hz: (i + 1) * firingHz(cycle, rpm) })),
  }));
}
