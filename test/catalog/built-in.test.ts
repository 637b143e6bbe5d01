import { describe, expect, test } from 'vitest';
import { architectures, builtInCatalog, byId, componentsOf, loadCatalog } from '../../src/catalog/index.js';
import { sectionNames } from '../../src/catalog/schema/sections.js';
import { builtInPacks } from './pack-files.js';

const catalog = builtInCatalog();

describe('the built-in packs', () => {
  test('say the same read from their text as read beforehand', () => {
    expect(loadCatalog(builtInPacks).catalog).toEqual(catalog);
  });

  test('are read once', () => {
    expect(builtInCatalog()).toBe(catalog);
  });

  test('replace nothing of each other', () => {
    expect(loadCatalog(builtInPacks).replaced).toEqual([]);
  });

  test.each(sectionNames)('say something of %s', (section) => {
    expect(catalog[section].length).toBeGreaterThan(0);
  });
});

describe('the words of the packs', () => {
  const texts = builtInPacks.map(({ file, text }) => [file, text] as const);

  test.each(texts)('%s names nothing by a sheet number', (_, text) => {
    expect(text.match(/\b(FU|AI|IG|CO|LU|CL|EX|GV|ST|DR|TQ)-?\d{1,2}\b|\b[TVHQY]-?\d{2}\b/g)).toBeNull();
  });

  test.each(texts)('%s is American English', (file, text) => {
    const british =
      /aluminium|carburett?or?s?ter|carburettor|colour|\bgrey|fibre|centre|vapour|\bpetrol\b|oxidis|spanner|litre|tyre|mould|\bearth|neutralis|stabilis|adaptor|\bbush\b|millimetre/gi;
    const found = text.match(british) ?? [];
    // the vocabulary of labels, and that of what people type, know how others spell
    const known: Record<string, string> = { 'spec-vocabulary.yaml': 'carburettor', 'words.yaml': 'petrol' };
    expect(found.filter((word) => word !== known[file])).toEqual([]);
  });

  test.each(texts)('%s leaves no shorthand of the sheet behind', (_, text) => {
    expect(text.match(/\[seen\]|\bTDC\b|\bPTO\b|\b2T\b|\bVS\b|\bHS\b/g)).toBeNull();
  });
});

describe('every number has its origin', () => {
  test('each figure with a unit names where it comes from', () => {
    let figures = 0;
    const visit = (value: unknown): void => {
      if (Array.isArray(value)) value.forEach(visit);
      else if (typeof value === 'object' && value !== null) {
        if ('unit' in value && ('from' in value || 'to' in value || 'low' in value)) {
          figures++;
          expect(value).toHaveProperty('origin.detail');
        }
        Object.values(value).forEach(visit);
      }
    };
    visit(catalog);
    expect(figures).toBeGreaterThan(250);
  });

  test('each fault, check and component says so too', () => {
    for (const { origin } of [...catalog.faults, ...catalog.checks, ...catalog.components]) {
      expect(origin).toEqual({ from: 'rule of thumb', detail: 'trade judgement, no source' });
    }
  });

  test('what was read in a named source names it', () => {
    const endPlay = byId(catalog.measurements).get('crankshaft-end-play')!.typicalNew[0]!;
    expect(endPlay).toMatchObject({
      from: 0.002,
      to: 0.008,
      unit: 'in',
      origin: { detail: 'TM 5-4240-501-14P' },
    });
    const bladeStop = byId(catalog.cautions).get('blade-stop')!.figures![0]!;
    expect(bladeStop).toMatchObject({
      to: 3,
      unit: 's',
      origin: { from: 'standard', detail: '16 CFR 1205.5' },
    });
  });

  test('what was only seen second-hand says so', () => {
    const gap = byId(catalog.measurements).get('points-gap')!.typicalNew[0]!;
    expect(gap.origin.detail).toBe('seen in a public page or manual excerpt, second-hand');
  });
});

