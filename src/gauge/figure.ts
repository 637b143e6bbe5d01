import { percent } from '../phrase/index.js';
/** A number for a sentence: two more digits than the first digit of its uncertainty, at most nine significant. */
export function figure(x: number, u = 0, unit?: string): string {
  // of two equal figures binary arithmetic leaves less than this
  const text = u > 0 ? byUncertainty(x, u) : Math.abs(x) < 1e-12 ? '0' : trimmed(x.toPrecision(9));
  return unit ? `${text} ${unit}` : text;
}

function byUncertainty(x: number, u: number): string {
  const decimals = Math.min(12, Math.max(0, 1 - Math.floor(Math.log10(u))));
  return trimmed(x.toFixed(decimals));
}

/** Trailing zeros say nothing the uncertainty does not say better. */
function trimmed(text: string): string {
  const number = Number(text);
  return text.includes('e')
    ? String(number)
    : text.includes('.')
      ? text.replace(/\.?0+$/, '').replace(/^-0$/, '0')
      : text;
}

/** A probability under a spread without end: a nought or a one is only rounding. */
export const chanceOf = (p: number): string => percent(Math.min(1 - 1e-9, Math.max(1e-9, p)), 1);

/** Three significant digits, never above x: for a bound one must stay under. */
export function figureDown(x: number, unit?: string): string {
  const step = 10 ** (Math.floor(Math.log10(x)) - 2);
  const text = trimmed((Math.floor(x / step + 1e-9) * step).toPrecision(3));
  return unit ? `${text} ${unit}` : text;
}
