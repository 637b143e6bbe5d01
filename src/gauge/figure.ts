/** A number for a sentence: two more digits than the first digit of its uncertainty, at most nine significant. */
export function figure(x: number, u = 0, unit?: string): string {
  const text = u > 0 ? byUncertainty(x, u) : trimmed(x.toPrecision(9));
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

/** A probability as a person reads it; never rounded to a certainty it has not. */
export function percent(p: number): string {
  if (p < 0.001) return 'under 0.1 %';
  return p > 0.999 ? 'over 99.9 %' : `${Number((100 * p).toFixed(1))} %`;
}

/** Three significant digits, never above x: for a bound one must stay under. */
export function figureDown(x: number, unit?: string): string {
  const step = 10 ** (Math.floor(Math.log10(x)) - 2);
  const text = trimmed((Math.floor(x / step + 1e-9) * step).toPrecision(3));
  return unit ? `${text} ${unit}` : text;
}
