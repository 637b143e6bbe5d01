import fc from 'fast-check';
import { expect, test } from 'vitest';
import { typesetter } from '../../../src/record/pdf/typesetter.js';
import { campaign } from '../../support/campaign.js';
import { shippedFonts } from '../fonts.js';

const fonts = await shippedFonts();
const set = (text: string) => typesetter(fonts).runs(text);
const joined = (text: string) =>
  set(text)
    .map((run) => run.text)
    .join('');

test('text that the first face holds is one run', () => {
  expect(set('140 in-lb (15.8 N·m) ± 4 % – “dry” ½')).toEqual([
    { text: '140 in-lb (15.8 N·m) ± 4 % – “dry” ½', font: 'face0' },
  ]);
});

test('a letter of the second subset does not take its word along', () => {
  expect(set('Kováč')).toEqual([
    { text: 'Ková', font: 'face0' },
    { text: 'č', font: 'face1' },
  ]);
});

test('signs that bench writing needs and the first face lacks come from the last one', () => {
  for (const sign of ['Ω', '≥', '≤', '″', '′', 'µ']) expect(set(sign)[0]?.font, sign).toBe('face2');
});

test('a letter written as two signs is set as one', () => {
  expect(joined('Jose\u0301')).toBe('José');
});

test('every printable sign is set, or marked and reported', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme', maxLength: 60 }), (text) => {
      const type = typesetter(fonts);
      const out = type
        .runs(text)
        .map((run) => run.text)
        .join('');
      expect(out.includes('[?]') && !text.includes('[?]')).toBe(type.missed());
      if (!type.missed() && /^[ -~]*$/.test(text)) expect(out).toBe(text);
    }),
    { seed: 3, numRuns: campaign(100, 500) },
  );
});
