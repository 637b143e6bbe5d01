import { builtInCatalog, readPlate } from '../../src/catalog/index.js';
import { published, same } from '../support/published.js';

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

const epa = published('US EPA, family naming conventions');

epa('model years of letters', 'seen', () =>
  [...'ABCDEFGHJKLMNPRST'].map((code, index) => same(code, yearOf(code), `model year ${2010 + index}`)),
);
epa('model years of digits, which come again after thirty years', 'seen', () =>
  [1, 2, 3, 4, 5, 6, 7, 8, 9].map((code) =>
    same(String(code), yearOf(String(code)), `model year ${2000 + code} or ${2030 + code}`),
  ),
);
epa('model years 1997 to 2000', 'from memory', () =>
  [...'VWXY'].map((code, i) => same(code, yearOf(code), `model year ${1997 + i} or ${2027 + i}`)),
);
epa('I, O, Q, U and Z name no year', 'seen', () =>
  [...'IOQUZ'].map((code) => same(code, read(`${code}ZZZS.1611AK`) === undefined, true)),
);
epa('a displacement with a point is in liters, without one in cubic inches or centimeters', 'seen', () => {
  const displacement = (family: string) => {
    const { value, meaning } = read(family)!.parts[3]!;
    return { value, meaning };
  };
  return [
    same('KZZZS.1961AA', displacement('KZZZS.1961AA'), { value: '.196', meaning: '196 cubic centimeters' }),
    same('KZZZS01961A', displacement('KZZZS01961A'), {
      value: '0196',
      meaning: '196 cubic inches or cubic centimeters',
    }),
  ];
});
