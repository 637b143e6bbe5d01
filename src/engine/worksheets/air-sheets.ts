import {
  amount,
  oldAsk as ask,
  oldChoice as choice,
  computed,
  curve,
  type OldGiven as Given,
  number,
  oldOptional as optional,
  type Picture,
  picture,
  spaced,
  oldStanding as standing,
  type OldWorksheet as Worksheet,
  words,
} from '../../worksheet/index.js';
import { standardAir, standardAirAtMapHeight } from '../atmosphere.js';
import { ethanolBlend, leaningOnBlend } from '../fuel.js';
import { jetFor, jetForBlend, richening, richeningByDensity } from '../mixture.js';
import { approximateAirDensity, dryAirPressure, moistAirDensity, type Weather } from '../moist-air.js';
import { iso1585Factor, saeJ1349Factor } from '../power-correction.js';
import { refusing } from './answers.js';
import { altitude } from './fields.js';

const icao = 'ICAO Doc 7488 / ISO 2533';
const temperature = ask(
  'temperature',
  'temperature',
  'Temperature',
  'Of the air the engine breathes.',
  '25 °C',
);
const pressure = ask(
  'pressure',
  'pressure',
  'Air pressure',
  'At the place itself, not reduced to sea level as weather reports are.',
  '990 mbar',
);
const humidity = standing(
  ask('ratio', 'humidity', 'Humidity', 'Relative; 50 % stands as an ordinary day (common practice).', '50 %'),
  '50 %',
);

const weatherOf = (given: Given): Weather => ({
  pascal: given.si('pressure'),
  celsius: given.in('temperature', '°C'),
  humidity: given.si('humidity'),
});

export const standardAirSheet: Worksheet = {
  id: 'standard-air',
  title: 'Air at an altitude',
  question: 'What is the air like up here?',
  purpose: 'Pressure, temperature and density of the standard atmosphere at an altitude.',
  fields: [
    altitude,
    choice(
      'height',
      'Which height',
      'A map’s height is geometric and stands; tables of the standard often go by geopotential height.',
      [
        ['geometric', 'geometric, as on a map'],
        ['geopotential', 'geopotential, as in the tables'],
      ],
      'geometric',
    ),
  ],
  compute: refusing({}, (given) => {
    const m = given.in('altitude', 'm');
    const air = given.choice('height') === 'geometric' ? standardAirAtMapHeight(m) : standardAir(m);
    const how = computed(`${icao}, ${given.choice('height')} height`);
    return [
      amount('pressure', 'Air pressure', air.pascal / 100, 'hPa', how, {
        note: 'a real day differs by up to 3 %',
      }),
      amount('temperature', 'Temperature', air.kelvin - 273.15, '°C', how),
      amount('density', 'Density', air.kgPerM3, 'kg/m³', how),
      number('part', 'Density against sea level, %', (100 * air.kgPerM3) / 1.225, 1, how),
    ];
  }),
  cautions: ['The weather comes on top: for a measured power or jet, read a barometer.'],
  sources: [icao],
  examples: [
    {
      title: 'Sea level: 288.15 K, 1013.25 hPa, 1.225 kg/m³',
      given: { altitude: '0 m' },
      expect: {
        pressure: { value: 1013.25, unit: 'hPa', tolerance: 0.005 },
        temperature: { value: 15, unit: '°C', tolerance: 0.005 },
        density: { value: 1.225, unit: 'kg/m³', tolerance: 0.00005 },
      },
      source: icao,
      mark: 'seen',
    },
    {
      title: '2000 m geopotential: 794.952 hPa, 1.00649 kg/m³',
      given: { altitude: '2000 m', height: 'geopotential' },
      expect: {
        pressure: { value: 794.952, unit: 'hPa', tolerance: 0.0005 },
        density: { value: 1.00649, unit: 'kg/m³', tolerance: 0.000005 },
      },
      source: icao,
      mark: 'memory, recomputed',
    },
    {
      title: '2000 m on the map: 795.01 hPa, 1.0066 kg/m³',
      given: { altitude: '2000 m' },
      expect: {
        pressure: { value: 795.01, unit: 'hPa', tolerance: 0.01 },
        density: { value: 1.0066, unit: 'kg/m³', tolerance: 0.00005 },
      },
      source: 'US Standard Atmosphere 1976, table by geometric height',
      mark: 'seen',
    },
  ],
};

