import { describe, expect, test } from 'vitest';
import { bladeStop } from '../../src/listen/blade-stop.js';
import { engineSpeed } from '../../src/listen/engine-speed.js';
import { turnBeat } from '../../src/listen/turn-beat.js';
import { campaign } from '../support/campaign.js';
import { type BladeSound, bladeSound } from './blade-sound.js';
import { random } from './engine-sound.js';

/** Walk-behind mowers whose blade beats once a turn by so much of what its two ends give. */
function drawn(seed: number, onceATurn: number): BladeSound {
  const uniform = random(300 + seed);
  const [letGo, stopS] = [2.5 + uniform(), 1.5 + 3 * uniform()];
  const more = { airShare: 0.4 * uniform(), snrDb: 14 + 10 * uniform() };
  return {
    rpm: 2700 + 600 * uniform(),
    letGo,
    stopS,
    seconds: letGo + stopS + 1.2,
    seed,
    onceATurn,
    ...more,
  };
}

function heard(seed: number, onceATurn: number) {
  const sound = bladeSound(drawn(seed, onceATurn));
  return turnBeat(sound, bladeStop(sound, engineSpeed(sound, { strokes: 4, cylinders: 1 }).track), 4);
}

describe('the beat once a turn of a blade that runs down', () => {
  const seeds = Array.from({ length: campaign(3, 40) }, (_, seed) => seed);
  const plain = seeds.map((seed) => heard(seed, 0.9));
  const even = seeds.map((seed) => heard(seed, 0));

  test('is never told of a blade whose ends sound alike', () => {
    expect(even.flatMap((beat, seed) => (beat.told && beat.beats ? [seed] : []))).toEqual([]);
  });

  test('is never denied of one that beats plainly', () => {
    expect(plain.flatMap((beat, seed) => (beat.told && !beat.beats ? [seed] : []))).toEqual([]);
  });

  test('is told of more than a third of each, and why not of the others', () => {
    expect(plain.filter(({ told }) => told).length).toBeGreaterThan(seeds.length / 3);
    expect(even.filter(({ told }) => told).length).toBeGreaterThan(seeds.length / 3);
    for (const beat of [...plain, ...even]) if (!beat.told) expect(beat.why).not.toBe('');
  });

  test('is not told of a two-stroke: its compression comes once a turn as well', () => {
    const stop = { told: true, from: 3, seconds: 2, u: 0.01, alpha: 0.5, turnsPerS: 50 } as const;
    expect(turnBeat(bladeSound(drawn(1, 0.9)), stop, 2)).toMatchObject({ told: false });
  });

  test('is not told where no stop was heard', () => {
    expect(turnBeat(bladeSound(drawn(1, 0.9)), { told: false, why: 'it runs on' }, 4)).toEqual({
      told: false,
      why: 'it runs on',
    });
  });
});
