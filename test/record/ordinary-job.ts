import { createHash } from 'node:crypto';
import sharp from 'sharp';
import type { Job, RawEntry, Shop } from '../../src/job/index.js';
import { shopLog } from '../../src/job/index.js';
import type { PrintablePicture } from '../../src/record/index.js';
import { Log, length, torque, w } from './log.js';

export interface Fixture {
  readonly entries: readonly RawEntry[];
  readonly job: Job;
  readonly shop: Shop;
  readonly pictures: ReadonlyMap<string, PrintablePicture>;
}

const sheet = (page: number) => ({ from: "maker's sheet" as const, detail: `page ${page}` });

export function ordinaryShop(units: 'inch' | 'metric' = 'inch'): Shop {
  const log = new Log(shopLog, '2025-10-01');
  log.add('setting', { key: 'shop-name', value: 'Millrace Engine Bench' });
  log.add('setting', { key: 'shop-address', value: '4 Weir Lane, Upper Ferry' });
  log.add('setting', { key: 'units', value: units });
  log.add('setting', { key: 'next-due-note', value: 'Bring the machine cold and with the tank empty.' });
  log.add('instrument', {
    tool: 'micrometer',
    name: 'Outside micrometer 0–1 in',
    resolution: length('0.0001 in'),
    uncertainty: length('0.0002 in'),
  });
  log.add('instrument', {
    tool: 'bore-gauge',
    name: 'Bore gauge',
    resolution: length('0.0005 in'),
    uncertainty: length('0.0006 in'),
  });
  log.add('instrument', {
    tool: 'feeler',
    name: 'Feeler gauges',
    resolution: length('0.001 in'),
    uncertainty: length('0.0005 in'),
  });
  log.add('wrench', {
    tool: 'small-click',
    name: 'Click wrench 40–200 in-lb',
    min: torque('40 in-lb'),
    max: torque('200 in-lb'),
    accuracyPercent: 4,
  });
  return log.shop();
}