export const airDensitySheet: Worksheet = {
  id: 'air-density',
  title: 'Density of the air today',
  question: 'How dense is the air on a day like this?',
  purpose: 'Moist-air density by CIPM-2007, beside the approximate formula of OIML R 111.',
  fields: [temperature, pressure, humidity],
  compute: refusing({}, (given) => {
    const weather = weatherOf(given);
    return [
      amount(
        'density',
        'Density',
        moistAirDensity(weather),
        'kg/m³',
        computed('CIPM-2007, Metrologia 45 (2008) 149, 400 ppm CO2'),
      ),
      amount(
        'approximate',
        'By the approximate formula',
        approximateAirDensity(weather),
        'kg/m³',
        computed('OIML R 111-1, E.3'),
      ),
      amount(
        'dry-pressure',
        'Pressure of the dry air',
        dryAirPressure(weather) / 100,
        'hPa',
        computed('less the vapor, Magnus form of WMO-No. 8'),
        {
          note: 'what burns fuel; power corrections want this one',
        },
      ),
    ];
  }),
  cautions: [
    'A weather report’s pressure is reduced to sea level: at 500 m it is some 60 hPa too high for this.',
  ],
  sources: ['Metrologia 45 (2008) 149', 'OIML R 111-1', 'WMO-No. 8'],
  examples: [
    {
      title: '20 °C, 1013.25 hPa, 50 %: 1.1993 kg/m³',
      given: { temperature: '20 °C', pressure: '1013.25 hPa', humidity: '50 %' },
      expect: {
        density: { value: 1.19931, unit: 'kg/m³', tolerance: 0.000005 },
        approximate: { value: 1.19929, unit: 'kg/m³', tolerance: 0.000005 },
      },
      source: 'CIPM-2007 and OIML R 111-1, E.3, coded apart',
      mark: 'calculated',
    },
  ],
};

export const powerCorrection: Worksheet = {
  id: 'power-correction',
  title: 'Power correction',
  question: 'What would this engine give in standard air?',
  purpose: 'The factor from power observed today to power in standard air, by SAE J1349 and by ISO 1585.',
  fields: [
    temperature,
    pressure,
    humidity,
    optional(ask('power', 'power', 'Observed power', 'As measured today.', '5 hp')),
  ],
  compute: refusing({}, (given) => {
    const weather = weatherOf(given);
    const dry = dryAirPressure(weather);
    const factor = saeJ1349Factor(dry, weather.celsius);
    return [
      number(
        'factor',
        'SAE J1349 factor',
        factor,
        4,
        computed('SAE J1349 (June 1990): 1.180 (990/Pd) √((T + 273)/298) − 0.18'),
        {
          note:
            factor < 0.95 || factor > 1.05 ? 'outside 0.95 to 1.05: an estimate, not a rating' : undefined,
        },
      ),
      number(
        'iso-factor',
        'ISO 1585 factor',
        iso1585Factor(dry, weather.celsius),
        4,
        computed('ISO 1585 / ISO 3046-1, from memory'),
      ),
      ...(given.has('power')
        ? [
            amount(
              'power',
              'In standard air',
              factor * given.in('power', given.quantity('power').unit),
              given.quantity('power').unit,
              computed('observed power × SAE factor'),
            ),
          ]
        : []),
    ];
  }),
  cautions: ['The factor corrects the air, not the load cell: it cannot make two test stands agree.'],
  sources: ['SAE J1349 (June 1990)', 'ISO 1585'],
  examples: [
    {
      title: '990 mbar dry, 25 °C: no correction',
      given: { temperature: '25 °C', pressure: '990 mbar', humidity: '0 %' },
      expect: { factor: { value: 1, tolerance: 0.0005 }, 'iso-factor': { value: 1, tolerance: 0.0005 } },
      source: 'SAE J1349 (June 1990)',
      mark: 'seen',
    },
    {
      title: '850 mbar dry, 25 °C: about 1.19',
      given: { temperature: '25 °C', pressure: '850 mbar', humidity: '0 %' },
      expect: { factor: { value: 1.19, tolerance: 0.005 } },
      source: 'SAE J1349 (June 1990)',
      mark: 'seen',
    },
  ],
};

const orificeRule = computed('√(ρ0/ρ) at equal air volume; jet area with it (orifice law)');

