const fastener = (count, what, size, length, hole) => ({ what, size, length, hole, count });

/**
 * What came off, in order: component, bag, fasteners, ports plugged, and the words on the way off and on the way back.
 * The same list is walked backward on the way together, so that nothing can be forgotten.
 */
export const steps = [
  {
    id: 'fuel-drained',
    words: '2 quarts, tea-colored, into the waste can outside.',
    back: {
      title: 'Fresh fuel in',
      words: 'Alcohol-free, one quart, filter wetted, tap turned: dry at every joint.',
    },
  },
  {
    id: 'spark-plug',
    fasteners: [fastener(1, 'spark plug', 'M14x1.25')],
    plugs: ['spark-plug-hole'],
    words: 'Old plug put back finger-tight against dirt.',
    back: { words: 'New plug, gap 0.030 in, 15 ft-lb.' },
  },
  {
    id: 'recoil-starter',
    bag: '1',
    fasteners: [fastener(3, 'bolt', 'M6', '16 mm')],
    words: 'Off for the rebound test already. Rope frayed over 4 in at the grip.',
    back: { words: 'Centered on the cup before the bolts bite. Old rope, 5 in shorter.' },
  },
  {
    id: 'fuel-hose',
    bag: '2',
    fasteners: [fastener(2, 'clip', '3/8 in')],
    plugs: ['fuel-inlet'],
    words: 'Hard at the tank end, cracks when bent.',
    back: { words: 'New hose and filter, arrow to the carburetor.' },
  },
  {
    id: 'fuel-tank',
    bag: '2',
    fasteners: [fastener(4, 'bolt', 'M8', '20 mm')],
    words: 'No rust inside; rinsed and left open to dry.',
    back: { words: 'On its rubber pads, clear of the head.' },
  },
  {
    id: 'air-cleaner-element',
    bag: '3',
    fasteners: [fastener(1, 'wing nut', 'M6')],
    back: { words: 'New element, lip seated all round.' },
  },
  {
    id: 'air-cleaner-base',
    bag: '3',
    fasteners: [fastener(2, 'nut', 'M6'), fastener(1, 'bolt', 'M6', '20 mm')],
    plugs: ['carburetor-throat'],
    words: 'The two nuts hold the carburetor as well.',
    back: { words: 'Breather tube on. The two nuts to 75 in-lb.' },
  },
  {
    id: 'governor-spring',
    bag: '3',
    words:
      'Spring in hole 3 of the lever, damper round the link, link in hole 1. Filmed and photographed first.',
    back: { words: 'Hole 3, damper round the link, as photographed. No bind over the whole travel.' },
  },
  {
    id: 'carburetor',
    bag: '4',
    plugs: ['intake-port'],
    words: 'Slid off the two studs with the throttle link on it.',
    back: { words: 'Throttle springs open, choke shuts.' },
  },
  {
    id: 'insulator-block',
    bag: '4',
    words: 'Block-side gasket has the slot, carburetor side has none.',
    back: {
      words: 'New gaskets; slot of the gasket over the slot of the block, looked through with a light.',
    },
  },
  {
    id: 'blower-housing',
    bag: '5',
    fasteners: [fastener(5, 'bolt', 'M6', '12 mm')],
    words: 'A liter of leaves and straw came with it.',
    back: { words: 'Fins clear, no wire trapped, fan turns without a rub.' },
  },
  {
    id: 'muffler-guard',
    bag: '6',
    fasteners: [fastener(3, 'screw', 'M5', '10 mm')],
    words: 'Three of four; the fourth was missing.',
    back: { words: 'The fourth screw from the tin: four of four now.' },
  },
  {
    id: 'muffler',
    bag: '6',
    fasteners: [fastener(2, 'nut', 'M8')],
    plugs: ['exhaust-port'],
    words: 'Both nuts broke loose clean, no penetrant needed.',
    back: { words: 'New gasket, 100 in-lb, studs not pulled.' },
  },
  {
    id: 'rocker-cover',
    bag: '7',
    fasteners: [fastener(4, 'bolt', 'M6', '25 mm')],
    plugs: ['rocker-box'],
    words: 'Underside clean, breather passage open.',
    back: { words: 'New gasket, breather passage looked through.' },
  },
  {
    id: 'rockers',
    bag: '8',
    fasteners: [fastener(2, 'locknut', 'M6')],
    words: 'At firing top, kept by valve on a card.',
    back: { words: 'Set at firing top, read again after the locknuts.' },
  },
  {
    id: 'push-rods',
    bag: '8',
    words: 'Both straight, both steel; intake left on the card.',
    back: { words: 'Same holes, seated in the followers.' },
  },
  {
    id: 'head-baffle',
    bag: '9',
    fasteners: [fastener(1, 'bolt', 'M6', '12 mm')],
    words: 'Also held by the long head bolts of holes 2 and 5.',
    back: {},
  },
  {
    id: 'cylinder-head',
    bag: '9',
    fasteners: [
      fastener(4, 'bolt', 'M8x1.25', '60 mm', 'holes 1, 3, 4 and 6'),
      fastener(2, 'bolt', 'M8x1.25', '80 mm', 'holes 2 and 5'),
    ],
    words: 'Loosened in reverse order, a quarter turn at a time. Soot track toward the push rods.',
    back: { words: 'New gasket, both dowels in, threads clean and dry.' },
  },
  {
    id: 'valves',
    bag: '10',
    words: 'Seat band of the exhaust valve uneven and broken off on one side. Intake valve even.',
    back: {
      words: 'Exhaust valve lapped and washed, new stem seal on the intake. Retainers seated, tapped once.',
    },
  },
  {
    id: 'carburetor-bowl',
    bag: '4',
    fasteners: [fastener(1, 'bowl nut', 'M6')],
    words: 'Float, needle, main jet and pilot jet out; pilot jet plugged solid.',
    back: { words: 'New ring, needle and washer. Every passage sprayed through, every exit seen.' },
  },
];
