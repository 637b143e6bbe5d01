import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { builtInCatalog } from '../../src/catalog/index.js';
import {
  capital,
  counted,
  countWord,
  cutShort,
  dayWords,
  inPercent,
  joined,
  listed,
  lowerFirst,
  minutesWords,
  money,
  percent,
  price,
  roughHours,
  roughMoney,
  saidOnce,
  sentence,
  shortDay,
  thousands,
  timeWords,
  weekDay,
  withDays,
  withinSentence,
} from '../../src/phrase/index.js';

const word = fc.stringMatching(/^[a-z]{1,9}( [a-z]{1,9}){0,2}$/);
/** What no sentence of ours may hold. */
const unsaid = / {2}|\. \.|\.\.|, ,|,,| ,/;

test('a fault’s name within a sentence leaves what it explains, and no two faults become one', () => {
  expect(withinSentence('Control cable seized or mis-set: choke, run or stop not reached')).toBe(
    'control cable seized or mis-set',
  );
  expect(withinSentence('Inlet needle leaking; carburetor floods')).toBe('inlet needle leaking');
  expect(withinSentence('Fins and shroud packed (nest, chaff)')).toBe('fins and shroud packed');
  expect(withinSentence('Locked: rust in the bore')).toBe('locked: rust in the bore');
  const names = builtInCatalog().faults.map((f) => withinSentence(f.name));
  expect(names.filter((n, i) => names.indexOf(n) !== i)).toEqual([]);
});

describe('lists', () => {
  test.each([
    [[], ''],
    [['plug'], 'plug'],
    [['plug', 'coil'], 'plug and coil'],
    [['plug', 'coil', 'key'], 'plug, coil and key'],
  ])('%j is said as “%s”', (items, said) => expect(listed(items)).toBe(said));

  test('what begins alike is said once', () => {
    expect(saidOnce(['to do: oil', 'weigh it', 'to do: air', 'to do: fuel'])).toEqual([
      'to do: oil, air and fuel',
      'weigh it',
    ]);
    expect(saidOnce(['to do: tap on, 5 min', 'to do: guards on'])).toEqual([
      'to do: tap on, 5 min; guards on',
    ]);
    expect(saidOnce(['on its way: ring, due: Monday'])).toEqual(['on its way: ring, due: Monday']);
  });

  test('choices end with “or”', () => expect(listed(['in', 'mm', 'thou'], 'or')).toBe('in, mm or thou'));

  test('hold every item in order, each once, and no sign too many', () => {
    fc.assert(
      fc.property(fc.array(word, { minLength: 1 }), (items) => {
        const said = listed(items);
        expect(said).not.toMatch(unsaid);
        expect(said.split(/, | and /)).toEqual(items);
      }),
    );
  });

  test('what says nothing leaves no mark in a joined line', () => {
    expect(joined(['head', '', undefined, false, ' ', 'tank'])).toBe('head · tank');
    expect(joined([undefined], ', ')).toBe('');
    expect(joined(['by phone', 'the owner'], ', ')).toBe('by phone, the owner');
  });
});

describe('counts', () => {
  test.each([
    [0, '0 steps'],
    [1, '1 step'],
    [2, '2 steps'],
    [21, '21 steps'],
  ])('%i is said as “%s”', (n, said) => expect(counted(n, 'step')).toBe(said));

  test('irregular plurals are given', () => {
    expect([1, 2].map((n) => counted(n, 'entry', 'entries'))).toEqual(['1 entry', '2 entries']);
  });

  test('“1” stands before one thing only', () => {
    fc.assert(
      fc.property(fc.nat(), word, (n, one) => {
        expect(counted(n, one)).toBe(n === 1 ? `1 ${one}` : `${n} ${one}s`);
      }),
    );
  });

  test('are words up to ten, figures from there', () => {
    expect([0, 1, 10, 11].map(countWord)).toEqual(['no', 'one', 'ten', '11']);
  });
});