export const jetForAltitude: Worksheet = {
  id: 'jet-for-altitude',
  title: 'Jet for an altitude',
  question: 'Which jet does this engine want at another altitude?',
  purpose: 'How much the mixture changes between two altitudes, and the jet that brings it back.',
  fields: [
    ask('length', 'jet', 'Jet now', 'Bore of the main jet.', '0.70 mm'),
    standing(
      ask('length', 'from', 'Set for', 'Altitude the jet was right at; sea level stands.', '0 m'),
      '0 m',
    ),
    ask('length', 'to', 'Used at', 'Altitude where it will work.', '2000 m'),
  ],
  compute: refusing({ altitude: 'to' }, (given) => {
    const unit = given.quantity('jet').unit;
    const jet = given.in('jet', unit);
    const from = standardAirAtMapHeight(given.in('from', 'm'));
    const toM = given.in('to', 'm');
    const richer = richeningByDensity(from.kgPerM3, standardAirAtMapHeight(toM).kgPerM3);
    return [
      number('richer', 'Mixture richer by, %', 100 * (richer - 1), 1, orificeRule, {
        note: richer < 1 ? 'negative: leaner' : undefined,
      }),
      amount('jet', 'Jet', jetFor(jet, richer), unit, orificeRule, {
        picture: jetPicture(given, from.kgPerM3, toM, richer),
        keepUnit: true,
      }),
      number(
        'power',
        'Power left, %',
        (100 * standardAirAtMapHeight(toM).kgPerM3) / from.kgPerM3,
        0,
        computed('in proportion to the air’s density, roughly'),
        {
          note: 'no jet brings this back',
        },
      ),
    ];
  }),
  cautions: [
    'Going back down with the lean jet burns the engine up: put the old jet back in.',
    'Emission rules may forbid another jet.',
  ],
  sources: [icao, 'Internal Combustion Engine Fundamentals 1988, §7.2'],
  examples: [
    {
      title: 'Sea level to 2000 m: 10.3 % rich, jet × 0.952',
      given: { jet: '1 mm', to: '2000 m' },
      expect: {
        richer: { value: 10.32, tolerance: 0.02 },
        jet: { value: 0.9521, unit: 'mm', tolerance: 0.0001 },
      },
      source: 'orifice law in the standard atmosphere, computed apart by geopotential height',
      mark: 'calculated',
    },
  ],
};

function jetPicture(given: Given, fromDensity: number, toM: number, richer: number): Picture {
  const jetMm = given.in('jet', 'mm');
  const at = (m: number) => jetFor(jetMm, richeningByDensity(fromDensity, standardAirAtMapHeight(m).kgPerM3));
  return picture({
    title: 'Jet over altitude',
    says: 'The jet gets smaller with altitude, by the fourth root of the air’s density.',
    x: { label: 'Altitude', unit: 'm' },
    y: { label: 'Jet bore', unit: 'mm' },
    curves: [curve('same mixture', spaced(Math.min(0, toM), Math.max(3500, toM), 41), at)],
    marks: [{ x: toM, y: jetFor(jetMm, richer), label: 'here' }],
  });
}

export const mixtureToday: Worksheet = {
  id: 'mixture-today',
  title: 'Weather and mixture',
  question: 'How much richer or leaner does the weather make it?',
  purpose: 'Change of mixture from the day the carburetor was set to today, heat and damp included.',
  fields: [
    temperature,
    pressure,
    humidity,
    standing(
      ask(
        'temperature',
        'set-temperature',
        'Set at',
        'Temperature of the day it was set; 20 °C stands as an ordinary shop (common practice).',
        '20 °C',
      ),
      '20 °C',
    ),
    standing(
      ask(
        'pressure',
        'set-pressure',
        'Pressure then',
        '1013.25 hPa stands: standard air at sea level.',
        '1013.25 hPa',
      ),
      '1013.25 hPa',
    ),
    standing(
      ask(
        'ratio',
        'set-humidity',
        'Humidity then',
        '50 % stands as an ordinary day (common practice).',
        '50 %',
      ),
      '50 %',
    ),
  ],
  compute: refusing({}, (given) => {
    const set: Weather = {
      pascal: given.si('set-pressure'),
      celsius: given.in('set-temperature', '°C'),
      humidity: given.si('set-humidity'),
    };
    const change = 100 * (richening(set, weatherOf(given)) - 1);
    return [
      number(
        'richer',
        'Mixture richer by, %',
        change,
        1,
        computed('√(ρ/ρ0) · dry0/dry; CIPM-2007 densities'),
        {
          note: change < 0 ? 'negative: leaner' : undefined,
        },
      ),
      words(
        'meaning',
        'Which means',
        mixtureWords(change),
        computed('the change beside what a carburetor bears'),
      ),
    ];
  }),
  cautions: [
    'Cold, dry, high-pressure days run lean: a carburetor set on the edge in summer may burn a piston in winter.',
  ],
  sources: ['Metrologia 45 (2008) 149', 'Internal Combustion Engine Fundamentals 1988, §7.2'],
  examples: [
    {
      title: 'Dry, from 1.225 to 1.11164 kg/m³ (1000 m): 5 % rich',
      given: {
        temperature: '8.5 °C',
        pressure: '898.746 hPa',
        humidity: '0 %',
        'set-temperature': '15 °C',
        'set-pressure': '1013.25 hPa',
        'set-humidity': '0 %',
      },
      expect: { richer: { value: 4.97, tolerance: 0.03 } },
      source: 'orifice law in the standard atmosphere, computed apart',
      mark: 'calculated',
    },
  ],
};

