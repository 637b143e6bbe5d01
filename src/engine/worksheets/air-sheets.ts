import { to as inUnit } from '../../quantity/index.js';
import {
  amount,
  ask,
  computed,
  curve,
  type Given,
  near,
  number,
  type Picture,
  picture,
  spaced,
  words,
  worksheet,
} from '../../worksheet/index.js';
import { standardAir, standardAirAtMapHeight } from '../atmosphere.js';
import { ethanolBlend, leaningOnBlend } from '../fuel.js';
import { jetFor, jetForBlend, richening, richeningByDensity } from '../mixture.js';
import { approximateAirDensity, dryAirPressure, moistAirDensity, type Weather } from '../moist-air.js';
import { atSeaLevel, iso1585Factor, powerLeft, saeJ1349Factor } from '../power-correction.js';
import { airPressureSpan, airSpan, altitude, heightSpan, humidity, shopAir } from './fields.js';

const icao = 'ICAO Doc 7488 / ISO 2533';
const temperature = ask.in('°C', 'Temperature', 'Of the air the engine breathes.', {
  hint: '25 °C',
  within: airSpan,
});
const pressure = ask.in(
  'Pa',
  'Air pressure',
  'At the place itself, not reduced to sea level as weather reports are.',
  { hint: '990 mbar', within: airPressureSpan },
);

const today = { temperature, pressure, humidity };

const weatherOf = ({ temperature, pressure, humidity }: Given<typeof today>): Weather => ({
  ...{ pascal: pressure, celsius: temperature, humidity },
});

const standardAirSheet = worksheet({
  id: 'standard-air',
  group: 'Air and weather',
  title: 'Air at an altitude',
  question: 'What is the air like up here?',
  purpose: 'Pressure, temperature and density of the standard atmosphere at an altitude.',
  fields: {
    altitude,
    height: ask.choice(
      'Which height',
      'A map’s height is geometric and stands; tables of the standard often go by geopotential height.',
      { geometric: 'geometric, as on a map', geopotential: 'geopotential, as in the tables' },
      'geometric',
    ),
  },
  compute: ({ altitude: m, height }) => {
    const air = height === 'geometric' ? standardAirAtMapHeight(m) : standardAir(m);
    const how = computed(`${icao}, ${height} height`);
    return [
      amount('pressure', 'Air pressure', air.pascal / 100, 'hPa', how, {
        note: 'a real day differs by up to 3 %',
      }),
      amount('temperature', 'Temperature', air.kelvin - 273.15, '°C', how),
      amount('density', 'Density', air.kgPerM3, 'kg/m³', how),
      number('part', 'Density against sea level, %', (100 * air.kgPerM3) / 1.225, 1, how),
    ];
  },
  cautions: ['The weather comes on top: for a measured power or jet, read a barometer.'],
  sources: [icao],
  examples: [
    {
      title: 'Sea level: 288.15 K, 1013.25 hPa, 1.225 kg/m³',
      given: { altitude: '0 m' },
      expect: {
        pressure: near(1013.25, 0.005, 'hPa'),
        temperature: near(15, 0.005, '°C'),
        density: near(1.225, 0.00005, 'kg/m³'),
      },
      source: icao,
      mark: 'seen',
    },
    {
      title: '2000 m geopotential: 794.952 hPa, 1.00649 kg/m³',
      given: { altitude: '2000 m', height: 'geopotential' },
      expect: { pressure: near(794.952, 0.0005, 'hPa'), density: near(1.00649, 0.000005, 'kg/m³') },
      source: icao,
      mark: 'memory, recomputed',
    },
    {
      title: '2000 m on the map: 795.01 hPa, 1.0066 kg/m³',
      given: { altitude: '2000 m' },
      expect: { pressure: near(795.01, 0.01, 'hPa'), density: near(1.0066, 0.00005, 'kg/m³') },
      source: 'US Standard Atmosphere 1976, table by geometric height',
      mark: 'seen',
    },
  ],
});

const cipm = computed('CIPM-2007, Metrologia 45 (2008) 149, 400 ppm CO2');
const magnus = computed('less the vapor, Magnus form of WMO-No. 8');

