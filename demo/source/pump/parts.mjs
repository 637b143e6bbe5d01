import { page } from './worth-it.mjs';

const supplier = 'Oxbow Small Parts';
const money = (amount) => ({ amount, currency: '$' });
const line = (of, name, amount, more = {}) => ({ of, name, price: money(amount), count: 1, ...more });
const bought = (of, name, number, amount, more = {}) => line(of, name, amount, { number, supplier, ...more });

/** `of` is the step that fits it; `renews` is what the catalog calls it when it is renewed each time. */
const order = [
  bought('cylinder-head', 'Head gasket', 'OX-195-11', 9.8, { renews: 'head gasket' }),
  bought('carburetor-bowl', 'Carburetor kit: bowl ring, needle', 'OX-195-32', 10.4, { renews: 'bowl ring' }),
  bought('carburetor-bowl', 'Bowl nut washer', 'OX-195-33', 0.8, { renews: 'bowl nut washer' }),
  bought('carburetor', 'Intake gasket, carburetor side', 'OX-195-14', 2.1, { renews: 'intake gasket' }),
  bought('insulator-block', 'Intake gasket, block side, with slot', 'OX-195-13', 2.1, {
    renews: 'intake gasket',
  }),
  bought('muffler', 'Muffler gasket', 'OX-195-15', 3.1, { renews: 'exhaust gasket' }),
  bought('rocker-cover', 'Rocker cover gasket', 'OX-195-16', 3.6, { renews: 'rocker cover gasket' }),
  bought('valves', 'Intake stem seal', 'OX-195-41', 2.3, { part: 'intake-stem-seal' }),
  bought('air-cleaner-element', 'Air-cleaner element', 'OX-195-51', 8.9, { renews: 'air-cleaner element' }),
  bought('air-cleaner-base', 'Air-cleaner gasket', 'OX-195-52', 1.2, { renews: 'air-cleaner gasket' }),
  bought('never', 'Recoil rope, 4 mm, with grip', 'OX-RR-4', 3.9, { part: 'recoil-rope', due: '2026-04-02' }),
];

const fromTheShelf = [
  line('spark-plug', 'Spark plug with its washer', 5.2, { renews: 'plug crush washer' }),
  line('fuel-hose', 'Fuel hose, 1/4 in', 3.1, { renews: 'fuel hose' }),
  line('fuel-hose', 'In-line filter', 3.4, { renews: 'in-line filter' }),
  line('muffler-guard', 'Muffler guard screw, M5 × 10 mm', 0.4, { part: 'muffler-guard-screw' }),
  line('oil', 'Oil SAE 30, quart', 6, { part: 'engine-oil', consumable: true }),
];

const kept = [
  line('fuel-tank', 'Rubber pads of the tank', 2.8, { renews: 'rubber pads', words: 'Still soft, kept.' }),
  line('cylinder-head', 'Head dowels', 1.6, { renews: 'dowels', words: 'Tight in the block, kept.' }),
  line('valves', 'Exhaust valve', 14.5, { part: 'exhaust-valve', words: 'Margin 3/64 in: lapped instead.' }),
];

/** What two suppliers offered for it; the kit's ring and washer fit this bowl, its needle may not. */
const offers = [
  ['oxbow-head-gasket', 'Head gasket', 'oxbow-small-parts', 9.8, ['cylinder-head', 'head gasket'], 3, 'sure'],
  [
    'oxbow-bowl-kit',
    'Bowl ring and needle',
    'oxbow-small-parts',
    10.4,
    ['carburetor-bowl', 'bowl ring'],
    3,
    'sure',
  ],
  [
    'tern-head-gasket',
    'Head gasket, copy',
    'tern-engine-supply',
    6.1,
    ['cylinder-head', 'head gasket'],
    9,
    'unsure',
  ],
];

function takeOffers({ log, know }) {
  for (const [offer, name, from, price, renews, leadDays, fit] of offers) {
    const part = know.oneTimePart('overhead-valve', ...renews);
    log.add('offer', {
      offer,
      name,
      supplier: from,
      price: money(price),
      contains: { [part]: 1 },
      leadDays,
      fit,
    });
  }
}

const laterGasket = 'OX-195-11B';
const due = '2026-03-19';

/** One line of the log about a part; the handle is the one that the application would give it. */
function put({ log, know }, { of, renews, part, ...rest }, state, more = {}) {
  const handle = part ?? know.oneTimePart('overhead-valve', of, renews);
  const component = renews ? { component: of } : {};
  log.add('part', { part: handle, ...component, ...rest, state, ...more }, { seconds: 14 });
}

