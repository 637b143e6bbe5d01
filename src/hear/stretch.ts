import { type Bands, meanOf, totalOf } from './frames.js';

/** Where in a sound somebody speaks, how far above the noise, and the same stretch with the noise taken out. */
export interface Stretch {
  readonly frames: Bands;
  /** mean of the speech over the noise, dB */
  readonly aboveNoiseDb: number;
}

/** The quietest tenth of a sound stands for the noise where nothing was heard before the press. */
const quietShare = 0.1;
/** Of what was heard before the press so much is noise; the rest may be a blow, which nothing takes out. */
const steadyShare = 0.8;
const fewestFrames = 12;
/** of the loudest; pauses within a phrase are shorter than the gap */
const speechDb = 25;
const longestGap = 35;
const marginFrames = 4;
/** What is left of a band that is all noise: taking out more makes tones of it. */
const leftOfNoise = 0.05;

/**
 * The stretch that was spoken. `before` is what was heard before the press; its mean in each band is taken out.
 * Method: power subtraction with a floor (S. Boll, IEEE Trans. ASSP 27, 1979). Undefined when nothing stands out.
 */
export function spokenStretch(all: Bands, before: Bands): Stretch | undefined {
  if (all.length < fewestFrames) return undefined;
  const noise = meanOf(
    before.length >= fewestFrames ? quieter(before, steadyShare) : quieter(all, quietShare),
  );
  const without = (frame: Float64Array) =>
    frame.map((power, b) => Math.max(power - noise[b]!, leftOfNoise * Math.min(power, noise[b]!)));
  const clean = all.map(without);
  const loud = clean.map(totalOf);
  const loudest = quantile(loud, 0.98);
  const hiss = totalOf(noise);
  // the quietest tenth is quieter than the noise is as a rule
  const leastOver = before.length >= fewestFrames ? 0.5 : 1.5;
  // a noise that swells and fades leaves something of itself: what speaks is louder than that
  const swell =
    before.length >= fewestFrames
      ? quantile(
          before.map((frame) => totalOf(without(frame))),
          steadyShare,
        )
      : 0;
  const least = Math.max(loudest * 10 ** (-speechDb / 10), leastOver * hiss, 1.5 * swell);
  const isSpeech = loud.map((power) => power > least);
  const span = longestSpan(isSpeech, loud);
  if (!span) return undefined;
  const [from, to] = span;
  const speech = loud.slice(from, to);
  const mean = speech.reduce((sum, each) => sum + each, 0) / speech.length;
  return {
    frames: clean.slice(Math.max(0, from - marginFrames), to + marginFrames),
    aboveNoiseDb: 10 * Math.log10(mean / hiss),
  };
}

function quieter(frames: Bands, share: number): Bands {
  const sorted = [...frames].sort((a, b) => totalOf(a) - totalOf(b));
  return sorted.slice(0, Math.max(fewestFrames, Math.round(share * frames.length)));
}

function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;
}

/** Of the stretches that a pause parts, the one in which most was said. */
function longestSpan(isSpeech: readonly boolean[], loud: readonly number[]): [number, number] | undefined {
  const spans: [number, number][] = [];
  isSpeech.forEach((is, n) => {
    const last = spans.at(-1);
    if (!is) return;
    if (last && n - last[1] <= longestGap) last[1] = n + 1;
    else spans.push([n, n + 1]);
  });
  const said = ([from, to]: [number, number]) =>
    loud.slice(from, to).reduce((sum, power) => sum + Math.log10(1 + power * 1e9), 0);
  return spans.filter(([from, to]) => to - from >= fewestFrames).sort((a, b) => said(b) - said(a))[0];
}
