import { describe, expect, test } from 'vitest';
import { builtInCatalog } from '../../../src/catalog/index.js';
import { complaintsMeant } from '../../../src/diagnose/index.js';

const catalog = builtInCatalog();
const meant = (typed: string, facts = {}) => complaintsMeant(catalog, facts, typed).map((c) => c.id);

describe('an owner’s own words find the complaint in the trade’s (sentences of our own, as people talk)', () => {
  test.each([
    ['It just won’t start no matter what I do', {}, 'cranks-never-fires'],
    ['starts for a couple of seconds and then dies', {}, 'fires-then-dies'],
    ['I have to keep the choke on or it quits', {}, 'runs-only-on-choke'],
    ['takes me thirty pulls on a cold morning', {}, 'many-pulls-cold'],
    ['cuts fine for ten minutes then quits', {}, 'dies-after-minutes'],
    ['surging at idle', {}, 'hunts-at-no-load'],
    ['engine revs way too high', {}, 'races'],
    ['bogs down when I hit thick weeds', {}, 'bogs-under-load'],
    ['runs rough and has no power', {}, 'no-power'],
    ['pull cord broke my wrist, it kicks back', {}, 'kicks-back'],
    ['pull rope is really hard to pull', {}, 'rope-hard-to-pull'],
    ['rope pulls right out, nothing happens, engine doesn’t turn', {}, 'rope-pulls-free'],
    ['the key just clicks', {}, 'starter-will-not-crank'],
    ['it is locked up, can’t pull the rope at all', {}, 'locked-solid'],
    ['no resistance when I pull it', {}, 'spins-like-empty'],
    ['gas is leaking out of the bottom of the carb', {}, 'fuel-pours-out'],
    ['smokes like crazy and eats oil', {}, 'blue-smoke'],
    ['plug comes out black and it smells of gas', {}, 'black-smoke'],
    ['milky oil on the stick', {}, 'white-smoke-or-milky-oil'],
    ['oil dripping under it', {}, 'oil-leaks'],
    ['popping back through the carburetor', {}, 'spits-back'],
    ['big backfire when I shut it down', {}, 'bangs-in-exhaust'],
    ['hit a stump and now it shakes', { use: 'mower' }, 'knock-or-shaking'],
    ['won’t shut off, had to choke it', {}, 'will-not-stop'],
    ['gets too hot, paint is burning off', {}, 'overheats'],
    ['leaves strips of grass uncut', { use: 'mower' }, 'will-not-cut'],
    ['belt keeps coming off', { use: 'tiller' }, 'throws-the-belt'],
    ['the snow just falls in front', { use: 'snow' }, 'blows-weakly'],
    ['no electricity from it, but the motor sounds good', { use: 'generator' }, 'no-output'],
    ['lights flicker and the fridge hums', { use: 'generator' }, 'generator-output-wrong'],
    ['blade keeps turning after I let go of the handle', { use: 'mower' }, 'blade-runs-on'],
    ['it doesn’t drive itself any more', { use: 'mower' }, 'wheels-do-not-drive'],
    ['washer has weak pressure', { use: 'washer' }, 'no-pressure'],
    ['won’t pick up water', { use: 'pump' }, 'pump-gives-no-water'],
    ['the ram moves slow', { use: 'splitter' }, 'slow-ram'],
    ['chain keeps moving when I let off the trigger', { use: 'saw' }, 'tool-creeps-at-idle'],
  ])('“%s”', (typed, facts, complaint) => {
    expect(meant(typed, facts)[0]).toBe(complaint);
  });

  test('“stopped dead” is not “will not stop”, and what two sentences say is not put together', () => {
    expect(meant('It stopped dead', { use: 'mower' })).not.toContain('will-not-stop');
    const told = 'It stopped dead. Since then the rope tears at your hand, and it shook so that I let go.';
    expect(new Set(meant(told, { use: 'mower', starter: 'rope' }))).toEqual(
      new Set(['kicks-back', 'knock-or-shaking']),
    );
  });

  test('of one sentence that tells two things, both', () => {
    expect(meant('runs but goes up and down, lights flicker', { use: 'generator' })).toEqual(
      expect.arrayContaining(['hunts-at-no-load', 'generator-output-wrong']),
    );
  });

  test('each thing that owners call it finds that complaint', () => {
    for (const { id, name, ownerSays, when } of catalog.complaints)
      for (const typed of [name, ...ownerSays])
        expect(meant(typed, { use: when?.use?.[0] }), typed).toContain(id);
  });
});

test('words that complain of nothing find nothing', () => {
  for (const typed of ['', 'the', 'ran fine when I parked it', 'bought it at a yard sale', 'blorft'])
    expect(meant(typed), typed).toEqual([]);
});

test('what this engine or this machine cannot do is not offered', () => {
  expect(meant('kicks back', { starter: 'electric' })).not.toContain('kicks-back');
  expect(meant('lights flicker')).toEqual([]);
});
