import { page } from './worth-it.mjs';

/** Measured against the sheet; what is outside or too close is decided, with the reason. */
export function measure(bench) {
  const { log, know } = bench;
  log.clock('2026-03-16 15:24');
  log.add('identity', {
    how: 'measured',
    bore: know.written('66.0 mm', 'length'),
    stroke: know.written('57.0 mm', 'length'),
    shaft: know.written('3/4 in', 'length'),
    leavesOpen:
      'Bore and stroke agree with the booklet (195 cc). Open: which of its two governor springs and which main jet; both stay as found.',
  });
  bore(bench);
  faces(bench);
  endPlay(bench);
  decisions(bench);
  log.add('stage', {
    stage: 'measure',
    state: 'finished',
    reason: 'Nothing worn out. One reading too close to call is decided and noted for the next service.',
  });
}

const readings = {
  'top of ring travel': ['2.5996 in', '2.6003 in'],
  middle: ['2.5994 in', '2.5998 in'],
  bottom: ['2.5989 in', '2.5991 in'],
};

function bore({ log, know }) {
  const temperature = know.written('68 °F', 'temperature');
  const limit = { max: know.written('2.6030 in', 'length'), origin: page(27) };
  for (const [place, pair] of Object.entries(readings)) {
    ['along the crankshaft', 'across the crankshaft'].forEach((direction, i) => {
      log.add(
        'measurement',
        know.measurement('bore-diameter', pair[i], {
          instrument: 'dial-bore-gauge',
          place,
          direction,
          temperature,
          limit,
        }),
      );
    });
  }
  const atMost = (value) => ({ max: know.written(value, 'length'), origin: page(27) });
  log.add(
    'measurement',
    know.measurement('bore-taper', '.0012 in', { instrument: 'dial-bore-gauge', limit: atMost('.0020 in') }),
  );
  log.add(
    'measurement',
    know.measurement('bore-out-of-round', '.0007 in', {
      instrument: 'dial-bore-gauge',
      limit: atMost('.0015 in'),
    }),
  );
}

function faces({ log, know }) {
  const flat = { max: know.written('.003 in', 'length'), origin: page(27) };
  log.add(
    'measurement',
    know.measurement('head-flatness', '.002 in', {
      instrument: 'straightedge-and-leaf',
      place: 'worst diagonal',
      limit: flat,
    }),
  );
  const width = {
    min: know.written('.047 in', 'length'),
    max: know.written('.063 in', 'length'),
    origin: page(27),
  };
  log.add(
    'measurement',
    know.measurement('valve-seat-width', '.078 in', {
      instrument: 'rule-and-blue',
      place: 'exhaust',
      limit: width,
    }),
  );
  const margin = {
    min: know.written('1/32 in', 'length'),
    origin: { from: 'rule of thumb', detail: 'common practice' },
  };
  log.add(
    'measurement',
    know.measurement('valve-margin', '3/64 in', { instrument: 'caliper', place: 'exhaust', limit: margin }),
  );
  log.add(
    'measurement',
    know.measurement('valve-spring-length', '1.337 in', {
      instrument: 'caliper',
      place: 'exhaust',
      limit: {
        min: know.written('1.273 in', 'length'),
        origin: { from: 'rule of thumb', detail: '5 % under the 1.340 in of page 27' },
      },
    }),
  );
}

/** Inside the limit by less than the dial can tell. */
function endPlay({ log, know }) {
  const limit = {
    min: know.written('.002 in', 'length'),
    max: know.written('.008 in', 'length'),
    origin: page(27),
  };
  for (const value of ['.0078 in', '.0077 in', '.0078 in']) {
    log.add(
      'measurement',
      know.measurement('crankshaft-end-play', value, {
        instrument: 'dial-indicator',
        place: 'flywheel end',
        limit,
      }),
    );
  }
}

function decisions({ log }) {
  log.clock('16:12');
  const decide = (which, title, choice, reason) =>
    log.add('decision', { about: 'measurement', which, title, choice, reason });
  decide(
    'valve-clearance-overhead-valve',
    'Exhaust valve clearance 0.001 in: recondition',
    'recondition',
    'The valve has sunk into a burnt seat. Lap, then set the clearance to the middle of the range.',
  );
  decide(
    'valve-seat-width',
    'Exhaust seat 0.078 in wide: recondition',
    'recondition',
    'Narrowed with the 30° cutter and lapped; margin left to do it twice more.',
  );
  decide(
    'crankshaft-end-play',
    'Crankshaft end play 0.0078 in: too close to call',
    'reuse',
    'Three readings of 0.0077 to 0.0078 against 0.008, and the dial is good for ± 0.0005: it cannot be told. No knock, seals dry, so the case stays closed; read again at the next service.',
  );
  log.add('decision', {
    about: 'component',
    which: 'cylinder-head',
    title: 'Cylinder head',
    choice: 'reuse',
    reason: 'Flat within 0.002 in, no crack at the seats.',
  });
}
