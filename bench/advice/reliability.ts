import type { Bin } from './calibration.js';

const size = 420;
const edge = { left: 64, right: 20, top: 20, bottom: 60 };
const across = (p: number): string => (edge.left + p * (size - edge.left - edge.right)).toFixed(1);
const down = (p: number): string => (size - edge.bottom - p * (size - edge.top - edge.bottom)).toFixed(1);

/** Grays and a blue that can be read on white paper and on a dark page. */
const ink = { line: '#808890', words: '#7a828a', mark: '#2f81c4' };
const ticks = [0, 0.2, 0.4, 0.6, 0.8, 1];

/** How often what was predicted is there, bin by bin, with two standard errors to either side, as an SVG. */
export function reliabilitySvg(bins: readonly Bin[], caption: string): string {
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${size} ${size}" role="img" aria-label="${caption}" font-family="sans-serif" font-size="13">`,
    `<title>${caption}</title>`,
    `<g fill="${ink.words}">${ticks.map(tick).join('')}`,
    `<text x="${across(0.5)}" y="${size - 16}" text-anchor="middle">predicted probability</text>`,
    `<text transform="translate(18 ${down(0.5)}) rotate(-90)" text-anchor="middle">part that is there</text></g>`,
    `<path d="M${across(0)} ${down(0)}H${across(1)}M${across(0)} ${down(0)}V${down(1)}" stroke="${ink.line}" fill="none"/>`,
    `<path d="M${across(0)} ${down(0)}L${across(1)} ${down(1)}" stroke="${ink.line}" stroke-dasharray="4 4" fill="none"/>`,
    ...bins.filter((b) => b.n > 0).map(mark),
    '</svg>\n',
  ].join('\n');
}

const tick = (p: number): string =>
  `<text x="${across(p)}" y="${size - edge.bottom + 18}" text-anchor="middle">${p}</text>` +
  `<text x="${edge.left - 8}" y="${Number(down(p)) + 4}" text-anchor="end">${p}</text>`;

function mark({ n, predicted, present, standardError }: Bin): string {
  const [low, high] = [present - 2 * standardError, present + 2 * standardError];
  const x = across(predicted);
  return (
    `<g><title>${n} predictions of ${predicted.toFixed(3)} on average: ${present.toFixed(3)} there</title>` +
    `<path d="M${x} ${down(Math.max(0, low))}V${down(Math.min(1, high))}" stroke="${ink.mark}" stroke-width="2"/>` +
    `<circle cx="${x}" cy="${down(present)}" r="4" fill="${ink.mark}"/></g>`
  );
}
