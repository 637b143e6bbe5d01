/** What came in, in whose words, in which state. */
export function intake({ log, know, photograph }) {
  log.clock('2026-03-16 08:35');
  log.add('open', { tag: 17, title: 'Water pump, overhead-valve, 195 cc', invented: true });
  log.add('intake', {
    machine: 'Tarnbeck TP-50 water pump, 2 in',
    use: 'pump',
    owner: 'Orla Finch, Three Wells Market Garden',
    contact: '555-0142, evenings',
  });
  log.add('intake', {
    complaint:
      'It watered the lower beds one whole August and has stood in the pump house since, tank as it was, four winters now. It goes, but only with the choke half out, it never runs evenly, and as soon as water comes it dies.',
    complaints: ['runs-only-on-choke', 'hunts-at-no-load', 'bogs-under-load'],
    tried: 'Fresh gasoline on top of the old, and half a can of starting spray.',
  });
  log.add('intake', {
    storedMonths: 42,
    promised: '2026-03-20',
    fuelLeftIn: 'yes',
    tipped: 'no',
    struck: 'no',
    wrongFuel: 'unknown',
  });
  log.add('intake', {
    architecture: 'overhead-valve',
    ignition: 'solid-state',
    fuelSystem: 'float-bowl',
    shaft: 'horizontal',
    governor: 'flyweight',
    starter: 'rope',
  });
  log.add('intake', {
    variants: {
      'tank-over-fan-cover': true,
      'head-lifts-complete': false,
      'bowl-solenoid': false,
      'charging-coil': false,
      'low-oil-sensor': false,
      'balance-shaft': false,
    },
    missing: 'One of four screws of the muffler guard. Recoil rope frayed at the grip.',
  });
  log.clock('08:46');
  photograph(
    'front',
    'Front as it came in: leaves behind the starter screen, rope frayed',
    'intake',
    'before',
    'machine',
  );
  photograph('left', 'Left side: muffler rusted, one guard screw missing', 'intake', 'before');
  photograph('back', 'Back: pump flanges, lime and rust runs', 'intake', 'before');
  photograph('right', 'Right side: carburetor, governor lever and hose as they sat', 'intake', 'before');
  photograph(
    'plate',
    'Where the plate was: two rivets, a scrap of foil, nothing to read',
    'intake',
    'before',
  );
  log.add('identity', {
    how: 'not-found',
    looked: [
      'under-shroud',
      'on-rocker-cover',
      'below-carburetor',
      'on-crankcase-cover',
      'on-muffler-shield',
    ].map((place) => know.find('platePlaces', place).where),
  });
  log.clock('08:58');
  log.add('intake', {
    consent: { given: true, by: 'Orla Finch', how: 'signed the intake sheet at the bench' },
    stopLimit: { amount: 180, currency: '$' },
  });
  log.add('stage', {
    stage: 'intake',
    state: 'finished',
    reason: 'Asked, photographed, signed. The engine is still without a name.',
  });
}