const airDensitySheet = worksheet({
  id: 'air-density',
  group: 'Air and weather',
  title: 'Density of the air today',
  question: 'How dense is the air on a day like this?',
  purpose: 'Moist-air density by CIPM-2007, beside the approximate formula of OIML R 111.',
  fields: today,
  compute: (given) => {
    const weather = weatherOf(given);
    const [moist, approximate] = [moistAirDensity(weather), approximateAirDensity(weather)];
    const dryHpa = dryAirPressure(weather) / 100;
    return [
      amount('density', 'Density', moist, 'kg/m³', cipm),
      amount(
        'approximate',
        'By the approximate formula',
        approximate,
        'kg/m³',
        computed('OIML R 111-1, E.3'),
      ),
      amount('dry-pressure', 'Pressure of the dry air', dryHpa, 'hPa', magnus, {
        note: 'what burns fuel; power corrections want this one',
      }),
    ];
  },
  cautions: [
    'A weather report’s pressure is reduced to sea level: at 500 m it is some 60 hPa too high for this.',
  ],
  sources: ['Metrologia 45 (2008) 149', 'OIML R 111-1', 'WMO-No. 8'],
  examples: [
    {
      title: '20 °C, 1013.25 hPa, 50 %: 1.1993 kg/m³',
      given: { temperature: '20 °C', pressure: '1013.25 hPa', humidity: '50 %' },
      expect: { density: near(1.19931, 0.000005, 'kg/m³'), approximate: near(1.19929, 0.000005, 'kg/m³') },
      source: 'CIPM-2007 and OIML R 111-1, E.3, coded apart',
      mark: 'calculated',
    },
  ],
});

const sae = computed('SAE J1349 (June 1990): 1.180 (990/Pd) √((T + 273)/298) − 0.18');
const iso = computed('ISO 1585 / ISO 3046-1, from memory');
const corrected = computed('observed power × SAE factor');

const powerCorrection = worksheet({
  id: 'power-correction',
  group: 'Air and weather',
  title: 'Power correction',
  question: 'What would this engine give in standard air?',
  purpose: 'The factor from power observed today to power in standard air, by SAE J1349 and by ISO 1585.',
  fields: {
    ...today,
    power: ask.quantity('power', 'Observed power', 'As measured today.', {
      hint: '5 hp',
      optional: true,
      within: ['10 W', '50 kW'],
    }),
  },
  compute: ({ power, ...given }) => {
    const weather = weatherOf(given);
    const dry = dryAirPressure(weather);
    const factor = saeJ1349Factor(dry, weather.celsius);
    return [
      number('factor', 'SAE J1349 factor', factor, 4, sae, {
        note: factor < 0.95 || factor > 1.05 ? 'outside 0.95 to 1.05: an estimate, not a rating' : undefined,
      }),
      number('iso-factor', 'ISO 1585 factor', iso1585Factor(dry, weather.celsius), 4, iso),
      number(
        'left',
        'Power left against sea level, %',
        100 * powerLeft(weather, atSeaLevel(weather)),
        0,
        sae,
      ),
      ...(power
        ? [amount('power', 'In standard air', factor * inUnit(power, power.unit), power.unit, corrected)]
        : []),
    ];
  },
  cautions: ['The factor corrects the air, not the load cell: it cannot make two test stands agree.'],
  sources: ['SAE J1349 (June 1990)', 'ISO 1585'],
  examples: [
    {
      title: '990 mbar dry, 25 °C: no correction',
      given: { temperature: '25 °C', pressure: '990 mbar', humidity: '0 %' },
      expect: { factor: near(1, 0.0005), 'iso-factor': near(1, 0.0005) },
      source: 'SAE J1349 (June 1990)',
      mark: 'seen',
    },
    {
      title: '850 mbar dry, 25 °C: about 1.19',
      given: { temperature: '25 °C', pressure: '850 mbar', humidity: '0 %' },
      expect: { factor: near(1.19, 0.005) },
      source: 'SAE J1349 (June 1990)',
      mark: 'seen',
    },
  ],
});

