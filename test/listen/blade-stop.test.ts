import { describe, expect, test } from 'vitest';
import { bladeStop } from '../../src/listen/blade-stop.js';
import { engineSpeed } from '../../src/listen/engine-speed.js';
import { campaign } from '../support/campaign.js';
import { type BladeSound, bladeSound } from './blade-sound.js';
import { random } from './engine-sound.js';

const engine = { strokes: 4, cylinders: 1 } as const;
const told = (of: BladeSound) => {
  const sound = bladeSound(of);
  return bladeStop(sound, engineSpeed(sound, engine).track);
};

/** Walk-behind mowers let go at working speed, in noise of 10 to 24 dB below the running machine. */
function drawn(seed: number): BladeSound {
  const uniform = random(900 + seed);
  const letGo = 2.5 + uniform();
  const stopS = 1.2 + 4.3 * uniform();
  return {
    rpm: 2600 + 800 * uniform(),
    letGo,
    stopS,
    airShare: 0.5 * uniform(),
    seconds: letGo + stopS + 1.2,
    snrDb: 10 + 14 * uniform(),
    seed,
  };
}

describe('blade stop time out of a recording', () => {
  const all = Array.from({ length: campaign(5, 200) }, (_, seed) => {
    const of = drawn(seed);
    return { of, stop: told(of) };
  });
  const answered = all.flatMap(({ of, stop }) => (stop.told ? [{ of, stop }] : []));

  test('is within a tenth of a second wherever it is told', () => {
    const off = answered.filter(({ of, stop }) => Math.abs(stop.seconds - of.stopS) > 0.1);
    expect(off.map(({ of, stop }) => `seed ${of.seed}: ${stop.seconds} for ${of.stopS}`)).toEqual([]);
  });

  test('is told in more than half of them, and why not in the others', () => {
    expect(answered.length).toBeGreaterThan(all.length / 2);
    for (const { stop } of all) if (!stop.told) expect(stop.why).not.toBe('');
  });

  test.each([
    ['it runs on to the end', { ...drawn(3), letGo: 30, seconds: 4 }, /runs on/],
    ['it ends before the blade stands', { ...drawn(3), stopS: 5, seconds: drawn(3).letGo + 2 }, /./],
    ['noise is as loud as the machine', { ...drawn(3), snrDb: -6 }, /./],
    ['it is let go at once', { ...drawn(3), letGo: 0.4, seconds: 5 }, /no second of even running/],
  ] as const)('is refused where %s', (_, of, why) => {
    const stop = told(of);
    expect(stop.told).toBe(false);
    if (!stop.told) expect(stop.why).toMatch(why);
  });
});