/** A drawn picture: nothing real in it. */
export async function drawnPicture(text: string, hue: number): Promise<PrintablePicture> {
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="800" height="600"><rect width="800" height="600" fill="hsl(${hue} 30% 78%)"/><circle cx="400" cy="280" r="170" fill="hsl(${hue} 22% 55%)"/><circle cx="400" cy="280" r="90" fill="hsl(${hue} 15% 35%)"/><text x="400" y="560" font-size="44" text-anchor="middle">${text}</text></svg>`;
  return { bytes: await sharp(Buffer.from(svg)).jpeg({ quality: 80 }).toBuffer(), mime: 'image/jpeg' };
}

export const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');

/** An invented pump: stored four winters, three faults, one part put back for now, one struck reading. */
export async function ordinaryJob(options: { invented?: boolean } = {}): Promise<Fixture> {
  const log = new Log();
  const pictures = new Map<string, PrintablePicture>();

  async function photograph(
    caption: string,
    about: string,
    when: 'before' | 'after' | 'during',
    hue: number,
  ) {
    const picture = await drawnPicture(caption, hue);
    const hash = sha256(picture.bytes);
    pictures.set(hash, picture);
    log.add('photograph', {
      picture: { sha256: hash, mime: 'image/jpeg', bytes: picture.bytes.length, width: 800, height: 600 },
      caption,
      stage: when === 'before' ? 'teardown' : 'assembly',
      about,
      when,
    });
  }

  log.add('open', {
    tag: 17,
    title: 'Water pump, overhead-valve, 195 cc',
    invented: options.invented ?? true,
  });
  log.add('intake', {
    machine: 'Two-inch water pump',
    use: 'pump',
    owner: 'J. Alder',
    complaint: 'Ran fine when I parked it. Now it starts only after many pulls and then only on half choke.',
    architecture: 'overhead-valve',
    ignition: 'solid-state',
    fuelSystem: 'float-bowl',
    shaft: 'horizontal',
    governor: 'flyweight',
    storedMonths: 48,
    fuelLeftIn: 'yes',
    tipped: 'unknown',
    tried: 'New plug and starting spray',
    missing: 'Muffler guard screw',
    consent: { given: true, by: 'J. Alder', how: 'signed at the bench' },
    stopLimit: { amount: 180, currency: 'USD' },
  });
  log.add('identity', {
    how: 'measured',
    bore: w('66 mm', 'length'),
    stroke: w('57 mm', 'length'),
    leavesOpen: 'Jet and governor spring variant; plate is missing.',
  });
  await photograph('Linkages as it came in', 'linkages', 'before', 40);
  log.add('observation', {
    check: 'tank-fuel',
    title: 'Fuel in the tank',
    outcomes: ['dark', 'varnish smell'],
    conditions: 'cold, before draining',
  });
  log.add('observation', {
    check: 'spark',
    title: 'Spark across a tester',
    outcomes: ['strong'],
    conditions: 'cold, rope pull',
  });
  log.add('observation', {
    check: 'bowl-sample',
    title: 'Carburetor bowl',
    outcomes: ['varnish', 'idle passages plugged'],
    words: 'Green crust round the main jet.',
    conditions: 'opened before draining',
  });
  const wrongCompression = log.add('observation', {
    check: 'compression',
    title: 'Compression',
    outcomes: ['85 psi'],
    conditions: 'cold, choke open',
    doubtful: true,
  });
  log.add('strike', { entry: wrongCompression, reason: 'release valve fitted, the reading means little' });
  log.add('observation', {
    check: 'leak-down',
    title: 'Leak-down at the firing top',
    outcomes: ['air heard in the muffler'],
    words: '46 % at 80 psi.',
    conditions: 'cold, cylinder held',
    doubtful: true,
  });
  log.add('decision', {
    about: 'fault',
    which: 'idle-plugged',
    title: 'Idle passages plugged',
    choice: 'repair',
    reason: 'Runs only on half choke; varnish in the bowl.',
  });
  log.add('decision', {
    about: 'fault',
    which: 'exhaust-valve-open',
    title: 'Exhaust valve does not close',
    choice: 'repair',
    reason: 'Air heard in the muffler.',
  });
  log.add('decision', {
    about: 'fault',
    which: 'stale-fuel',
    title: 'Fuel gone stale',
    choice: 'repair',
    reason: 'Dark, varnish smell.',
  });
  log.add('decision', {
    about: 'machine',
    title: 'Worth repairing',
    choice: 'repair',
    reason: 'Sound bore, low hours, owner agrees.',
    amount: { amount: 140, currency: 'USD' },
  });
  log.add('part', {
    part: 'head-gasket',
    name: 'Head gasket',
    count: 1,
    state: 'fitted',
    number: 'HG-66',
    supplier: 'Ferry Parts',
    price: { amount: 12.4, currency: 'USD' },
  });
  log.add('part', { part: 'carb-kit', name: 'Carburetor kit', count: 1, state: 'fitted', number: 'CK-195' });
  log.add('part', { part: 'fuel-hose', name: 'Fuel hose, 1/4 in', count: 1, state: 'fitted' });
  log.add('part', {
    part: 'recoil-spring',
    name: 'Recoil spring',
    count: 1,
    state: 'ordered',
    number: 'RS-2',
    due: '2025-12-01',
  });
  log.add('spec', {
    spec: 'head-torque',
    label: 'Cylinder head bolts',
    line: 'head bolts 140 in-lb',
    value: torque('140 in-lb'),
    origin: sheet(31),
  });
  log.add('spec', { spec: 'oil-grade', label: 'Oil', line: 'oil SAE 30', text: 'SAE 30', origin: sheet(4) });
  log.add('spec', {
    spec: 'plug-gap',
    label: 'Spark plug gap',
    line: 'plug gap .030 in',
    value: length('0.030 in'),
    origin: sheet(6),
  });
  log.add('spec', {
    spec: 'valve-clearance',
    label: 'Valve clearance, cold',
    line: 'valves .005-.007 in',
    value: length('0.005 in'),
    upTo: length('0.007 in'),
    origin: sheet(22),
  });
  const off = (step: string, title: string, bag: string, what: string, size: string, count: number) =>
    log.add('step', {
      step,
      stage: 'teardown',
      title,
      state: 'done',
      bag,
      fasteners: [{ what, size, count }],
    });
  off('off-shroud', 'Shroud off', '1', 'screw', '1/4-20', 4);
  off('off-tank', 'Tank off', '2', 'nut', '1/4-20', 2);
  off('off-carburetor', 'Carburetor off', '3', 'nut', 'M6', 2);
  off('off-muffler', 'Muffler off', '4', 'nut', 'M8x1.25', 2);
  off('off-rocker-cover', 'Rocker cover off', '5', 'bolt', 'M6', 4);
  off('off-head', 'Cylinder head off', '6', 'bolt', '5/16-18', 6);
  await photograph('Cylinder head with carbon', 'cylinder-head', 'before', 20);
  await photograph('Carburetor bowl with varnish', 'carburetor', 'before', 95);
  const valve = {
    measure: 'exhaust-clearance',
    title: 'Exhaust valve clearance, cold',
    instrument: 'feeler',
    limit: { min: length('0.005 in'), max: length('0.007 in'), origin: sheet(22) },
  };
  log.add('measurement', { ...valve, value: length('0.001 in'), phase: 'as-found' });
  log.add('measurement', {
    measure: 'bore',
    title: 'Cylinder bore',
    value: length('2.5990 in'),
    instrument: 'bore-gauge',
    place: '10 mm below the top',
    direction: 'across the shaft',
    temperature: w('68 °F', 'temperature'),
    limit: { max: length('2.6030 in'), origin: sheet(18) },
    phase: 'as-found',
  });
  log.add('measurement', {
    measure: 'crankpin',
    title: 'Crankpin',
    value: length('0.9841 in'),
    instrument: 'micrometer',
    place: 'middle',
    limit: { min: length('0.9840 in'), origin: sheet(19) },
    phase: 'as-found',
  });
  log.add('measurement', {
    measure: 'head-flatness',
    title: 'Head flatness',
    value: length('0.002 in'),
    instrument: 'feeler',
    limit: { max: length('0.003 in'), origin: { from: 'rule of thumb', detail: 'common practice' } },
    phase: 'as-found',
  });
  log.add('measurement', { ...valve, value: length('0.006 in'), phase: 'after' });
  log.add('measurement', {
    measure: 'plug-gap',
    title: 'Spark plug gap',
    value: length('0.030 in'),
    phase: 'after',
    instrument: 'feeler',
  });
  log.add('decision', {
    about: 'component',
    which: 'carburetor',
    title: 'Carburetor',
    choice: 'recondition',
    reason: 'Body sound; passages cleared, kit fitted.',
  });
  log.add('decision', {
    about: 'component',
    which: 'exhaust-valve',
    title: 'Exhaust valve',
    choice: 'recondition',
    reason: 'Lapped in, seats all round.',
  });
  log.add('decision', {
    about: 'part',
    which: 'recoil-spring',
    title: 'Recoil spring',
    choice: 'provisional',
    reason: 'Tired but whole; the new one is late.',
    until: 'the new spring arrives, or the next oil change',
  });
  const on = (step: string, title: string, putsBack?: string) =>
    log.add('step', { step, stage: 'assembly', title, state: 'done', ...(putsBack && { putsBack }) });
  on('on-head', 'Cylinder head on, new gasket', 'off-head');
  log.add('joint', {
    joint: 'cylinder-head',
    name: 'Cylinder head',
    holes: [
      { xMm: 0, yMm: 40 },
      { xMm: 0, yMm: -40 },
      { xMm: -55, yMm: 36 },
      { xMm: 55, yMm: -36 },
      { xMm: 55, yMm: 36 },
      { xMm: -55, yMm: -36 },
    ],
    thread: '5/16-18',
    target: torque('140 in-lb'),
    targetOrigin: sheet(31),
    passes: [0.5, 1],
    finalRound: true,
    order: [1, 2, 3, 4, 5, 6],
    orderOrigin: sheet(31),
    wrench: 'small-click',
    condition: 'dry threads',
    bottomEdge: 'exhaust side',
  });
  for (const [pass, set] of [
    [1, '70 in-lb'],
    [2, '140 in-lb'],
    [3, '140 in-lb'],
  ] as const) {
    for (let hole = 1; hole <= 6; hole++) {
      log.add('torque', {
        joint: 'cylinder-head',
        hole,
        pass,
        set: torque(set),
        wrench: 'small-click',
        result: 'clicked',
      });
    }
  }
  on('on-rocker-cover', 'Rocker cover on', 'off-rocker-cover');
  on('on-muffler', 'Muffler on', 'off-muffler');
  on('on-carburetor', 'Carburetor on', 'off-carburetor');
  on('on-tank', 'Tank on', 'off-tank');
  on('on-shroud', 'Shroud on', 'off-shroud');
  await photograph('Cylinder head, cleaned and flat', 'cylinder-head', 'after', 200);
  await photograph('Carburetor bowl after cleaning', 'carburetor', 'after', 210);
  await photograph('Linkages back in the same holes', 'linkages', 'after', 220);
  log.add('photograph', {
    clip: { file: 'bench-1103.mp4', from: '00:12:30', to: '00:13:05' },
    caption: 'Governor link off',
    stage: 'teardown',
    when: 'during',
  });
  log.add('run-up', { item: 'guards-on', title: 'Guards on, rotor clear', result: 'ok' });
  log.add('run-up', { item: 'stop-each-position', title: 'Stop switch stops it', result: 'ok' });
  log.add('run-up', { item: 'no-fuel-leak', title: 'No fuel leak after 15 minutes', result: 'ok' });
  log.add('run-up', {
    item: 'top-speed-set',
    title: 'Governed speed, no load',
    result: 'reading',
    value: w('3600 rpm', 'rotation'),
  });
  log.add('run-up', {
    item: 'fasteners-after-heat',
    title: 'Muffler and mounts tight after heat',
    result: 'ok',
  });
  log.add('run-up', {
    item: 'pump-guards-and-joints',
    title: 'Pump’s guard on, nothing drips',
    result: 'ok',
  });
  log.add('note', { words: 'Owner pays on pick-up.', stage: 'hand-over' });
  log.add('stage', { stage: 'run-up', state: 'finished', reason: 'all done' });
  log.add('hand-over', {
    receivedBy: 'J. Alder',
    told: 'Drain the carburetor before the winter.',
    declined: ['Muffler guard left off against advice'],
    nextDue: [
      { what: 'First oil change', when: 'after 5 hours' },
      { what: 'Oil change and valve check', when: '2026-05-15' },
    ],
  });
  return { entries: log.entries, job: log.fold(), shop: ordinaryShop(), pictures };
}
