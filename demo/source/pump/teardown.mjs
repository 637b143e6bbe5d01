import { steps } from './steps.mjs';
import { page } from './worth-it.mjs';

const shownBefore = {
  'governor-spring': ['governor', 'Governor spring in hole 3, damper round the link'],
  'insulator-block': ['gaskets', 'Gasket stack in order: the slot is on the block side'],
};

/** Off in order, each joint photographed before it was parted. */
export function teardown(bench) {
  const { log, know, photograph } = bench;
  log.clock('2026-03-16 13:24');
  reach(bench);
  log.clock('13:28');
  for (const step of steps.filter(({ id }) => !['valves', 'carburetor-bowl'].includes(id))) {
    if (step.id === 'rockers') clearances(bench, 'as-found', ['.004 in', '.001 in']);
    if (shownBefore[step.id]) photograph(...shownBefore[step.id], 'teardown', 'before', step.id);
    if (step.id === 'governor-spring') film(log);
    takeOff(log, know, step);
  }
  photograph(
    'carbon',
    'Head as it came off: carbon, soot track toward the push rods',
    'teardown',
    'before',
    'cylinder-head',
  );
  log.clock('15:02');
  for (const step of steps.filter(({ id }) => ['valves', 'carburetor-bowl'].includes(id)))
    takeOff(log, know, step);
  photograph(
    'valve',
    'Exhaust valve: seat band uneven, broken off on one side',
    'teardown',
    'before',
    'valves',
  );
  log.add('stage', {
    stage: 'teardown',
    state: 'finished',
    reason: 'Top end and carburetor apart. The crankcase stays closed: nothing was heard at the breather.',
  });
}

/** What it comes apart for, and what this engine has otherwise than others of its kind. */
function reach({ log, know }) {
  const goals = [
    ['valves', 'Exhaust valve tight and leaking'],
    ['carburetor-bowl', 'Varnish in the bowl'],
  ];
  for (const [component, why] of goals) {
    const title = know.component('overhead-valve', component).name;
    log.add('goal', { component, title, why, state: 'wanted' });
  }
  log.add('differs', {
    how: 'fasteners',
    component: 'muffler-guard',
    fasteners: [{ what: 'screw', size: 'M5', length: '10 mm', count: 4 }],
  });
}

function film(log) {
  log.add('photograph', {
    clip: { file: 'tag-17-governor-and-carburetor.mp4', from: '00:03:12', to: '00:05:40' },
    caption: 'Governor spring, damper and link unhooked',
    stage: 'teardown',
    about: 'governor-spring',
    when: 'during',
  });
}

function takeOff(log, know, { id, bag, fasteners, plugs = [], words }) {
  const title = know.component('overhead-valve', id).name;
  const plugged = plugs.map(know.port);
  log.add(
    'step',
    { step: id, stage: 'teardown', title, component: id, state: 'done', bag, fasteners, plugged, words },
    { seconds: 215 },
  );
}

/** Both valves, cold, at firing top, against the sheet. */
export function clearances({ log, know }, phase, [intake, exhaust]) {
  const reading = (place, value, low, high) => {
    const limit = { min: know.written(low, 'length'), max: know.written(high, 'length'), origin: page(27) };
    log.add(
      'measurement',
      know.measurement('valve-clearance-overhead-valve', value, {
        place,
        phase,
        limit,
        instrument: 'feeler-leaves',
      }),
    );
  };
  reading('intake', intake, '.003 in', '.005 in');
  reading('exhaust', exhaust, '.005 in', '.007 in');
  if (phase === 'as-found') {
    log.add(
      'observation',
      know.observation('valve-clearance', ['tight'], {
        words: 'Exhaust 0.001 in, intake in range.',
        conditions: 'cold, firing top, both rockers loose',
      }),
    );
  }
}