describe('faults', () => {
  test('main causes of a hard start add up to 100', () => {
    const total = catalog.faults.reduce((sum, fault) => sum + fault.mainCausePer100HardStarts, 0);
    expect(total).toBeCloseTo(100, 1);
  });

  test('shares of the mixed intake add up to 100', () => {
    expect(catalog.intakeShares.reduce((sum, { per100 }) => sum + per100, 0)).toBe(100);
  });

  test('each is raised by at least one check', () => {
    const raised = new Set(catalog.checks.flatMap(({ links }) => links.map(({ fault }) => fault)));
    expect(catalog.faults.filter(({ id }) => !raised.has(id)).map(({ id }) => id)).toEqual([]);
  });

  test('each serious one and each fuel leak blocks the hand-over, and nothing that is safe does', () => {
    const leaks = ['float-faulty', 'bowl-seal-leaking', 'fuel-hose-perished'];
    for (const { id, safety, blocksHandOver } of catalog.faults) {
      if (safety === 3 || leaks.includes(id)) expect(blocksHandOver, id).toBeDefined();
      if (safety < 2) expect(blocksHandOver, id).toBeUndefined();
    }
  });

  test('each has a repair with its minutes, and each part it wants has a price', () => {
    const priced = new Set(catalog.prices.flatMap(({ names }) => names));
    for (const { id, repair, repairMinutes, parts } of catalog.faults) {
      expect(repair, id).not.toBe('');
      expect(repairMinutes, id).toBeGreaterThan(0);
      expect(
        parts.filter((part) => !priced.has(part)),
        id,
      ).toEqual([]);
    }
  });

  test('a leaking needle brings fuel into the oil, and that wears out bore and rod', () => {
    const faults = byId(catalog.faults);
    expect(faults.get('inlet-needle-leaking')!.causes!.map(({ fault }) => fault)).toEqual([
      'oil-thinned-by-fuel',
    ]);
    expect(faults.get('oil-thinned-by-fuel')!.causes!.map(({ fault }) => fault)).toEqual([
      'rings-and-bore-worn',
      'bore-scored',
      'connecting-rod-loose-or-broken',
    ]);
  });

  test('a mower that struck something has its own frequencies', () => {
    const struck = catalog.priors.filter(({ when }) => when.struck === 'yes');
    expect(struck.map(({ faults, presentPer100 }) => [faults[0], presentPer100])).toEqual(
      expect.arrayContaining([
        ['flywheel-key-part-sheared', 55],
        ['crankshaft-bent', 10],
        ['blade-loose', 15],
      ]),
    );
  });
});

describe('checks', () => {
  const outcomesOf = new Map(
    catalog.checks.map(({ id, outcomes }) => [id, outcomes.map((outcome) => outcome.id)]),
  );

  test('tell a fuel that is only flat from one that is varnish', () => {
    const { links } = byId(catalog.checks).get('tank-fuel-in-a-jar')!;
    const stale = links.filter(({ fault }) => fault === 'stale-fuel');
    // fuel that is fresh in the jar clears stale fuel, and varnish is stale fuel, seen: both were told too weakly
    expect(stale.map(({ outcomes, strength }) => [outcomes, strength])).toEqual([
      [['flat-smell'], 'strong'],
      [['dark-varnish'], 'seen'],
    ]);
  });

  test('keep together outcomes that are as likely together: low or none', () => {
    const { links } = byId(catalog.checks).get('oil-level')!;
    expect(links[0]).toMatchObject({
      outcomes: ['low', 'none'],
      fault: 'oil-low-or-black',
      // a low level is the fault itself, seen
      strength: 'seen',
    });
  });

  test('good leak-down on an engine that runs badly points at key, cam and muffler', () => {
    const { links } = byId(catalog.checks).get('leak-down')!;
    const good = links.filter(({ outcomes }) => outcomes.includes('low'));
    expect(good.map(({ fault, strength }) => [fault, strength])).toEqual([
      ['flywheel-key-part-sheared', 'medium'],
      ['cam-timing-out', 'medium'],
      ['cam-lobe-worn', 'medium'],
      ['muffler-blocked', 'medium'],
    ]);
    expect(good.every(({ withComplaint }) => withComplaint?.includes('no-power'))).toBe(true);
    expect(
      links.some(({ outcomes, fault }) => outcomes.includes('will-not-hold') && fault === 'muffler-blocked'),
    ).toBe(false);
  });

  test('each differential check repeats another and bypasses a suspect that it accuses', () => {
    const differentials = catalog.checks.filter(({ differentialOf }) => differentialOf);
    expect(differentials.map(({ id }) => id)).toEqual(
      expect.arrayContaining([
        'spark-stop-wire-off',
        'known-good-plug',
        'spark-sensor-unplugged',
        'fuel-flow-cap-loosened',
        'compression-after-oil',
        'muffler-off-trial',
        'throttle-held-by-hand',
      ]),
    );
    for (const { id, links, differentialOf } of differentials) {
      const { check, after, bypasses, changed } = differentialOf!;
      expect(check).not.toBe(id);
      expect(outcomesOf.get(check)).toEqual(expect.arrayContaining([...after]));
      for (const fault of bypasses) {
        const accused = links.some(
          (link) => link.fault === fault && link.outcomes.some((each) => changed.includes(each)),
        );
        expect(accused, `${id} bypasses ${fault}`).toBe(true);
      }
    }
  });

  test('oil in the cylinder spoils the dry readings, fuel down the throat the plug', () => {
    const checks = byId(catalog.checks);
    expect(checks.get('compression-after-oil')!.destroys).toEqual(
      expect.arrayContaining(['compression-dry', 'leak-down', 'leak-down-listen']),
    );
    expect(checks.get('fuel-down-the-throat')!.destroys).toEqual(['plug-tip', 'compression-dry']);
  });

  test('what a check destroys stands in the list of evidence as well', () => {
    for (const { id, destroys = [] } of catalog.checks) {
      for (const lost of destroys) {
        const listed = catalog.evidence.some(
          ({ checks, destroyedBy }) => checks?.includes(lost) && destroyedBy.checks?.includes(id),
        );
        expect(listed, `${id} destroys ${lost}`).toBe(true);
      }
    }
  });

  test('the shared readings are known as kin', () => {
    expect(catalog.checkKin.map(({ checks }) => checks)).toEqual(
      expect.arrayContaining([
        ['slow-pull', 'backward-rebound', 'compression-dry', 'compression-after-oil', 'leak-down'],
        ['spark-across-gap', 'spark-stop-wire-off', 'stop-wire-resistance', 'spark-sensor-unplugged'],
      ]),
    );
  });

  test('the eight cheap splitters take about 25 minutes', () => {
    const checks = byId(catalog.checks);
    const minutes = catalog.splitters
      .flatMap((splitter) => splitter.checks)
      .map((id) => checks.get(id)!.minutes);
    const total = minutes.reduce((sum, each) => sum + each, 0);
    expect(total).toBeGreaterThanOrEqual(20);
    expect(total).toBeLessThanOrEqual(35);
  });
});