describe('capitals and full stops', () => {
  test('only the first letter changes', () => {
    expect(capital('PTO seal, not found')).toBe('PTO seal, not found');
    expect(capital('oil seal of the PTO')).toBe('Oil seal of the PTO');
    expect(lowerFirst('Head gasket blown')).toBe('head gasket blown');
    expect([capital(''), lowerFirst('')]).toEqual(['', '']);
  });

  test.each([
    [' done ', 'done.'],
    ['done.', 'done.'],
    ['why?', 'why?'],
    ['he said “no”', 'he said “no”'],
    ['  ', ''],
  ])('“%s” ends as “%s”', (text, said) => expect(sentence(text)).toBe(said));

  test('a sentence made again stays as it is', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        expect(sentence(sentence(text))).toBe(sentence(text));
      }),
    );
  });

  test('a line cut short keeps whole signs and has room for the mark', () => {
    expect(cutShort('head gasket', 20)).toBe('head gasket');
    expect(cutShort('head gasket', 11)).toBe('head gasket');
    expect(cutShort('head gasket', 6)).toBe('head…');
    expect(cutShort('🔧🔩🧰', 2)).toBe('🔧…');
  });
});

describe('percent', () => {
  test.each([
    [0, 0, '0 %'],
    [0.0001, 0, 'under 1 %'],
    [0.01, 0, '1 %'],
    [0.934, 0, '93 %'],
    [0.99, 0, '99 %'],
    [0.9999, 0, 'over 99 %'],
    [1, 0, '100 %'],
    [0.0004, 1, 'under 0.1 %'],
    [0.1234, 1, '12.3 %'],
    [0.5, 1, '50 %'],
    [0.9999, 1, 'over 99.9 %'],
  ])('%d with %i decimals is “%s”', (p, decimals, said) => expect(percent(p, decimals)).toBe(said));

  test('says nought and a hundred only of what is certain', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1, minExcluded: true, maxExcluded: true, noNaN: true }),
        fc.integer({ min: 0, max: 3 }),
        (p, decimals) => {
          expect(percent(p, decimals)).not.toMatch(/^(0|100) %$/);
        },
      ),
    );
  });

  test('a plain share keeps its decimals', () => {
    expect([inPercent(0.5), inPercent(0.5, 1), inPercent(1.234, 1)]).toEqual(['50 %', '50.0 %', '123.4 %']);
  });
});

describe('money', () => {
  test('a price has cents, an amount as it is written, a guess none', () => {
    expect(price('$', 4)).toBe('$4.00');
    expect([money('$', 120), money('€', 12.5)]).toEqual(['$120', '€12.50']);
    expect(roughMoney('$', 1239.6)).toBe('$1,240');
    expect(thousands(20_000)).toBe('20,000');
  });
});

describe('time', () => {
  test('minutes turn into hours from an hour and a half on', () => {
    expect([0.4, 24, 89.4, 89.6, 120, 135].map(minutesWords)).toEqual([
      '0 min',
      '24 min',
      '89 min',
      '1 h 30 min',
      '2 h',
      '2 h 15 min',
    ]);
  });

  test('rough hours go by tens of minutes', () => {
    expect([0, 4, 55, 60, 114, 600].map(roughHours)).toEqual([
      '0 min',
      '0 min',
      '1 h',
      '1 h',
      '1 h 50 min',
      '10 h',
    ]);
  });

  test('a day is the day where it was written, and a text that is none stays as it came', () => {
    expect(dayWords('2025-11-25T23:31:00-05:00')).toBe('November 25, 2025');
    expect([dayWords('soon'), dayWords('2025-13-01')]).toEqual(['soon', '2025-13-01']);
    expect(shortDay('2025-09-05')).toBe('Sep 5, 2025');
    expect(shortDay('2025-05-05')).toBe('May 5, 2025');
  });

  test('a clock time of no place says that it is UTC', () => {
    expect(timeWords('2025-11-25T14:31:00-05:00')).toBe('November 25, 2025, 14:31');
    expect(timeWords('2025-11-25T14:31:00Z')).toBe('November 25, 2025, 14:31 UTC');
    expect(timeWords('2025-11-25')).toBe('November 25, 2025');
  });

  test('a day to come is said with its weekday (an almanac: New Year’s Day of 2000 was a Saturday)', () => {
    expect(weekDay('2000-01-01')).toBe('Sat Jan 1');
    expect(weekDay('2026-11-27')).toBe('Fri Nov 27');
    expect(weekDay('some day')).toBe('some day');
  });

  test('a day of another year than today’s names its year: a promise of last year does not read as kept', () => {
    expect(weekDay('2025-12-02', '2026-11-29')).toBe('Tue Dec 2, 2025');
    expect(weekDay('2026-12-02', '2026-11-29')).toBe('Wed Dec 2');
    expect(withDays('ring, was due 2025-12-20', '2026-11-29')).toBe('ring, was due Sat Dec 20, 2025');
  });
});
