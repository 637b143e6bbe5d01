import { describe, expect, test } from 'vitest';
import { applies, builtInCatalog, byId } from '../../../src/catalog/index.js';
import { engineNow, type KnownOfEngine } from '../../../src/diagnose/index.js';

const catalog = builtInCatalog();
const at = '2026-05-04T08:00:00.000Z';
const now = (known: Partial<KnownOfEngine>) => engineNow(catalog, { facts: {}, seen: [], ...known });
const check = (id: string) => byId(catalog.checks).get(id)!;
const may = (known: Partial<KnownOfEngine>, fault: string) =>
  applies(byId(catalog.faults).get(fault)!.when, now(known).facts) !== 'no';

const tankTop: Partial<KnownOfEngine> = {
  facts: {
    architecture: 'side-valve',
    fuelSystem: 'diaphragm',
    governor: 'air-vane',
    variants: { 'tank-on-carburetor': true, 'primer-bulb': false },
  },
  told: [{ piece: 'fuel-hose', fitted: false, why: 'said not to be there' }],
};

describe('what an engine has (common practice)', () => {
  test('a piece is fitted, not fitted or not known, each with its reason', () => {
    const { pieces } = now(tankTop);
    expect(pieces.get('crankshaft')).toMatchObject({ fitted: 'fitted' });
    expect(pieces.get('carburetor-bowl')).toMatchObject({
      fitted: 'not fitted',
      why: 'carburetor: diaphragm',
    });
    expect(pieces.get('primer-bulb')).toMatchObject({ fitted: 'not fitted', why: /primer bulb\?” no/ });
    expect(pieces.get('fuel-hose')).toMatchObject({ fitted: 'not fitted', why: 'said not to be there' });
    expect(pieces.get('fuel-tap')!.fitted).toBe('not fitted');
    expect(now({ facts: { architecture: 'side-valve' } }).pieces.get('fuel-tap')!.fitted).toBe('not known');
    expect(pieces.get('reed-valve')!.fitted).toBe('not fitted');
  });

  test('no fault of a piece that is not there: hose, primer, bowl, float, static governor of an air vane', () => {
    for (const fault of [
      'fuel-hose-perished',
      'primer-faulty',
      'bowl-seal-leaking',
      'float-faulty',
      'inlet-needle-leaking',
      'governor-arm-mis-set',
      'governor-gear-failed',
      'main-jet-plugged',
      'fuel-tap-or-solenoid-shut',
    ])
      expect(may(tankTop, fault), fault).toBe(false);
    expect(may(tankTop, 'diaphragm-stiff-or-torn')).toBe(true);
    expect(may(tankTop, 'air-vane-faulty')).toBe(true);
  });

  test('a piece in the hand says which carburetor and which governor it is', () => {
    const told = [
      { piece: 'carburetor-bowl', fitted: true, why: 'it was taken off' },
      { piece: 'air-vane', fitted: true, why: 'a picture shows it' },
    ];
    expect(now({ facts: { architecture: 'side-valve' }, told }).facts).toMatchObject({
      fuelSystem: 'float-bowl',
      governor: 'air-vane',
    });
    const none = [{ piece: 'primer-bulb', fitted: false, why: 'said not to be there' }];
    expect(now({ facts: { architecture: 'side-valve' }, told: none }).facts.variants).toMatchObject({
      'primer-bulb': false,
    });
  });

  test('while the kind is not known nothing is ruled out by it', () => {
    expect(now({}).pieces.get('valves')!.fitted).toBe('not known');
    expect(now({ facts: { use: 'pump' } }).pieces.get('blade')!.fitted).toBe('not fitted');
  });
});

describe('what cannot be done (common practice)', () => {
  const sideValve = { facts: { architecture: 'side-valve' as const } };

  test('running checks with head, carburetor and tank off', () => {
    const off = new Set(['cylinder-head', 'carburetor', 'fuel-tank']);
    const engine = now({ ...sideValve, off });
    expect(engine.cannot(check('choke-response'))).toBe(
      'the cylinder head, the carburetor and the fuel tank are off',
    );
    expect(engine.cannot(check('compression-dry'))).toBe('the cylinder head is off');
    expect(engine.cannot(check('does-it-start'))).toContain('are off');
    expect(engine.cannot(check('valve-clearance'))).toBeUndefined();
    // it kicks back where it fires
    expect(engine.cannot(check('kickback'))).toContain('the cylinder head');
  });

  test('squeeze felt with the plug out; compression with the plug out is how it is read', () => {
    const engine = now({ ...sideValve, off: new Set(['spark-plug']) });
    expect(engine.state.plug).toBe('out');
    expect(engine.cannot(check('slow-pull'))).toBe('the plug lead and spark plug is off');
    expect(engine.cannot(check('compression-dry'))).toBeUndefined();
  });

  test('a locked engine is not turned, a dry tank gives no flow, a running one is not tried', () => {
    const locked = now({ ...sideValve, seen: [{ check: 'slow-pull', outcomes: ['locked'], at }] });
    expect(locked.cannot(check('shaft-wobble'))).toBe('it is locked');
    const dry = now({ ...sideValve, off: new Set(['fuel-drained']) });
    expect(dry.state.fuel).toBe('none');
    expect(dry.cannot(check('fuel-flow'))).toBe('there is no fuel in it');
    const runs = now({
      facts: { architecture: 'overhead-valve', use: 'generator' },
      complaints: ['hunts-at-no-load'],
    });
    expect(runs.cannot(check('does-it-start'))).toBe('it runs');
    expect(runs.cannot(check('fuel-down-the-throat'))).toBe('it runs');
  });
});