describe('taking apart', () => {
  test.each(architectures)(
    'every piece of a %s engine can be reached: nothing waits for itself',
    (architecture) => {
      const list = componentsOf(catalog, architecture);
      const off = new Set<string>();
      for (let round = 0; round < list.length; round++) {
        for (const { id, before } of list)
          if (before.every(({ component }) => off.has(component))) off.add(id);
      }
      expect(list.filter(({ id }) => !off.has(id)).map(({ id }) => id)).toEqual([]);
    },
  );

  test.each(architectures)(
    'a full teardown of a %s engine takes as long as the stages say',
    (architecture) => {
      const full = byId(catalog.stageParts)
        .get('taking-apart')!
        .activeMinutes.find(({ of }) => of === 'full')!;
      const minutes = componentsOf(catalog, architecture)
        // of the engine itself: what it drives, and what not every one has, is no part of the stage’s figure
        .filter(
          ({ comesOffAs, onlyOn, sometimes }) => comesOffAs !== 'machine work' && !onlyOn?.use && !sometimes,
        )
        .reduce((sum, { minutesOff }) => sum + minutesOff, 0);
      expect(minutes).toBeGreaterThanOrEqual(full.from);
      expect(minutes).toBeLessThanOrEqual(full.to);
    },
  );

  test.each(['side-valve', 'overhead-valve'] as const)(
    'the valves of a %s engine are reached in a top end’s time',
    (architecture) => {
      const top = byId(catalog.stageParts)
        .get('taking-apart')!
        .activeMinutes.find(({ of }) => of === 'top end')!;
      const components = byId(componentsOf(catalog, architecture));
      const needed = new Set<string>();
      const need = (id: string): void => {
        needed.add(id);
        for (const { component } of components.get(id)!.before) need(component);
      };
      need('valves');
      const minutes = [...needed].reduce((sum, id) => sum + components.get(id)!.minutesOff, 0);
      expect(minutes).toBeGreaterThanOrEqual(top.from);
      expect(minutes).toBeLessThanOrEqual(top.to);
    },
  );

  test('the same id is the same thing on every architecture: its torque goes by one spec', () => {
    const specs = new Map<string, Set<string | undefined>>();
    for (const { id, torqueSpec } of catalog.components) {
      if (torqueSpec) specs.set(id, (specs.get(id) ?? new Set()).add(torqueSpec));
    }
    expect([...specs].filter(([, names]) => names.size > 1)).toEqual([]);
  });

  test('head bolts of a side-valve engine: six to ten, 5/16-18, of different lengths', () => {
    const head = byId(componentsOf(catalog, 'side-valve')).get('cylinder-head')!;
    expect(head.fasteners[0]).toMatchObject({
      what: 'bolt',
      count: 6,
      countTo: 10,
      sizes: ['5/16-18'],
      lengthsDiffer: true,
    });
    expect(head.lookAlikes).toContain('head-bolt-lengths');
  });

  test('the rod waits for the camshaft only where the cam blocks its cap', () => {
    const piston = byId(componentsOf(catalog, 'side-valve')).get('piston-with-rod')!;
    expect(piston.before.find(({ component }) => component === 'camshaft')!.when).toEqual({
      variants: ['cam-blocks-rod-cap'],
    });
  });

  test('a part that opens a port says which, and every port is opened by something', () => {
    const opened = new Set(catalog.components.flatMap(({ opens }) => opens ?? []));
    expect(catalog.ports.filter(({ id }) => !opened.has(id)).map(({ id }) => id)).toEqual([]);
  });

  test('every look-alike hangs on at least one part', () => {
    const named = new Set(catalog.components.flatMap(({ lookAlikes }) => lookAlikes ?? []));
    expect(catalog.lookAlikes.filter(({ id }) => !named.has(id)).map(({ id }) => id)).toEqual([]);
  });

  test('every variant is asked for by something', () => {
    const text = JSON.stringify([catalog.components, catalog.assemblies, catalog.checks, catalog.faults]);
    expect(catalog.variants.filter(({ id }) => !text.includes(`"${id}"`)).map(({ id }) => id)).toEqual([]);
  });
});

