import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { builtInCatalog, loadCatalog, type PlateReading, readPlate } from '../../../src/catalog/index.js';
import { campaign } from '../../support/campaign.js';
import { builtInPacks } from '../pack-files.js';

const catalog = builtInCatalog();
const best = (text: string): PlateReading => readPlate(catalog, text)[0]!;
const meaning = (text: string, part: string) => best(text).parts.find((each) => each.part === part)?.meaning;

describe('every scheme reads its own examples', () => {
  const examples = catalog.plateSchemes.flatMap((scheme) =>
    scheme.examples.map((example) => ({ scheme, ...example })),
  );

  test.each(examples)('$scheme.id reads “$text”', ({ scheme, text, reads }) => {
    const reading = readPlate(catalog, text).find((each) => each.scheme === scheme.id);
    const nameOf = new Map(scheme.parts.map(({ group, name }) => [group, name]));
    for (const [group, expected] of Object.entries(reads)) {
      const part = reading?.parts.find((each) => each.part === nameOf.get(group));
      expect(part?.meaning).toContain(expected);
    }
  });

  test.each(examples)('$scheme.id is the first reading of “$text”', ({ scheme, text }) => {
    expect(best(text).scheme).toBe(scheme.id);
  });

  test('schemes with a maker say that the maker is invented', () => {
    for (const { maker, invented, origin } of catalog.plateSchemes) {
      expect(invented === true).toBe(maker !== undefined);
      if (maker) expect(origin.from).toBe('invented');
    }
  });
});

describe('date codes', () => {
  test.each([
    ['MODEL A12-2 CODE 8703141', 'date code', 'made 14 March 1987'],
    ['A12-2 0002291', 'date code', 'made 29 February 2000'],
    ['HP66VF A001 001', 'date code', 'made 1 January 1961 or 1 January 1983 or 1 January 2005'],
    ['HP66VF K073 0142', 'date code', 'made 14 March 1970 or 13 March 1992'],
    [
      'DK-4-148 9365',
      'date code',
      'made 31 December 1969 or 31 December 1979 or 31 December 1989 or 31 December 1999',
    ],
    ['OXLIP SV150 0553', 'date code', 'made in week 53 of 2005'],
    ['CODE 311299', 'date code', 'made 31 December 1999'],
    ['CODE 010203', 'date code', 'made 3 February 2001 or 2 January 2003 or 1 February 2003'],
    ['08/1987', 'date', 'made in August 1987'],
  ])('“%s”: %s %s', (text, part, expected) => {
    const found = meaning(text, part)!;
    // four dates of one day of the year are said in short
    expect(
      found.replace(
        / in (\d{4}), (\d{4}), (\d{4}) or (\d{4})$/,
        ' $1 or 31 December $2 or 31 December $3 or 31 December $4',
      ),
    ).toBe(expected);
  });

  test('a day that no calendar has is said to be no date, not bent into one', () => {
    expect(meaning('A12-2 8713141', 'date code')).toBe('no date: no YYMMDD reads “871314”');
    expect(meaning('A12-2 8702291', 'date code')).toBe('no date: no YYMMDD reads “870229”');
    expect(meaning('DK-4-148 7366A', 'date code')).toBe('no date: no YDDD reads “7366”');
  });

  test('a leap day counts only in a leap year', () => {
    expect(meaning('HP66VF J366 001', 'date code')).toBe('no date: no LDDD reads “J366”');
    expect(meaning('HP66VF D366 001', 'date code')).toBe('made 31 December 1964 or 31 December 2008');
  });

  test('years outside the use of a scheme are no years of it', () => {
    expect(meaning('OXLIP SV150 8927', 'date code')).toBe('no date: no YYWW reads “8927”');
  });
});

describe('nothing is invented', () => {
  test('a figure without a meaning is said to be unknown, and lowers the fit', () => {
    const known = best('DK-4-148 7073A');
    const unknown = best('DK-4-148 7073C');
    expect(unknown.parts.at(-1)).toEqual({
      part: 'shift',
      value: 'C',
      meaning: 'unknown: this scheme gives no meaning to “C”',
      known: false,
    });
    expect(unknown.fit).toBeLessThan(known.fit);
  });

  test('text that no scheme fits gives no reading', () => {
    expect(readPlate(catalog, 'HELLO THERE')).toEqual([]);
    expect(readPlate(catalog, '')).toEqual([]);
    expect(readPlate(catalog, '   \n ')).toEqual([]);
  });

  test('a plate that may be read in two ways gives both, the better fit first', () => {
    const readings = readPlate(catalog, 'ZQ 196\n5.5 HP\n9.02 CU IN');
    expect(readings.map(({ scheme }) => scheme).toSorted()).toEqual([
      'displacement-in-cubic-inches',
      'displacement-in-name',
      'power-with-unit',
    ]);
    expect(readings.map(({ fit }) => fit)).toEqual(readings.map(({ fit }) => fit).toSorted((a, b) => b - a));
  });

  test('what a scheme leaves unexplained is said', () => {
    expect(best('MFG DATE 08/1987').leftOver).toBe('MFG DATE');
  });
});

describe('how a plate is written does not matter', () => {
  test.each([
    'model 094512 type 0312-02 code 87031405',
    'MODEL  094512\nTYPE 0312-02\nCODE 87031405',
    '094512 0312–02 87031405',
  ])('“%s”', (text) => {
    const reading = best(text);
    expect(reading.scheme).toBe('model-type-code');
    expect(reading.parts.map(({ value }) => value)).toEqual(['094512', '0312-02', '870314', '05']);
  });

  test('never throws, whatever stands on it', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (text) => {
        for (const { fit } of readPlate(catalog, text)) expect(fit).toBeGreaterThan(0);
      }),
      { seed: 20260114, numRuns: campaign(75, 300) },
    );
  });

  test('a fit lies above 0 and not over 1, and every part has a meaning in words', () => {
    const figures = fc.string({ unit: fc.constantFrom(...'0123456789ABHKMSTV -/'), maxLength: 24 });
    fc.assert(
      fc.property(figures, (text) => {
        for (const { fit, parts } of readPlate(catalog, text)) {
          expect(fit).toBeGreaterThan(0);
          expect(fit).toBeLessThanOrEqual(1);
          for (const part of parts) expect(part.meaning).not.toBe('');
        }
      }),
      { seed: 20260114, numRuns: campaign(200, 1000) },
    );
  });
});

describe('a shop adds its own scheme', () => {
  test('and it is read like the others', () => {
    const text = `pack: { id: shop, title: Ours }
defaults: { origin: judgement }
plateSchemes:
  - id: our-find
    name: A find of ours
    pattern: '^QQ(?<kind>[A-Z])$'
    parts: [{ group: kind, name: kind, table: { A: pump engine } }]
    weight: 1
    examples: [{ text: QQA, reads: { kind: pump engine } }]
`;
    const { catalog: ours } = loadCatalog([...builtInPacks, { file: 'shop.yaml', text }]);
    expect(readPlate(ours, 'qqa')[0]).toMatchObject({
      scheme: 'our-find',
      fit: 1,
      parts: [{ meaning: 'pump engine' }],
    });
    expect(readPlate(ours, 'qqb')).toEqual([]);
  });
});
