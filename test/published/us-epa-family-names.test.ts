import { describe, expect, test } from 'vitest';
import { builtInCatalog, readPlate } from '../../src/catalog/index.js';

/**
 * US EPA, "Information about Family Naming Conventions for Vehicles and Engines", page as of 19 January 2021, seen.
 * Character 1 is the model year, 2 to 4 the manufacturer, 5 the industry sector, 6 to 9 the displacement (liters
 * when there is a decimal point, which counts as a character), 10 to 12 the maker's own.
 * The codes of 1997 to 2000 are from memory; they repeat in 2027 to 2030, which the page gives.
 */
const catalog = builtInCatalog();
const read = (family: string) =>
  readPlate(catalog, family).find(({ scheme }) => scheme === 'emission-family');
const yearOf = (code: string) =>
  read(`${code}ZZZS.1611AK`)?.parts.find(({ part }) => part === 'model year')?.meaning;

describe('US EPA family names, checked against the agency’s table of model years', () => {
  test.each([
    ...[1, 2, 3, 4, 5, 6, 7, 8, 9].map((code) => [String(code), 2000 + code, 2030 + code] as const),
    ['V', 1997, 2027] as const,
    ['W', 1998, 2028] as const,
    ['X', 1999, 2029] as const,
    ['Y', 2000, 2030] as const,
  ])('%s is %i or %i', (code, first, second) => {
    expect(yearOf(code)).toBe(`model year ${first} or ${second}`);
  });

  test.each([...'ABCDEFGHJKLMNPRST'].map((code, index) => [code, 2010 + index] as const))(
    '%s is %i',
    (code, year) => {
      expect(yearOf(code)).toBe(`model year ${year}`);
    },
  );

  test('I, O, Q, U and Z name no year', () => {
    for (const code of 'IOQUZ') expect(read(`${code}ZZZS.1611AK`)).toBeUndefined();
  });

  test('a displacement with a point is in liters, without one in cubic inches or centimeters', () => {
    expect(read('KZZZS.1961AA')!.parts[3]).toMatchObject({ value: '.196', meaning: '196 cubic centimeters' });
    expect(read('KZZZS01961A')!.parts[3]).toMatchObject({
      value: '0196',
      meaning: '196 cubic inches or cubic centimeters',
    });
  });
});