describe('what must not be done (common practice)', () => {
  const pulled = catalog.checks.filter((c) => ['pulled', 'running', 'hot'].includes(c.engine));
  const allBarred = (known: Partial<KnownOfEngine>, why: string) => {
    const engine = now(known);
    const open = pulled.filter((c) => applies(c.when, engine.facts) !== 'no' && !engine.mustNot(c));
    expect(open.map((c) => c.id)).toEqual([]);
    expect(engine.stop).toContain(why);
  };
  const facts = { architecture: 'side-valve' } as const;

  test.each([
    [
      'fuel in the crankcase',
      { seen: [{ check: 'oil-smell-and-feel', outcomes: ['thin'], at }] },
      'There is fuel in the crankcase',
    ],
    [
      'fuel from the air horn',
      { seen: [{ check: 'fuel-leak-card', outcomes: ['from-air-horn'], at }] },
      'Fuel is leaking',
    ],
    ['will not stop', { complaints: ['will-not-stop'] }, 'The stop control does not stop it'],
    ['races', { complaints: ['races'] }, 'It races'],
    [
      'shroud off',
      { seen: [{ check: 'walk-round', outcomes: ['shroud-missing'], at }] },
      'A guard or the shroud is off',
    ],
    ['guard off, confirmed', { confirmed: ['guard-missing'] }, 'A guard or the shroud is off'],
    [
      'locked after a blow',
      { facts: { ...facts, struck: 'yes' }, complaints: ['locked-solid'] },
      'It is locked after a blow',
    ],
  ] as const)('%s: nothing is pulled or run, and the sheet says stop', (_, known, why) => {
    allBarred({ facts, ...known }, why);
  });

  test('an engine struck hard is not run before the shaft was looked at', () => {
    const struck = { facts: { ...facts, struck: 'yes' } };
    expect(now(struck).mustNot(check('smoke'))).toContain('it was struck');
    // the rope may be pulled
    expect(now(struck).stopsFrom).toBe('running');
    expect(now({ facts, complaints: ['will-not-stop'] }).stopsFrom).toBe('pulling');
    expect(now({ facts }).stopsFrom).toBeUndefined();
    const looked = { ...struck, seen: [{ check: 'shaft-wobble', outcomes: ['under-one-mm'], at }] };
    expect(now(looked).mustNot(check('smoke'))).toBeUndefined();
  });

  test('what stands against it is one sentence, and says a thing once', () => {
    const struck = { facts: { ...facts, struck: 'yes' }, complaints: ['locked-solid'] } as const;
    expect(now(struck).stop).toMatch(/^It is locked after a blow\. First: /);
    const open = now({
      facts,
      seen: [{ check: 'walk-round', outcomes: ['shroud-missing', 'muffler-loose'], at }],
    });
    expect(open.stop).toMatch(/^A guard or the shroud is off, and the muffler or a mount is loose\. First: /);
  });

  test('a repair of what was found ends the stop, and so does a later sound reading', () => {
    const leak = { check: 'fuel-leak-card', outcomes: ['at-hose'], at };
    const later = '2026-05-05T08:00:00.000Z';
    const mended = now({ facts, seen: [leak], repairs: [{ fault: 'fuel-hose-perished', at: later }] });
    expect(mended.stop).toBeUndefined();
    const dry = now({ facts, seen: [leak, { check: 'fuel-leak-card', outcomes: ['dry'], at: later }] });
    expect(dry.stop).toBeUndefined();
    expect(now({ facts, seen: [leak] }).stop).toContain('First: tap shut');
  });

  test('no running without oil or with sludge for it, on a four-stroke', () => {
    const seen = [{ check: 'oil-level', outcomes: ['none'], at }];
    expect(now({ facts, seen }).mustNot(check('smoke'))).toBe('there is no oil in it');
    expect(now({ facts, seen }).mustNot(check('compression-dry'))).toBeUndefined();
    const sludge = [{ check: 'oil-smell-and-feel', outcomes: ['milky'], at }];
    expect(now({ facts, seen: sludge }).mustNot(check('smoke'))).toBe('there is fuel or water in the oil');
    const filled = { oil: '2026-05-05T08:00:00.000Z' };
    expect(now({ facts, seen, filled }).mustNot(check('smoke'))).toBeUndefined();
  });
});
