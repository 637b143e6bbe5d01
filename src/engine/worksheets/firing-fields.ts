import { ask, computed, type Given } from '../../worksheet/index.js';
import { standardAirAtMapHeight } from '../atmosphere.js';
import type { Weather } from '../moist-air.js';
import { airSpan, barometer, compressionRatio, heightSpan, humidity, runningSpan } from './fields.js';

export const firingModel = computed(
  'firing stroke over crank angle (Wiebe burning, Hohenberg wall heat; own model); band by JCGM 100:2008, 5.1.2, k = 2',
);
export const firingSources = [
  'Internal Combustion Engine Fundamentals 1988, ch. 9 and §12.4',
  'SAE 790825 (wall heat)',
  'NASA/TP-2002-211556 (specific heats), from memory',
  'JCGM 100:2008, 5.1.2',
  'trade judgement, no source: filling, burning and their spreads for the class',
];

export const givesFiring = 'Gives valve timing, how it fills and burns, and the ratio when it is not given.';
export const ratio = compressionRatio('Left empty, a class figure.');
export const speed = ask.in(
  'rpm',
  'Speed',
  'At full throttle; 3600 rpm stands (common practice: the usual top speed).',
  { standard: '3600 rpm', within: runningSpan },
);
export const air = {
  altitude: ask.in('m', 'Altitude', 'Where it works; sea level stands.', {
    standard: '0 m',
    hint: '500 m',
    within: heightSpan,
  }),
  barometer,
  temperature: ask.in(
    '°C',
    'Temperature',
    'Of the air it breathes; 20 °C stands as an ordinary day (common practice).',
    { standard: '20 °C', within: airSpan },
  ),
  humidity,
};

export const fieldOf = { compressionRatio: 'ratio', rpm: 'speed' } as const;

/** A barometer goes before the altitude. */
export const weatherOf = ({ altitude, barometer, temperature, humidity }: Given<typeof air>): Weather => ({
  pascal: barometer ?? standardAirAtMapHeight(altitude).pascal,
  ...{ celsius: temperature, humidity },
});

export const withoutKnock =
  'Knock is not in it: it can pass twice the pressure. An engine that pings is stopped and its cause looked for.';
