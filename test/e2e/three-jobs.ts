/** Three invented machines, each with what its log holds when its person comes back to it. */
type Line = readonly [kind: string, body: unknown];

const seen = (check: string, title: string, ...outcomes: string[]): Line => [
  'observation',
  { check, title, outcomes },
];
const off = (component: string, title: string, more: object = {}): Line => [
  'step',
  { step: component, stage: 'teardown', title, component, state: 'done', ...more },
];

/** A trimmer past saving: its owner declines and takes it home. */
export const trimmer = {
  intake: {
    machine: 'String trimmer, 25 cc',
    use: 'trimmer',
    owner: 'Ida Brekke',
    architecture: 'two-stroke',
    ignition: 'solid-state',
    fuelSystem: 'diaphragm',
    starter: 'rope',
    complaint: 'pulls easy and will not start',
    complaints: ['rope-pulls-free', 'cranks-never-fires'],
    consent: { given: true, by: 'Ida Brekke', how: 'at the counter' },
    worthRunning: { amount: 70, currency: '$' },
    stopLimit: { amount: 50, currency: '$' },
  },
  lines: [
    seen('walk-round', 'Walk round the machine', 'guard, chute or interlock missing or bridged'),
    seen(
      'fuel-hose-look',
      'Fuel hose bent and squeezed along its length',
      'cracked, hard, soft or collapsed',
    ),
    seen('stop-control', 'Stop control grounds the coil, or kills the engine', 'no'),
    off('muffler', 'Muffler', { bag: '1', fasteners: [{ what: 'screw', size: 'M5', count: 2 }] }),
    seen(
      'piston-through-exhaust-port',
      'Piston, rings and port seen through the exhaust port',
      'piston or bore scored',
    ),
  ],
} as const satisfies { intake: object; lines: readonly Line[] };

/** Taken apart as far as the head, then left: nobody touched it for a year. */
export const halfApart = {
  intake: {
    machine: 'Rotary tiller, side valve',
    use: 'tiller',
    owner: 'Nils Aune',
    architecture: 'side-valve',
    ignition: 'points',
    fuelSystem: 'float-bowl',
    starter: 'rope',
    complaint: 'lost power, then stopped',
    complaints: ['no-power'],
    consent: { given: true, by: 'Nils Aune', how: 'by telephone' },
  },
  lines: [
    seen('oil-level', 'Oil level as received', 'low'),
    seen('slow-pull', 'Slow pull by hand, plug in', 'soft'),
    off('spark-plug', 'Spark plug'),
    off('fuel-drained', 'Fuel drained'),
    off('air-cleaner-element', 'Air-cleaner element', { bag: '1' }),
    off('carburetor', 'Carburetor', {
      bag: '2',
      fasteners: [{ what: 'nut', size: '1/4-28', count: 2 }],
      plugged: ['Intake port'],
    }),
    off('blower-housing', 'Blower housing', {
      bag: '3',
      fasteners: [{ what: 'screw', size: '1/4-20', count: 4 }],
    }),
    off('cylinder-head', 'Cylinder head', {
      bag: '4',
      fasteners: [
        { what: 'bolt', size: '5/16-18', length: '1 3/4 in', count: 5 },
        { what: 'bolt', size: '5/16-18', length: '2 1/4 in', count: 3, hole: 'exhaust side' },
      ],
      words: 'gasket came away in pieces',
    }),
    seen(
      'head-gasket-look',
      'Head gasket, seats and valve faces by eye, with the head off',
      'gasket burnt through or blown',
    ),
  ],
} as const satisfies { intake: object; lines: readonly Line[] };

/** Runs, and its speed goes up and down. */
export const generator = {
  intake: {
    machine: 'Generator, 3 kW',
    use: 'generator',
    owner: 'Kari Moen',
    architecture: 'overhead-valve',
    ignition: 'solid-state',
    fuelSystem: 'float-bowl',
    governor: 'flyweight',
    starter: 'rope',
    complaint: 'runs, but the lights go bright and dim',
    complaints: ['hunts-at-no-load'],
    storedMonths: 14,
    fuelLeftIn: 'yes',
    consent: { given: true, by: 'Kari Moen', how: 'by telephone' },
    worthRunning: { amount: 450, currency: '$' },
    stopLimit: { amount: 200, currency: '$' },
  },
  lines: [
    seen('walk-round', 'Walk round the machine', 'nothing missing or loose'),
    seen('oil-level', 'Oil level as received', 'right'),
    seen('does-it-start', 'Does it start?', 'starts and keeps running'),
    seen('speed-steadiness', 'Speed steadiness, no load, warm, 60 s', 'constant hunt'),
  ],
} as const satisfies { intake: object; lines: readonly Line[] };
