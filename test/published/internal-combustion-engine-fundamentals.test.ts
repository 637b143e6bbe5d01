import { burnedPart } from '../../src/engine/firing/burn.js';
import { automotiveFriction } from '../../src/engine/firing/friction.js';
import { stoichiometricAir } from '../../src/engine/fuel.js';
import { cylinderVolumeCc, pistonTravelMm } from '../../src/engine/slider-crank.js';
import { meanPistonSpeed } from '../../src/engine/speeds.js';
import { hohenbergCoefficient } from '../../src/engine/wall-heat.js';
import { near, published } from '../support/published.js';

const icef = published('Internal Combustion Engine Fundamentals 1988');

icef('eq. 3.6: air for CH1.87, isooctane and ethanol', 'from memory', () => [
  near('CH1.87', stoichiometricAir(1.87), 14.6, 0.05),
  near('isooctane', stoichiometricAir(2.25), 15.13, 0.005),
  near('ethanol', stoichiometricAir(3, 0.5), 9, 0.005),
]);

icef('table D.4: air for some other fuels', 'from memory, recomputed', () => [
  near('methane, CH4', stoichiometricAir(4), 17.23, 0.03),
  near('propane, CH2.67', stoichiometricAir(8 / 3), 15.67, 0.03),
  near('methanol, CH4O', stoichiometricAir(4, 1), 6.47, 0.02),
  near('benzene, CH', stoichiometricAir(1), 13.27, 0.03),
  near('light Diesel fuel, CH1.8', stoichiometricAir(1.8), 14.5, 0.05),
]);

icef('eq. 2.6: ratio 8, rod over throw 3.5, 90°: 5.0106 clearance volumes', 'calculated', () => {
  const crank = { boreMm: 65, strokeMm: 62, rodMm: 108.5 };
  return [near('volumes', cylinderVolumeCc(crank, 8, 90) / cylinderVolumeCc(crank, 8, 0), 5.0106, 5e-5)];
});

published('SAE 790825, wall heat')('the form with constants from memory: 818 W/(m²·K)', 'calculated', () => [
  near(
    'W/(m²·K)',
    hohenbergCoefficient({ volumeM3: 30e-6, bar: 20, kelvin: 1500, pistonSpeed: 7.44 }),
    818,
    0.5,
  ),
]);

icef('§9.2.2: burned part by Wiebe with a 5 and m 2 from memory', 'calculated', () => [
  near('a quarter of the duration', burnedPart(0.25), 0.07515, 5e-6),
  near('a half', burnedPart(0.5), 0.46474, 5e-6),
  near('three quarters', burnedPart(0.75), 0.87869, 5e-6),
  near('all', burnedPart(1), 0.99326, 5e-6),
]);

// automotive, full throttle, coefficients from memory: small air-cooled singles are not covered
icef('eq. 13.6: friction, bar', 'calculated', () => [
  near('1800 rpm', automotiveFriction(1800) / 1e5, 1.402, 5e-4),
  near('3000 rpm', automotiveFriction(3000) / 1e5, 1.87, 5e-4),
  near('3600 rpm', automotiveFriction(3600) / 1e5, 2.158, 5e-4),
]);

const travels = [
  [3, [0.17593, 0.62772, 1.17157, 1.62772, 1.90799, 2]],
  [3.5, [0.16987, 0.60884, 1.1459, 1.60884, 1.90192, 2]],
  [4, [0.16535, 0.59488, 1.12702, 1.59488, 1.8974, 2]],
] as const;

icef('eq. 2.5: travel over the throw at 30 to 180° for a rod of 3, 3.5 and 4 throws', 'calculated', () =>
  travels.flatMap(([rod, travel]) =>
    travel.map((each, i) => {
      const got = pistonTravelMm({ strokeMm: 62, rodMm: 31 * rod }, 30 * (i + 1)) / 31;
      return near(`${rod}, ${30 * (i + 1)}°`, got, each, 6e-6);
    }),
  ),
);

icef('eq. 2.9: 62 mm at 3600 rpm has a mean piston speed of 7.44 m/s', 'calculated', () => [
  near('m/s', meanPistonSpeed(62, 3600), 7.44, 0.005),
]);
