import {
  type Answer,
  amount,
  oldAsk as ask,
  computed,
  curve,
  type OldGiven as Given,
  lines,
  oldOptional as optional,
  picture,
  spaced,
  oldStanding as standing,
  verdict,
  type OldWorksheet as Worksheet,
} from '../../worksheet/index.js';
import { standardAirAtMapHeight } from '../atmosphere.js';
import type { Band } from '../band.js';
import { expectedPower, likelyPower } from '../firing/expected-firing.js';
import type { Weather } from '../moist-air.js';
import { refusing } from './answers.js';
import { bore, rod, stroke } from './fields.js';
import {
  air,
  fieldOf,
  firingModel,
  firingSources,
  geometryOf,
  kind,
  ratio,
  shareWords,
  weatherOf,
} from './firing-fields.js';

export const expectedPowerSheet: Worksheet = {
  id: 'expected-power',
  title: 'Power an engine should make',
  question: 'What power should this engine make here?',
  purpose:
    'Power at the crankshaft of a sound four-stroke of this size in this air, at full throttle, with its band.',
  fields: [
    kind(['side-valve', 'overhead-valve']),
    bore,
    stroke,
    ratio,
    rod,
    standing(
      ask(
        'rotation',
        'speed',
        'Speed',
        'Under load at full throttle; 3600 rpm stands (common practice: plates give power there).',
        '3600 rpm',
      ),
      '3600 rpm',
    ),
    ...air,
    optional(
      ask(
        'power',
        'plate',
        'Plate or measured power',
        'Compared with the band. Left empty, only the band is worked out.',
        '5 hp',
      ),
    ),
  ],
  compute: refusing(fieldOf, (given) => {
    const geometry = geometryOf(given);
    const rpm = given.in('speed', 'rpm');
    const here = expectedPower(geometry, { rpm, weather: weatherOf(given) });
    return powerAnswers(given, here, (weather) => likelyPower(geometry, { rpm, weather }));
  }),
  cautions: [
    'A guide to what is far off, no rating: filling, spark and friction are of the class, not this engine’s.',
    'Friction comes from an automotive correlation that does not cover small air-cooled singles.',
    'A plate may give gross power, without muffler and air cleaner, in standard air, or of a like engine.',
  ],
  sources: [
    ...firingSources,
    'Internal Combustion Engine Fundamentals 1988, eq. 13.6 (friction), from memory',
  ],
  examples: [
    {
      title:
        'Ordinary overhead-valve singles make a horsepower of some 32 to 36 cc at 3600 rpm: 196 cc some 5.8',
      given: { architecture: 'overhead-valve', bore: '68 mm', stroke: '54 mm' },
      expect: { power: { value: 5.8, unit: 'hp', tolerance: 0.6 } },
      source: 'usual plates of overhead-valve singles',
      mark: 'common practice',
    },
    {
      title: 'Dry air of 850 mbar at 25 °C: 1/1.19 of standard air’s',
      given: {
        ...{ architecture: 'overhead-valve', bore: '68 mm', stroke: '54 mm' },
        ...{ barometer: '850 mbar', temperature: '25 °C', humidity: '0 %' },
      },
      expect: { part: { value: 100 / 1.19, unit: '%', tolerance: 4 } },
      source: 'SAE J1349 (June 1990), whose 85 % mechanical efficiency is more than small singles reach',
      mark: 'seen',
    },
  ],
};

/** SAE J1349's: 990 mbar dry, 25 °C. */
const saeAir: Weather = { pascal: 99_000, celsius: 25, humidity: 0 };
const horsepower = 745.6998715822702;

function powerAnswers(
  given: Given,
  { watt, firing, indicatedW, frictionPa, shares }: ReturnType<typeof expectedPower>,
  wattIn: (weather: Weather) => number,
): Answer[] {
  const rpm = given.in('speed', 'rpm');
  const friction = computed(
    'Internal Combustion Engine Fundamentals 1988, eq. 13.6, from memory; automotive',
  );
  const hp = (w: number) => w / horsepower;
  return [
    ...(given.has('plate') ? [plateVerdict(given.si('plate'), watt)] : []),
    amount('power', 'A sound one should make', hp(watt.likely), 'hp', firingModel, {
      picture: altitudePicture(given, hp(watt.likely), (weather) => hp(wattIn(weather))),
    }),
    amount('low', 'Band, from', hp(watt.low), 'hp', firingModel),
    amount('high', 'Band, to', hp(watt.high), 'hp', firingModel),
    amount('torque', 'Torque at the crank', (watt.likely * 30) / (Math.PI * rpm), 'N·m', firingModel),
    amount(
      'part',
      'Against standard air',
      (100 * watt.likely) / wattIn(saeAir),
      '%',
      computed('the same engine at 990 mbar dry, 25 °C (SAE J1349)'),
    ),
    amount('indicated', 'Of it before friction', hp(indicatedW), 'hp', firingModel),
    amount('imep', 'Indicated mean pressure', firing.meanPa / 1000, 'kPa', firingModel),
    amount('friction', 'Friction mean pressure', frictionPa / 1000, 'kPa', friction, {
      note: 'small air-cooled singles are not covered: a factor of 1.6 either way',
    }),
    lines('spread', 'What makes the band wide', shareWords(shares), firingModel),
  ];
}

function plateVerdict(plateW: number, { low, high }: Band): Answer {
  if (plateW > high)
    return verdict(
      'says',
      'Beside yours',
      'cannot-decide',
      'more than a sound one of this size should make: gross, another speed, or a wrong figure',
      firingModel,
    );
  if (plateW >= low)
    return verdict('says', 'Beside yours', 'pass', 'inside the band of a sound one', firingModel);
  return verdict(
    'says',
    'Beside yours',
    'fail',
    'less than a sound one should make: compression, spark timing, fuel, exhaust, governor',
    firingModel,
  );
}

function altitudePicture(given: Given, hereHp: number, hpIn: (weather: Weather) => number) {
  const here = weatherOf(given);
  const at = (m: number) => hpIn({ ...here, pascal: standardAirAtMapHeight(m).pascal });
  const marked = given.has('barometer') ? undefined : given.in('altitude', 'm');
  return picture({
    title: 'Power over altitude',
    says: 'Power falls with altitude faster than the air’s density, because friction stays.',
    x: { label: 'Altitude', unit: 'm' },
    y: { label: 'Power', unit: 'hp' },
    curves: [curve('likely', spaced(0, Math.max(3000, marked ?? 0), 7), at)],
    ...(marked !== undefined && { marks: [{ x: marked, y: hereHp, label: 'here' }] }),
  });
}