describe('cleaning', () => {
  test('caustic never on aluminum, and never together with it', () => {
    const pair = byId(catalog.agentsOnMaterials).get('caustic-on-aluminum')!;
    expect(pair.verdict).toBe('never');
    expect(catalog.neverCombine.find(({ id }) => id === 'caustic-and-light-metal')).toMatchObject({
      a: { agents: ['caustic'] },
      b: { materials: ['aluminum', 'zinc-alloy'] },
    });
  });

  test('each pair of agent and material is judged once', () => {
    const pairs = catalog.agentsOnMaterials.map(({ agent, material }) => `${agent} ${material}`);
    expect(new Set(pairs).size).toBe(pairs.length);
  });

  test('no way of cleaning uses an agent on a material that must never meet it', () => {
    const verdicts = new Map(
      catalog.agentsOnMaterials.map(({ agent, material, verdict }) => [`${agent} ${material}`, verdict]),
    );
    const wrong = catalog.cleanings.flatMap(({ id, agents, materials }) =>
      agents.flatMap((agent) =>
        materials
          .filter((material) => verdicts.get(`${agent} ${material}`) === 'never')
          .map((material) => `${id}: ${agent} on ${material}`),
      ),
    );
    expect(wrong).toEqual([]);
  });
});

describe('run-up', () => {
  test('goes through its phases in order', () => {
    const phases = catalog.runUp.map(({ phase }) => phase);
    const changes = phases.filter((phase, index) => phase !== phases[index - 1]);
    expect(new Set(changes).size).toBe(changes.length);
    expect(changes[0]).toBe('before-fuel');
  });

  test('stopping, leaks, guards and the blade bar the hand-over', () => {
    const bars = catalog.runUp.filter(({ barsHandOver }) => barsHandOver).map(({ id }) => id);
    expect(bars).toEqual(
      expect.arrayContaining([
        'guards-on',
        'no-fuel-leak',
        'stop-each-position',
        'operator-presence',
        'blade-stop-time',
        'top-speed-set',
      ]),
    );
  });

  test('idle stop, then governed idle, then top speed', () => {
    const order = catalog.runUp.filter(({ phase }) => phase === 'governed-speed').map(({ id }) => id);
    expect(order.slice(0, 3)).toEqual(['idle-stop-set', 'governed-idle-set', 'top-speed-set']);
  });

  test('a step that asks for a reading says of what kind', () => {
    expect(catalog.runUp.filter(({ answer, kind }) => answer === 'reading' && kind === undefined)).toEqual(
      [],
    );
  });
});

describe('what leaves in one piece', () => {
  test('says how long it takes and which of its own pieces hold it', () => {
    for (const { id, minutesOff, heldBy, components } of catalog.assemblies) {
      expect(minutesOff, id).toBeGreaterThan(0);
      expect(heldBy, id).toBeDefined();
      expect(heldBy!.filter((held) => !components.includes(held))).toEqual([]);
    }
  });

  test('names both of each pair that pass for one another', () => {
    for (const { id, kind, pair } of catalog.lookAlikes)
      expect(pair !== undefined, id).toBe(kind === 'look-alike');
  });
});