function mixtureWords(percent: number): string {
  const size = Math.abs(percent);
  if (size < 2) return 'Too little to feel.';
  const way = percent > 0 ? 'rich' : 'lean';
  return size < 5
    ? `A touch ${way}: a mixture screw covers it.`
    : `Clearly ${way}: it wants another jet or a screw well turned.`;
}

const ethanolRule = computed('stoichiometric air by mass, flow by √density');
const ethanolField = (id: string, label: string, help: string, hint: string) =>
  ask('ratio', id, label, help, hint);

export const ethanolMixture: Worksheet = {
  id: 'ethanol-mixture',
  title: 'Ethanol in the gasoline',
  question: 'How lean does this engine run on ethanol fuel?',
  purpose: 'Air the blend wants, how lean it runs on an unchanged jet, and the jet that brings it back.',
  fields: [
    ethanolField('ethanol', 'Ethanol', 'By volume, as the pump says: E10 is 10 %.', '10 %'),
    standing(
      ethanolField(
        'set',
        'Set for',
        'Ethanol content it was set for; 0 % stands for old carburetors (common practice).',
        '0 %',
      ),
      '0 %',
    ),
    optional(ask('length', 'jet', 'Jet now', 'Bore of the main jet, for the new size.', '0.70 mm')),
  ],
  compute: refusing({}, (given) => {
    const [from, to] = [given.si('set'), given.si('ethanol')];
    const blend = ethanolBlend(to);
    const lean = 100 * (leaningOnBlend(from, to) - 1);
    const jet = given.has('jet') ? given.quantity('jet') : undefined;
    return [
      number('air-fuel', 'Air to fuel by mass', blend.airFuelRatio, 2, ethanolRule, {
        note: 'on a base of 14.60 for gasoline',
      }),
      number('by-mass', 'Ethanol by mass, %', 100 * blend.ethanolByMass, 2, computed('0.745 and 0.789 kg/L')),
      number('leaner', 'Leaner by, %', lean, 1, ethanolRule, {
        note: lean < 0 ? 'negative: richer' : undefined,
      }),
      ...(jet
        ? [
            amount('jet', 'Jet', jetForBlend(given.in('jet', jet.unit), from, to), jet.unit, ethanolRule, {
              keepUnit: true,
            }),
          ]
        : []),
    ];
  }),
  cautions: [
    'Ethanol swells old rubber, lifts old varnish and draws water: hoses and needle tips of before about 1990 may not bear it.',
    'Over E10 is outside what makers of small engines allow.',
  ],
  sources: ['Internal Combustion Engine Fundamentals 1988, eq. 3.6'],
  examples: [
    {
      title: 'E10: 10.53 % by mass, 14.01 parts of air, about 4 % lean',
      given: { ethanol: '10 %' },
      expect: {
        'air-fuel': { value: 14.01, tolerance: 0.005 },
        'by-mass': { value: 10.53, tolerance: 0.005 },
        leaner: { value: 4, tolerance: 0.5 },
      },
      source: 'stoichiometry by mass, computed apart; ICEF prints 14.6 and 9.00 for the two (from memory)',
      mark: 'calculated',
    },
  ],
};

export const airSheets: readonly Worksheet[] = [
  standardAirSheet,
  airDensitySheet,
  powerCorrection,
  jetForAltitude,
  mixtureToday,
  ethanolMixture,
];
