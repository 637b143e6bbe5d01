import {
  oldAsk as ask,
  oldChoice as choice,
  computed,
  type Field,
  type OldGiven as Given,
  oldOptional as optional,
  oldStanding as standing,
} from '../../worksheet/index.js';
import { standardAirAtMapHeight } from '../atmosphere.js';
import type { BandShare } from '../band.js';
import type { EngineArchitecture } from '../cranking/class-engine.js';
import type { FiringGeometry } from '../firing/expected-firing.js';
import type { Weather } from '../moist-air.js';
import { barometer, optionalMm } from './fields.js';

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

export const kind = (allowed: readonly EngineArchitecture[]) =>
  choice(
    'architecture',
    'Kind of engine',
    'Gives valve timing, how it fills and burns, and the ratio when it is not given.',
    allowed.map((each) => [each, each.replace('-', ' ')] as const),
  );
export const ratio = optional(
  ask(
    'ratio',
    'ratio',
    'Compression ratio',
    'From the maker’s sheet or the compression-ratio worksheet. Left empty, a class figure.',
    '8.3:1',
  ),
);
export const speed = standing(
  ask(
    'rotation',
    'speed',
    'Speed',
    'At full throttle; 3600 rpm stands (common practice: the usual top speed).',
    '3600 rpm',
  ),
  '3600 rpm',
);
export const air: readonly Field[] = [
  standing(ask('length', 'altitude', 'Altitude', 'Where it works; sea level stands.', '500 m'), '0 m'),
  barometer,
  standing(
    ask(
      'temperature',
      'temperature',
      'Temperature',
      'Of the air it breathes; 20 °C stands as an ordinary day (common practice).',
      '20 °C',
    ),
    '20 °C',
  ),
  standing(
    ask(
      'ratio',
      'humidity',
      'Humidity',
      'Relative; 50 % stands as an ordinary day (common practice).',
      '50 %',
    ),
    '50 %',
  ),
];

export const fieldOf = { compressionRatio: 'ratio', rpm: 'speed', pressure: 'barometer' } as const;

export function geometryOf(given: Given): FiringGeometry {
  const rodMm = optionalMm(given, 'rod');
  return {
    architecture: given.choice('architecture') as EngineArchitecture,
    boreMm: given.in('bore', 'mm'),
    strokeMm: given.in('stroke', 'mm'),
    ...(rodMm !== undefined && { rodMm }),
    ...(given.has('ratio') && { compressionRatio: given.si('ratio') }),
  };
}

export function weatherOf(given: Given): Weather {
  return {
    pascal: given.has('barometer')
      ? given.si('barometer')
      : standardAirAtMapHeight(given.in('altitude', 'm')).pascal,
    celsius: given.in('temperature', '°C'),
    humidity: given.si('humidity'),
  };
}

export const shopAir: Weather = { pascal: 101_325, celsius: 20, humidity: 0.5 };

export const shareWords = (shares: readonly BandShare[]) =>
  shares
    .slice(0, 5)
    .map(({ what, down, up }) => `${what}: −${percent(1 - Math.exp(-down))}, +${percent(Math.exp(up) - 1)}`);
const percent = (part: number) => `${(100 * part).toFixed(1)} %`;

export const withoutKnock =
  'Knock is not in it: it can pass twice the pressure. An engine that pings is stopped and its cause looked for.';
