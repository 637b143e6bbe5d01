/** Asked, answered, and the maker's booklet turns up. */
export function worthIt({ log, know }) {
  log.clock('2026-03-16 11:30');
  log.add('decision', {
    about: 'machine',
    title: 'The owner is asked',
    choice: 'ask-owner',
    reason:
      'Head off, carburetor through, gaskets and hose: about $150. A new set of this size is about four times that.',
    amount: { amount: 150, currency: '$' },
  });
  log.clock('12:52');
  log.add('note', {
    words:
      'Orla called back. Go on; call again before anything above the limit. The engine’s booklet hangs on a nail in the pump house, she sends pictures of its pages.',
    stage: 'worth-it',
  });
  log.add('decision', {
    about: 'machine',
    title: 'It is to be repaired',
    choice: 'repair',
    reason: 'Sound outside, oil kept, one summer of work on it. Well under the owner’s limit.',
    amount: { amount: 148, currency: '$' },
  });
  log.add('stage', { stage: 'worth-it', state: 'finished', reason: 'Agreed with the owner by telephone.' });
  log.clock('13:10');
  makersSheet(log, know);
}

const booklet = 'Marlbridge M195 booklet';

const pages = {
  22: [
    'spark plug gap .030 in',
    'coil air gap .010-.014 in',
    'oil capacity 20 fl oz',
    'oil SAE 30',
    'top speed, no load 3400 rpm',
    'governed idle speed 1600 rpm',
    'idle speed 1400 rpm',
    'idle mixture screw 1-1/4 turns',
  ],
  24: [
    'head bolts 190 in-lb',
    'rocker cover bolts 45 in-lb',
    'rocker locknuts 90 in-lb',
    'carburetor nuts 75 in-lb',
    'muffler nuts 100 in-lb',
    'blower housing bolts 75 in-lb',
    'spark plug 15 ft-lb',
    'governor lever clamp 70 in-lb',
  ],
  27: [
    'valve clearance, intake, cold .003-.005 in',
    'valve clearance, exhaust, cold .005-.007 in',
    'crankshaft end play .002-.008 in',
    'standard bore 2.5984-2.5992 in',
    'bore reject 2.6030 in',
    'bore taper limit .0020 in',
    'bore out of round limit .0015 in',
    'cylinder head warp limit .003 in',
    'valve seat width .047-.063 in',
    'valve spring free length 1.340 in',
  ],
};

/** Where a limit of this job comes from. */
export const page = (number) => ({ from: "maker's sheet", detail: `${booklet}, p. ${number}` });

function makersSheet(log, know) {
  for (const [number, lines] of Object.entries(pages)) {
    for (const spec of know.specs(lines, page(number).detail)) log.add('spec', spec, { seconds: 20 });
  }
  log.add('note', {
    words:
      'These pages hold only if bore and stroke agree with the booklet: 66 × 57 mm. To be measured once the head is off.',
    stage: 'intake',
  });
}