const orificeRule = computed('√(ρ0/ρ) at equal air volume; jet area with it (orifice law)');

const saeRatio = computed('SAE J1349 (June 1990) at 20 °C and 50 % at both heights, as on the other sheets');

const jetForAltitude = worksheet({
  id: 'jet-for-altitude',
  group: 'Air and weather',
  title: 'Jet for an altitude',
  question: 'Which jet does this engine want at another altitude?',
  purpose: 'How much the mixture changes between two altitudes, and the jet that brings it back.',
  fields: {
    jet: ask.quantity('length', 'Jet now', 'Bore of the main jet.', {
      hint: '0.70 mm',
      within: ['0.1 mm', '5 mm'],
    }),
    from: ask.in('m', 'Set for', 'Altitude the jet was right at; sea level stands.', {
      standard: '0 m',
      within: heightSpan,
    }),
    to: ask.in('m', 'Used at', 'Altitude where it will work.', { hint: '2000 m', within: heightSpan }),
  },
  compute: ({ jet, from, to }) => {
    const densityAt = (m: number) => standardAirAtMapHeight(m).kgPerM3;
    const [before, after] = [densityAt(from), densityAt(to)];
    const airAt = (m: number) => ({ ...shopAir, pascal: standardAirAtMapHeight(m).pascal });
    const jetAt = (m: number) => jetFor(inUnit(jet, 'mm'), richeningByDensity(before, densityAt(m)));
    const richer = richeningByDensity(before, after);
    return [
      number('richer', 'Mixture richer by, %', 100 * (richer - 1), 1, orificeRule, {
        note: richer < 1 ? 'negative: leaner' : undefined,
      }),
      amount('jet', 'Jet', jetFor(inUnit(jet, jet.unit), richer), jet.unit, orificeRule, {
        picture: jetPicture(jetAt, to),
        keepUnit: true,
      }),
      number('power', 'Power left, %', 100 * powerLeft(airAt(to), airAt(from)), 0, saeRatio, {
        note: 'no jet brings this back',
      }),
    ];
  },
  names: { altitude: 'to' },
  cautions: [
    'Going back down with the lean jet burns the engine up: put the old jet back in.',
    'Emission rules may forbid another jet.',
  ],
  sources: [icao, 'Internal Combustion Engine Fundamentals 1988, §7.2'],
  examples: [
    {
      title: 'Sea level to 2000 m: 10.3 % rich, jet × 0.952',
      given: { jet: '1 mm', to: '2000 m' },
      expect: { richer: near(10.32, 0.02), jet: near(0.9521, 0.0001, 'mm') },
      source: 'orifice law in the standard atmosphere, computed apart by geopotential height',
      mark: 'calculated',
    },
  ],
});

function jetPicture(jetAt: (m: number) => number, toM: number): Picture {
  return picture({
    title: 'Jet over altitude',
    says: 'The jet gets smaller with altitude, by the fourth root of the air’s density.',
    x: { label: 'Altitude', unit: 'm' },
    y: { label: 'Jet bore', unit: 'mm' },
    curves: [curve('same mixture', spaced(Math.min(0, toM), Math.max(3500, toM), 41), jetAt)],
    marks: [{ x: toM, y: jetAt(toM), label: 'here' }],
  });
}

