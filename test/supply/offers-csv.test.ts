import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { offersSample, readOffersCsv } from '../../src/supply/index.js';

const known = {
  suppliers: [
    { id: 'north', name: 'Northside Parts' },
    { id: 'harbor', name: 'Harbor Supply' },
  ],
  parts: [
    { id: 'head-gasket', name: 'Head gasket' },
    { id: 'bowl-ring', name: 'Bowl ring' },
    { id: 'piston-pin-clips', name: 'Piston pin clips' },
  ],
  currency: '$',
};
const read = (text: string) => readOffersCsv(text, known);
const offers = (text: string) => {
  const found = read(text);
  if ('problems' in found) throw new Error(JSON.stringify(found.problems));
  return found.offers;
};
const problems = (text: string) => {
  const found = read(text);
  return 'problems' in found
    ? found.problems.map(({ line, column, words }) => `${line} ${column ?? ''}: ${words}`)
    : [];
};
const head = 'supplier,offer,contains,price,days,number,fit,breaks';

describe('offers from a file', () => {
  test('the sample on the screen is one that is taken', () => {
    const [gasket, kit, clips] = offers(offersSample);
    expect(gasket).toMatchObject({ supplier: 'north', price: 6.5, days: 2, number: 'HG-21', fit: 'sure' });
    expect(gasket!.contains).toEqual([{ part: 'head-gasket', name: 'Head gasket', count: 1 }]);
    expect(kit!.contains).toEqual([
      { part: 'bowl-ring', name: 'Bowl ring', count: 1 },
      { part: 'intake-gaskets', name: 'intake gaskets', count: 2 },
      { part: 'inlet-needle', name: 'inlet needle', count: 1 },
    ]);
    expect(clips!.breaks).toEqual([
      { from: 5, price: 0.6 },
      { from: 10, price: 0.45 },
    ]);
  });

  test('columns stand in any order, semicolons and tabs part them too, quotes hold commas', () => {
    const [one] = offers('price;offer;supplier\n$4.20;"Head gasket";harbor supply\n');
    expect(one).toMatchObject({ supplier: 'harbor', price: 4.2, name: 'Head gasket', fit: 'likely' });
    expect(offers('supplier\toffer\tprice\nnorth\tHead gasket\t3\n')).toHaveLength(1);
    expect(offers(`\uFEFF${head}\r\nnorth,"Set, ""small""",head-gasket,3,,,,\r\n\r\n`)[0]!.name).toBe(
      'Set, "small"',
    );
  });

  test('one broken row, and nothing is taken: each with its line, its column and why', () => {
    expect(
      problems(
        [
          head,
          'Northside Parts,Head gasket,,6.50,,,,',
          'Nowhere Ltd,Head gasket,,6.50,,,,',
          'Northside Parts,Bowl ring,,"6,50",,,,',
          'Northside Parts,Fan belt,,3,,,,',
          'Northside Parts,Clips,Piston pin clips,1,soon,,perhaps,1 at 2',
          'Northside Parts,,,1,,,,',
        ].join('\n'),
      ),
    ).toEqual([
      '3 supplier: the shop has no supplier “Nowhere Ltd”; add it with its shipping first',
      '4 price: “6,50” is no price, as 12.50 is one',
      '5 offer: no part of the list is in it: “Fan belt”',
      '6 days: “soon” is no whole number of days',
      '6 fit: “perhaps” is none of sure, likely, unsure',
      '6 breaks: “1 at 2” is no price break, as “5 at 0.60” is one',
      '7 offer: the offer has no name',
    ]);
  });

  test.each([
    ['no text', '', '1 : there is no offer under the column names'],
    ['names only', head, '1 : there is no offer under the column names'],
    ['a missing column', 'supplier,offer\nnorth,Head gasket\n', '1 : the column “price” is missing'],
    [
      'a strange column',
      'supplier,offer,price,stock\nnorth,Head gasket,1,4\n',
      /^1 : there is no column “stock”/,
    ],
    [
      'a column twice',
      'supplier,offer,price,price\nnorth,Head gasket,1,4\n',
      '1 : the column “price” is there twice',
    ],
    ['a comma too many', 'supplier,offer,price\nnorth,Head gasket,1,50\n', /^2 : 4 fields under 3 columns/],
    [
      'an open quote',
      'supplier,offer,price\nnorth,"Head gasket,1\n',
      '2 : a quote opens here and never closes',
    ],
    [
      'the same offer twice',
      'supplier,offer,price\nnorth,Head gasket,1\nnorth,head gasket,2\n',
      /^3 : “head gasket” of this supplier stands on line 2/,
    ],
    [
      'a part twice in a kit',
      `${head}\nnorth,Kit,head gasket + head gasket,1,,,,\n`,
      /^2 contains: a part is named twice/,
    ],
  ])('%s is refused', (_, text, words) => {
    expect(problems(text)[0]).toMatch(
      words instanceof RegExp ? words : new RegExp(`^${words.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}$`),
    );
  });

  test('whatever is pasted, it is read or refused with a line that is there', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 300 }), (body) => {
        const text = `supplier,offer,price\n${body}`;
        const found = read(text);
        if ('offers' in found) return found.offers.length > 0;
        return found.problems.every(({ line }) => line >= 1 && line <= text.split('\n').length);
      }),
      { seed: 7, numRuns: 400 },
    );
  });
});
