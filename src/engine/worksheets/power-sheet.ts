import {
  type Answer,
  amount,
  ask,
  computed,
  curve,
  lines,
  near,
  picture,
  ruleOfThumb,
  spaced,
  verdict,
  worksheet,
} from '../../worksheet/index.js';
import { standardAirAtMapHeight } from '../atmosphere.js';
import type { Band } from '../band.js';
import { architectures, type EngineArchitecture } from '../cranking/class-engine.js';
import { type ExpectedPower, expectedPower, likelyPower } from '../firing/expected-firing.js';
import { dryAirPressure, type Weather } from '../moist-air.js';
import { atSeaLevel, powerLeft, saeJ1349Factor } from '../power-correction.js';
import { bore, geometryOf, kind, rod, runningSpan, shareWords, stroke } from './fields.js';
import { air, fieldOf, firingModel, firingSources, givesFiring, ratio, weatherOf } from './firing-fields.js';

export const expectedPowerSheet = worksheet({
  id: 'expected-power',
  group: 'Firing and power',
  title: 'Power an engine should make',
  question: 'What power should this engine make here?',
  purpose:
    'Power at the crankshaft of a sound engine of this size in this air, at full throttle, with its band.',
  fields: {
    architecture: kind(architectures, givesFiring),
    bore,
    stroke,
    ratio,
    rod,
    speed: ask.in(
      'rpm',
      'Speed',
      'Under load at full throttle; 3600 rpm stands (common practice: plates give power there). A hand-held two-stroke’s plate gives it at 7000 to 9500.',
      { standard: '3600 rpm', within: runningSpan },
    ),
    ...air,
    plate: ask.in(
      'W',
      'Plate or measured power',
      'Compared with the band. Left empty, only the band is worked out.',
      { hint: '5 hp', optional: true, within: ['10 W', '50 kW'] },
    ),
  },
  compute: ({ speed: rpm, plate, ...given }) => {
    const geometry = geometryOf(given);
    const weather = weatherOf(given);
    const here = expectedPower(geometry, { rpm, weather });
    const wattIn = (air: Weather) => likelyPower(geometry, { rpm, weather: air });
    const marked = given.barometer === undefined ? given.altitude : undefined;
    const shown = altitudePicture(weather, marked, here.watt.likely, wattIn);
    return [
      ...(plate === undefined ? [] : [plateVerdict(plate, here.watt)]),
      amount('power', 'A sound one should make', hp(here.watt.likely), 'hp', firingModel, { picture: shown }),
      ...powerAnswers(geometry.architecture, rpm, here, weather),
    ];
  },
  names: { ...fieldOf, pressure: 'barometer' },
  oneOf: [{ ids: ['altitude', 'barometer'], wanted: false }],
  cautions: [
    'A guide to what is far off, no rating: filling, spark and friction are of the class, not this engine’s.',
    'Friction comes from an automotive correlation that does not cover small air-cooled singles; a two-stroke’s is trade judgement, and its filling hangs on its exhaust.',
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
      expect: { power: near(5.8, 0.6, 'hp') },
      source: 'usual plates of overhead-valve singles',
      mark: 'common practice',
    },
    {
      title: 'A hand-held two-stroke makes a horsepower of some 15 to 25 cc at 9000 rpm: 49 cc some 2.6',
      given: { architecture: 'two-stroke', bore: '44 mm', stroke: '32 mm', speed: '9000 rpm' },
      expect: { power: near(2.6, 0.7, 'hp') },
      source: 'usual plates of hand-held two-strokes',
      mark: 'common practice',
    },
    {
      title: 'Dry air of 850 mbar at 25 °C: 1/1.19 of standard air’s',
      given: {
        ...{ architecture: 'overhead-valve', bore: '68 mm', stroke: '54 mm' },
        ...{ barometer: '850 mbar', temperature: '25 °C', humidity: '0 %' },
      },
      expect: { part: near(100 / 1.19, 0.5, '%') },
      source: 'SAE J1349 (June 1990)',
      mark: 'seen',
    },
  ],
});

const hp = (watt: number) => watt / 745.6998715822702;

function powerAnswers(
  architecture: EngineArchitecture,
  rpm: number,
  { watt, indicatedW, indicatedPa, frictionPa, shares }: ExpectedPower,
  weather: Weather,
): Answer[] {
  const friction =
    architecture === 'two-stroke'
      ? ruleOfThumb('trade judgement, no source: 50 kPa and 12 kPa for each m/s of piston speed')
      : computed('Internal Combustion Engine Fundamentals 1988, eq. 13.6, from memory; automotive');
  const sae = computed('SAE J1349 (June 1990), as on the other sheets');
  const factor = saeJ1349Factor(dryAirPressure(weather), weather.celsius);
  return [
    amount('low', 'Band, from', hp(watt.low), 'hp', firingModel),
    amount('high', 'Band, to', hp(watt.high), 'hp', firingModel),
    amount('torque', 'Torque at the crank', (watt.likely * 30) / (Math.PI * rpm), 'N·m', firingModel),
    amount('left', 'Power left against sea level', 100 * powerLeft(weather, atSeaLevel(weather)), '%', sae),
    amount('part', 'Against standard air of 990 mbar dry, 25 °C', 100 / factor, '%', sae),
    amount('indicated', 'Of it before friction', hp(indicatedW), 'hp', firingModel),
    amount('imep', 'Indicated mean pressure', indicatedPa / 1000, 'kPa', firingModel),
    amount('friction', 'Friction mean pressure', frictionPa / 1000, 'kPa', friction, {
      note: 'small air-cooled singles are not covered: a factor of 1.6 either way',
    }),
    lines('spread', 'What makes the band wide', shareWords(shares), firingModel),
  ];
}

function plateVerdict(plateW: number, { low, high }: Band): Answer {
  const says = (decided: 'pass' | 'fail' | 'cannot-decide', text: string) =>
    verdict('says', 'Beside yours', decided, text, firingModel);
  if (plateW > high)
    return says(
      'cannot-decide',
      'more than a sound one of this size should make: gross, another speed, or a wrong figure',
    );
  if (plateW >= low) return says('pass', 'inside the band of a sound one');
  return says(
    'fail',
    'less than a sound one should make: compression, spark timing, fuel, exhaust, governor',
  );
}

function altitudePicture(
  here: Weather,
  markedM: number | undefined,
  hereWatt: number,
  wattIn: (weather: Weather) => number,
) {
  const at = (m: number) => hp(wattIn({ ...here, pascal: standardAirAtMapHeight(m).pascal }));
  return picture({
    title: 'Power over altitude',
    says: 'Power falls with altitude faster than the air’s density, because friction stays.',
    x: { label: 'Altitude', unit: 'm' },
    y: { label: 'Power', unit: 'hp' },
    curves: [curve('likely', spaced(0, Math.max(3000, markedM ?? 0), 7), at)],
    ...(markedM !== undefined && { marks: [{ x: markedM, y: hp(hereWatt), label: 'here' }] }),
  });
}