const mixtureToday = worksheet({
  id: 'mixture-today',
  group: 'Air and weather',
  title: 'Weather and mixture',
  question: 'How much richer or leaner does the weather make it?',
  purpose: 'Change of mixture from the day the carburetor was set to today, heat and damp included.',
  fields: {
    ...today,
    'set-temperature': ask.in(
      '°C',
      'Set at',
      'Temperature of the day it was set; 20 °C stands as an ordinary shop (common practice).',
      { standard: '20 °C', within: airSpan },
    ),
    'set-pressure': ask.in('Pa', 'Pressure then', '1013.25 hPa stands: standard air at sea level.', {
      standard: '1013.25 hPa',
      within: airPressureSpan,
    }),
    'set-humidity': ask.in('1', 'Humidity then', '50 % stands as an ordinary day (common practice).', {
      standard: '50 %',
      within: ['0 %', '100 %'],
    }),
  },
  compute: (given) => {
    const set = weatherOf({
      temperature: given['set-temperature'],
      ...{ pressure: given['set-pressure'], humidity: given['set-humidity'] },
    });
    const change = 100 * (richening(set, weatherOf(given)) - 1);
    const rule = computed('√(ρ/ρ0) · dry0/dry; CIPM-2007 densities');
    const bears = computed('the change beside what a carburetor bears');
    return [
      number('richer', 'Mixture richer by, %', change, 1, rule, {
        note: change < 0 ? 'negative: leaner' : undefined,
      }),
      words('meaning', 'Which means', mixtureWords(change), bears),
    ];
  },
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
      expect: { richer: near(4.97, 0.03) },
      source: 'orifice law in the standard atmosphere, computed apart',
      mark: 'calculated',
    },
  ],
});

function mixtureWords(percent: number): string {
  const size = Math.abs(percent);
  if (size < 2) return 'Too little to feel.';
  const way = percent > 0 ? 'rich' : 'lean';
  return size < 5
    ? `A touch ${way}: a mixture screw covers it.`
    : `Clearly ${way}: it wants another jet or a screw well turned.`;
}

const ethanolRule = computed('stoichiometric air by mass, flow by √density');

const ethanolMixture = worksheet({
  id: 'ethanol-mixture',
  group: 'Fuel and oil',
  title: 'Ethanol in the gasoline',
  question: 'How lean does this engine run on ethanol fuel?',
  purpose: 'Air the blend wants, how lean it runs on an unchanged jet, and the jet that brings it back.',
  fields: {
    ethanol: ask.in('1', 'Ethanol', 'By volume, as the pump says: E10 is 10 %.', {
      hint: '10 %',
      within: ['0 %', '100 %'],
    }),
    set: ask.in(
      '1',
      'Set for',
      'Ethanol content it was set for; 0 % stands for old carburetors (common practice).',
      { standard: '0 %', within: ['0 %', '100 %'] },
    ),
    jet: ask.quantity('length', 'Jet now', 'Bore of the main jet, for the new size.', {
      hint: '0.70 mm',
      optional: true,
      within: ['0.1 mm', '5 mm'],
    }),
  },
  compute: ({ ethanol, set, jet }) => {
    const blend = ethanolBlend(ethanol);
    const lean = 100 * (leaningOnBlend(set, ethanol) - 1);
    const jetNow = jet && jetForBlend(inUnit(jet, jet.unit), set, ethanol);
    return [
      number('air-fuel', 'Air to fuel by mass', blend.airFuelRatio, 2, ethanolRule, {
        note: 'on a base of 14.60 for gasoline',
      }),
      number('by-mass', 'Ethanol by mass, %', 100 * blend.ethanolByMass, 2, computed('0.745 and 0.789 kg/L')),
      number('leaner', 'Leaner by, %', lean, 1, ethanolRule, {
        note: lean < 0 ? 'negative: richer' : undefined,
      }),
      ...(jet && jetNow ? [amount('jet', 'Jet', jetNow, jet.unit, ethanolRule, { keepUnit: true })] : []),
    ];
  },
  cautions: [
    'Ethanol swells old rubber, lifts old varnish and draws water: hoses and needle tips of before about 1990 may not bear it.',
    'Over E10 is outside what makers of small engines allow.',
  ],
  sources: ['Internal Combustion Engine Fundamentals 1988, eq. 3.6'],
  examples: [
    {
      title: 'E10: 10.53 % by mass, 14.01 parts of air, about 4 % lean',
      given: { ethanol: '10 %' },
      expect: { 'air-fuel': near(14.01, 0.005), 'by-mass': near(10.53, 0.005), leaner: near(4, 0.5) },
      source: 'stoichiometry by mass, computed apart; ICEF prints 14.6 and 9.00 for the two (from memory)',
      mark: 'calculated',
    },
  ],
});

export const airSheets = [
  ...[jetForAltitude, mixtureToday, powerCorrection, standardAirSheet, airDensitySheet, ethanolMixture],
];
