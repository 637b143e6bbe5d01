import { page } from './worth-it.mjs';

const plan = [
  [
    '13:05',
    [
      ['gates-signed', 'ok', { words: 'Every bag empty, every plug out.' }],
      ['oil-to-mark', 'ok'],
      ['turn-ten-times', 'ok', { words: 'Free; spark across 5 mm.' }],
      [
        'guards-on',
        'ok',
        { words: 'Muffler guard with four screws. Pump filled with water: its seal must not run dry.' },
      ],
      ['outdoors', 'ok'],
      ['second-way-to-stop', 'ok', { words: 'Choke and fuel tap, both tried by hand.' }],
      ['tachometer-on', 'ok'],
      ['idle-screw-base', 'reading', { value: '1-1/4 turns' }],
      ['main-screw-base', 'not-applicable', { words: 'Fixed jet.' }],
      ['throttle-stop-base', 'ok'],
      ['choke-ends', 'ok'],
      [
        'static-governor-set',
        'ok',
        { words: 'Lever and shaft clockwise to the stop, clamp 70 in-lb.', value: '70 in-lb' },
      ],
      ['linkage-by-hand', 'ok'],
    ],
  ],
  [
    '13:40',
    [
      ['first-pull', 'ok', { words: 'Second pull, choke shut.' }],
      ['assembly-smoke', 'reading', { value: '3 min' }],
      ['warm-up-run', 'reading', { value: '8 min' }],
      ['cool-and-look', 'reading', { value: '35 min', words: 'Dry all round.' }],
    ],
  ],
  [
    '14:45',
    [
      ['idle-mixture-set', 'ok', { words: 'Best at 1-3/8 turns, idle stop brought back.' }],
      ['main-mixture-set', 'not-applicable', { words: 'Fixed jet.' }],
      ['acceleration-clean', 'ok'],
      ['idle-stop-set', 'reading', { value: '1400 rpm' }],
      ['governed-idle-set', 'reading', { value: '1600 rpm' }],
      [
        'top-speed-set',
        'ok',
        { value: '3320 rpm', words: 'Spring in hole 3 as found; 80 rpm under the sheet’s most.' },
      ],
      ['mixture-before-governor', 'ok', { words: 'Two fading swings after a step, then steady.' }],
      ['load-pump', 'ok', { words: 'Primed in 40 s, 12 ft lift, full hose for 20 minutes.' }],
      ['droop', 'reading', { value: '6 %' }],
    ],
  ],
  [
    '15:20',
    [
      ['look-at-five-minutes', 'ok'],
      ['look-at-fifteen-minutes', 'ok'],
      [
        'look-at-thirty-minutes',
        'ok',
        { words: 'Head 172 °C at the plug boss under load; head edge dry with soap.' },
      ],
      ['no-fuel-leak', 'ok', { words: 'Card dry after 5 minutes, tap open.' }],
      ['stop-each-position', 'ok', { words: 'Stops at idle and at full speed.' }],
      ['no-run-on', 'ok'],
      ['pump-guards-and-joints', 'ok', { words: 'Coupling cover on, dry behind the pump.' }],
      ['head-after-heat', 'ok', { words: 'Not tightened again: the booklet, page 25, says not to.' }],
      ['fasteners-after-heat', 'ok', { words: 'Cold: muffler, carburetor nuts, drain plug, mounts.' }],
      ['break-in-told', 'not-applicable', { words: 'Rings not opened.' }],
    ],
  ],
];

/** Proved outside, in order, with water in the pump; the last look is next morning. */
export function runUp({ log, know }) {
  plan.forEach(([time, items], i) => {
    log.clock(i === 0 ? `2026-03-20 ${time}` : time);
    for (const item of items) log.add('run-up', know.runUp(...item), { seconds: 95 });
    if (time === '13:40') log.add('recording', know.recording('pump-after.wav', heardAfter));
    if (time === '14:45') topSpeed({ log, know });
  });
  log.clock('2026-03-21 08:20');
  log.add(
    'run-up',
    know.runUp('look-after-a-night', 'ok', { words: 'Card under it dry, oil still at the mark.' }),
  );
  log.add('stage', {
    stage: 'run-up',
    state: 'finished',
    reason: 'Starts on the second pull, runs even, pumps a full hose, stops.',
  });
}

const heardAfter = {
  recording: 'after-1',
  phase: 'after',
  temperature: 'cold',
  marks: [{ t: 11, what: 'Load on' }],
};

function topSpeed({ log, know }) {
  const limit = { max: know.written('3400 rpm', 'rotation'), origin: page(22) };
  log.add(
    'measurement',
    know.measurement('governed-top-speed', '3320 rpm', {
      instrument: 'inductive-tachometer',
      phase: 'after',
      limit,
    }),
  );
  log.add(
    'observation',
    know.observation('pump-primes', ['yes'], {
      words: 'From 12 ft, in 40 seconds.',
      conditions: 'warm, full speed, suction hose dry at the start',
    }),
  );
}
