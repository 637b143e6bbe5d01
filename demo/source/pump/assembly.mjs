import { headHoles, headOrder } from './head-joint.mjs';
import { fitPartsOf } from './parts.mjs';
import { steps } from './steps.mjs';
import { clearances } from './teardown.mjs';
import { page } from './worth-it.mjs';

const wrench = 'inch-click-20-200';
const sheetSteps = ['valves', 'cylinder-head', 'head-baffle', 'push-rods', 'rockers', 'rocker-cover'];

/** Last off, first on; the two joints in passes; the squeeze proved before the rest goes over it. */
export function assembly(bench) {
  const { log } = bench;
  log.clock('2026-03-20 08:30');
  putBack(bench, 'carburetor-bowl');
  log.add(
    'measurement',
    bench.know.measurement('float-level', '0.5 mm', {
      instrument: 'drill-shank-and-rule',
      phase: 'after',
      limit: floatLimit(bench.know),
    }),
  );
  for (const id of sheetSteps) {
    putBack(bench, id);
    if (id === 'cylinder-head') headJoint(bench);
    if (id === 'rockers') clearances(bench, 'after', ['.004 in', '.006 in']);
    if (id === 'rocker-cover') coverJoint(bench);
  }
  squeezeProved(bench);
  const rest = steps.map(({ id }) => id).filter((id) => id !== 'carburetor-bowl' && !sheetSteps.includes(id));
  for (const id of rest.toReversed()) {
    putBack(bench, id);
    if (id === 'blower-housing') coil(bench);
  }
  fitPartsOf(bench, 'oil');
  log.add('stage', {
    stage: 'assembly',
    state: 'finished',
    reason: 'Every bag empty, every plug counted back out, both joints clicked in every pass.',
  });
}

function putBack(bench, id) {
  const { log, know } = bench;
  const { bag, fasteners, plugs = [], back } = steps.find((step) => step.id === id);
  const name = know.component('overhead-valve', id).name;
  fitPartsOf(bench, id);
  log.add(
    'step',
    {
      step: `${id}-back`,
      stage: 'assembly',
      title: back.title ?? `${name}: back on`,
      component: id,
      state: 'done',
      putsBack: id,
      fasteners,
      bag,
      unplugged: plugs.map(know.port),
      words: back.words,
    },
    { seconds: 175 },
  );
}

function headJoint({ log, know, photograph }) {
  log.clock('09:12');
  log.add('joint', {
    joint: 'cylinder-head',
    name: 'Cylinder head',
    holes: headHoles,
    thread: 'M8x1.25',
    target: know.written('190 in-lb', 'torque'),
    targetOrigin: page(24),
    passes: [0.5, 1],
    finalRound: true,
    around: [1, 2, 3, 4, 5, 6],
    order: headOrder,
    orderOrigin: {
      from: "maker's sheet",
      detail: 'Marlbridge M195 booklet, p. 25, drawing',
    },
    wrench,
    condition: 'clean and dry',
    bottomEdge: 'exhaust side',
  });
  click(log, know, 'cylinder-head', [
    [headOrder, '95 in-lb'],
    [headOrder, '190 in-lb'],
    [[1, 2, 3, 4, 5, 6], '190 in-lb'],
  ]);
  photograph(
    'torqued',
    'Head tightened: marked in the maker’s order, a line of paint over each bolt',
    'assembly',
    'after',
    'cylinder-head',
  );
}

function coverJoint({ log, know }) {
  log.add('joint', {
    joint: 'rocker-cover',
    name: 'Rocker cover',
    holes: [
      { xMm: -33, yMm: 18 },
      { xMm: 33, yMm: 18 },
      { xMm: 33, yMm: -18 },
      { xMm: -33, yMm: -18 },
    ],
    thread: 'M6x1',
    target: know.written('45 in-lb', 'torque'),
    targetOrigin: page(24),
    passes: [1],
    finalRound: true,
    around: [1, 2, 3, 4],
    order: [1, 3, 2, 4],
    orderOrigin: { from: 'rule of thumb', detail: 'common practice: crosswise' },
    wrench,
    condition: 'new gasket, dry',
    bottomEdge: 'exhaust side',
  });
  click(log, know, 'rocker-cover', [
    [[1, 3, 2, 4], '45 in-lb'],
    [[1, 2, 3, 4], '45 in-lb'],
  ]);
}

function click(log, know, joint, passes) {
  passes.forEach(([order, set], i) => {
    for (const hole of order) {
      log.add(
        'torque',
        { joint, hole, pass: i + 1, set: know.written(set, 'torque'), wrench, result: 'clicked' },
        { seconds: 14 },
      );
    }
  });
}

function squeezeProved({ log, know }) {
  log.clock('10:20');
  const limit = {
    max: know.written('25 %', 'ratio'),
    origin: { from: "shop's own", detail: 'we open the engine above this, at 80 psi through 0.040 in' },
  };
  log.add(
    'measurement',
    know.measurement('leak-down', '9 %', {
      instrument: 'leak-tester',
      place: 'firing top',
      phase: 'after',
      limit,
    }),
  );
  log.add(
    'observation',
    know.observation('leak-down', ['low'], {
      words: '9 %, nothing in the muffler any more.',
      conditions: 'cold, shaft held at firing top, 80 psi, 0.040 in orifice, after the work',
    }),
  );
  log.add(
    'observation',
    know.observation('backward-rebound', ['sharp'], { conditions: 'cold, after the work' }),
  );
}

function coil({ log, know }) {
  const limit = {
    min: know.written('.010 in', 'length'),
    max: know.written('.014 in', 'length'),
    origin: page(22),
  };
  log.add(
    'measurement',
    know.measurement('coil-air-gap', '.012 in', { instrument: 'plastic-feeler', phase: 'after', limit }),
  );
}

const floatLimit = (know) => ({
  min: know.written('-1 mm', 'length'),
  max: know.written('1 mm', 'length'),
  origin: { from: 'rule of thumb', detail: 'parallel within 1 mm, trade judgement' },
});
