import { depthGaugeMm, pitchOverRivets, sawChainSpeed, sawChains, sawPitch } from '../../src/driven/chain.js';
import { near, published, same } from '../support/published.js';

const files = published('saw chain filing tables of forestry handbooks');

files('round file by pitch', 'common practice', () =>
  (
    [
      ['1/4 in', '5/32 in', 4],
      ['.325 in', '3/16 in', 4.8],
      ['3/8 in low profile', '5/32 in', 4],
      ['3/8 in', '13/64 in', 5.2],
      ['.404 in', '7/32 in', 5.5],
    ] as const
  ).flatMap(([pitch, inches, mm]) => {
    const chain = sawChains.find(({ name }) => name === pitch);
    return [same(`${pitch}, in`, chain?.fileIn, inches), same(`${pitch}, mm`, chain?.fileMm, mm)];
  }),
);

files('depth gauge 0.025 in under the cutter', 'common practice', () => [
  near('in', depthGaugeMm / 25.4, 0.025, 7e-4),
]);

files('pitch is half of the distance over three rivets', 'common practice', () => [
  near('3/8 in', sawPitch(pitchOverRivets(0.75 * 25.4)), 0.375, 1e-12),
  near('.325 in', sawPitch(pitchOverRivets(0.65 * 25.4)), 0.325, 1e-12),
  near('.404 in', sawPitch(pitchOverRivets(0.808 * 25.4)), 0.404, 1e-12),
]);

files('chain speed about 20 m/s', 'common practice', () => [
  near('3/8 in, 7 teeth, 9000 rpm', sawChainSpeed(9.525, 7, 9000), 20, 0.05),
]);