/** One order for all of it, before the bench is cleared. */
export function orderParts(bench) {
  bench.log.clock('2026-03-16 16:30');
  for (const each of [...order, ...fromTheShelf, ...kept]) {
    put(bench, { ...each, words: undefined, due: undefined }, 'wanted');
  }
  for (const each of kept) put(bench, each, 'dropped');
  takeOffers(bench);
  for (const each of order) put(bench, { due, ...each }, 'ordered');
  for (const each of fromTheShelf) put(bench, each, 'arrived', { words: 'From the shelf.' });
}

/** Three days later; laid beside the old one before anything is fitted. */
export function partsArrive(bench) {
  const { log, photograph } = bench;
  log.clock('2026-03-19 09:10');
  for (const each of order.filter(({ part }) => part !== 'recoil-rope')) put(bench, each, 'arrived');
  photograph(
    'head-gaskets',
    'Old head gasket and the one that came: no oil return beside the push rods',
    'parts',
    'during',
    'head-gasket',
  );
  const [gasket] = order;
  put(bench, gasket, 'mismatch', {
    words: 'The oil return beside the push rods is missing. Same outline, another engine.',
  });
  log.clock('09:31');
  put(bench, gasket, 'ordered', {
    number: laterGasket,
    due: '2026-03-20',
    words: 'Exchanged by telephone; they send the later pattern overnight.',
  });
  provisionalRope(log);
  cleaning(bench);
  log.clock('2026-03-20 08:15');
  put(bench, gasket, 'arrived', { number: laterGasket, words: 'Laid on the old one: every hole there.' });
  log.add('stage', {
    stage: 'parts',
    state: 'finished',
    reason: 'All here but the recoil rope, which is put back for now.',
  });
}

function provisionalRope(log) {
  log.add('decision', {
    about: 'part',
    which: 'recoil-rope',
    title: 'Recoil rope, frayed at the grip',
    choice: 'provisional',
    reason:
      'Frayed end cut off, 5 in shorter, knot new. Whole over the rest of its length; the new one is on back order.',
    until: 'the new rope arrives, due 2026-04-02; ten minutes, no charge',
  });
}

function cleaning({ log, know, photograph }) {
  log.clock('10:20');
  soak(log, 'soaking', 'Nothing of rubber or plastic left in it.');
  log.add('note', {
    words: 'Fins brushed dry, then blown out at 30 psi with every port still plugged.',
    stage: 'measure',
  });
  log.clock('12:20');
  soak(log, 'drying', 'Rinsed with alcohol, passages blown through.');
  log.clock('13:05');
  soak(log, 'done', 'Bright inside, no white left.');
  log.add('note', {
    words:
      'Exhaust seat narrowed, valve lapped in fine, washed twice. Kerosene in the port: no drop after 5 minutes.',
    stage: 'measure',
  });
  photograph('lapped', 'Exhaust valve after lapping: an even band all round', 'measure', 'after', 'valves');
  const limit = {
    min: know.written('.047 in', 'length'),
    max: know.written('.063 in', 'length'),
    origin: page(27),
  };
  log.add(
    'measurement',
    know.measurement('valve-seat-width', '.055 in', {
      instrument: 'rule-and-blue',
      place: 'exhaust',
      phase: 'after',
      limit,
    }),
  );
  log.add(
    'observation',
    know.observation('spray-through-passages', ['all-exits'], {
      words: 'After the soak: every exit, idle and main.',
      conditions: 'on the bench, body dry',
    }),
  );
  const done = (which, title, reason) =>
    log.add('decision', { about: 'component', which, title, choice: 'recondition', reason });
  done('carburetor', 'Carburetor', 'Body sound; soaked, every passage clear, kit to be fitted.');
  done('valves', 'Exhaust valve', 'Lapped in, even band, margin 3/64 in left.');
}

function soak(log, state, words) {
  log.add('cleaning', {
    cleaning: 'carburetor-body',
    title: 'Carburetor body',
    component: 'carburetor',
    materials: ['aluminum', 'brass'],
    agent: 'petroleum-dip',
    state,
    soakMinutes: 120,
    dryMinutes: 45,
    words,
  });
}

/** What goes on with one step of the assembly. */
export function fitPartsOf(bench, step) {
  for (const each of [...order, ...fromTheShelf].filter(({ of }) => of === step)) {
    put(bench, each, 'fitted', each.renews === 'head gasket' ? { number: laterGasket } : {});
  }
}
