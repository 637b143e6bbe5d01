import { of, to } from '../../quantity/index.js';
import {
  amount,
  ask,
  computed,
  near,
  practice,
  ruleOfThumb,
  verdict,
  words,
  worksheet,
} from '../../worksheet/index.js';
import { fuelAge, twoStrokeOil, waterToleranceE10 } from '../fuel.js';

const twoStrokeMix = worksheet({
  id: 'two-stroke-mix',
  group: 'Fuel and oil',
  title: 'Two-stroke mixture',
  question: 'How much oil goes into this fuel?',
  purpose: 'Oil for an amount of gasoline at a mixing ratio.',
  fields: {
    fuel: ask.in('L', 'Gasoline', 'How much there is to mix.', { hint: '1 gal', within: ['1 mL', '1000 L'] }),
    ratio: ask.in('1', 'Ratio', 'Parts of gasoline to one of oil, from the machine’s label.', {
      hint: '50:1',
      within: ['10:1', '100:1'],
    }),
  },
  compute: ({ fuel, ratio }) => {
    const liters = twoStrokeOil(fuel, ratio);
    const rule = computed('fuel/ratio');
    return [
      amount('oil', 'Oil', liters * 1000, 'mL', rule, { keepUnit: true }),
      amount('oil-ounces', 'Or', to(of(liters, 'L'), 'fl oz'), 'fl oz', rule, {
        note: 'US fluid ounces',
        keepUnit: true,
      }),
    ];
  },
  cautions: [
    'Two-stroke oil only, and fresh: mixed fuel older than a month or two goes to the waste can.',
    'The wrong way round kills: no oil seizes it, oil mix in a four-stroke fouls it.',
  ],
  sources: ['common practice'],
  examples: [
    {
      title: 'One US gallon at 50:1: 2.56 fl oz',
      given: { fuel: '1 gal', ratio: '50:1' },
      expect: { 'oil-ounces': near(2.56, 1e-9, 'fl oz') },
      source: 'exact: 128/50',
      mark: 'calculated',
    },
    {
      title: '5 L at 50:1: 100 mL',
      given: { fuel: '5 L', ratio: '50:1' },
      expect: { oil: near(100, 1e-9, 'mL') },
      source: 'exact',
      mark: 'calculated',
    },
  ],
});

const waterInFuel = worksheet({
  id: 'water-in-fuel',
  group: 'Fuel and oil',
  title: 'Water in E10',
  question: 'How much water can this fuel hold before it separates?',
  purpose: 'Water that E10 takes up at a temperature before water and alcohol fall to the bottom.',
  fields: {
    fuel: ask.in('mL', 'Fuel', 'How much is in the tank.', { hint: '1 gal', within: ['1 mL', '1000 L'] }),
    temperature: ask.in(
      '°C',
      'Coldest it gets',
      'Fuel that is clear in the warm shop may part in the cold shed.',
      { hint: '15 °C', within: ['-40 °C', '40 °C'] },
    ),
  },
  compute: ({ fuel: milliliters, temperature }) => {
    const { part, u } = waterToleranceE10(temperature);
    const origin = ruleOfThumb('from memory: 0.5 % at 15 °C; less in the cold by trade judgement');
    return [
      amount('water', 'Water it can hold', part * milliliters, 'mL', origin, { u: u * milliliters }),
      words(
        'meaning',
        'Which means',
        'More than this parts the fuel: the lower layer is water and alcohol, and what is left above is lean in both and low in octane.',
        practice,
      ),
    ];
  },
  cautions: [
    'Fuel that has parted is waste: shaking does not bring it back.',
    'A jar, a warm shop and no pilot light.',
  ],
  sources: ['from memory', 'trade judgement, no source'],
  examples: [
    {
      title: 'A US gallon at 60 °F: 3.8 teaspoons, 19 mL',
      given: { fuel: '1 gal', temperature: '60 °F' },
      expect: { water: near(3.8 * 4.929, 0.5, 'mL') },
      source: 'a figure of the US EPA on water in oxygenated gasoline, from memory',
      mark: 'memory',
    },
  ],
});

const fuelAgeSheet = worksheet({
  id: 'fuel-age',
  group: 'Fuel and oil',
  title: 'Age of fuel',
  question: 'Is this fuel too old to use?',
  purpose: 'Whether fuel of an age is still worth putting in.',
  fields: {
    age: ask.in('days', 'Age', 'Since it was pumped.', { hint: '5 months', within: ['0 days', '50 years'] }),
    kind: ask.choice(
      'Fuel',
      'Most pump gasoline is E10; it stands (common practice).',
      { e10: 'E10 pump gasoline', 'no-ethanol': 'gasoline without ethanol', canned: 'canned engine fuel' },
      'e10',
    ),
    kept: ask.choice(
      'Kept',
      'In the machine’s vented tank stands, as the worse case.',
      { tank: 'in the machine’s tank', can: 'in a full closed can' },
      'tank',
    ),
    stabilizer: ask.choice(
      'Stabilizer',
      'Only when it was added fresh. No stands.',
      { no: 'no', yes: 'added while fresh' },
      'no',
    ),
  },
  compute: ({ age, kind, kept, stabilizer }) => {
    const found = fuelAge(kind, kept, stabilizer === 'yes', age);
    const said = { good: 'pass', doubtful: 'cannot-decide', stale: 'fail' } as const;
    const say = {
      good: 'young enough',
      doubtful: 'smell it and look at it in a jar: sharp and clear may do, flat or dark may not',
      stale: 'stale: drain it, and expect varnish in the carburetor',
    } as const;
    return [
      verdict('state', 'Fuel', said[found.state], say[found.state], practice),
      amount('good-until', 'Good for about', found.goodUntilDays, 'days', practice),
      amount('stale-after', 'Stale after about', found.staleAfterDays, 'days', practice),
    ];
  },
  cautions: [
    'Drain outside into an approved can, away from any flame or pilot light; never back into a car.',
  ],
  sources: ['common practice'],
  examples: [
    {
      title: 'Last fall’s E10 in the tank is stale by spring',
      given: { age: '6 months' },
      expect: { state: { text: 'fail' } },
      source: 'common practice: 30 days good, 90 days stale',
      mark: 'common practice',
    },
  ],
});

export const fuelSheets = [fuelAgeSheet, waterInFuel, twoStrokeMix];
