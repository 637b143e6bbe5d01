import { expect, test } from 'vitest';
import { engineSpeed } from '../../src/listen/engine-speed.js';
import { campaign } from '../support/campaign.js';
import { otherSounds } from './other-sounds.js';

test.each(Object.entries(otherSounds))('a %s is refused, or said to be perhaps no engine', (_name, sound) => {
  for (let seed = 1; seed <= campaign(2, 8); seed += 1) {
    const made = sound(seed);
    for (const strokes of [2, 4] as const) {
      const { meanRpm, ambiguous, says } = engineSpeed(made, { strokes, cylinders: 1 });
      expect(meanRpm === null || ambiguous, `${strokes} strokes, seed ${seed}: ${says}`).toBe(true);
    }
  }
});
