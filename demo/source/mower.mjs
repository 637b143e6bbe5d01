import { Log } from './log.mjs';
import { photographer } from './pump/job.mjs';

/** Tag 18, invented too: a school's mower that met a root, taken in and half looked at. */
export function mowerJob(know, pictures) {
  const log = new Log({ know, tag: 18, by: 'Maren', opens: '2026-03-20 16:35', offset: '-05:00' });
  const photograph = photographer(log, pictures);
  intake(log, know, photograph);
  firstLooks(log, know);
  return log.entries;
}

function intake(log, know, photograph) {
  log.clock('2026-03-20 16:35');
  log.add('open', {
    tag: 18,
    title: 'School mower, side-valve',
    invented: true,
  });
  log.add('intake', {
    machine: 'Alderby R20 rotary mower, 20 in, push',
    use: 'mower',
    owner: 'Hollin Road School, T. Amadi',
    contact: '555-0187, mornings',
    complaint:
      'One of the big ones found a root by the goal posts. It stopped dead. Since then the rope tears at your hand, and when it did start once it shook so that I let go.',
    complaints: ['kicks-back', 'knock-or-shaking'],
    tried: 'Another pull, with gloves.',
  });
  log.add('intake', {
    architecture: 'side-valve',
    ignition: 'solid-state',
    fuelSystem: 'float-bowl',
    shaft: 'vertical',
    governor: 'air-vane',
    starter: 'rope',
    storedMonths: 0,
    fuelLeftIn: 'yes',
    tipped: 'unknown',
    struck: 'yes',
    wrongFuel: 'no',
  });
  log.add('intake', {
    consent: { given: true, by: 'T. Amadi', how: 'school order form' },
    stopLimit: { amount: 90, currency: '$' },
    missing: 'Nothing missing. Deck dented on the left, blade nicked.',
  });
  log.add(
    'identity',
    know.plate('HP66VF K073 0142', know.find('platePlaces', 'stamped-in-blower-housing').where),
  );
  photograph(
    'mower',
    'Left side as it came in: blade tip turned up, fins green',
    'intake',
    'before',
    'machine',
  );
}

function firstLooks(log, know) {
  log.clock('2026-03-21 10:05');
  log.add('note', {
    words:
      'Plug lead off and tied back before anything else. Nobody pulls this rope until the key is looked at.',
    stage: 'findings',
  });
  const see = (...args) => log.add('observation', know.observation(...args), { seconds: 190 });
  see('oil-level', ['right'], { conditions: 'level floor, as received' });
  see('tank-fuel-in-a-jar', ['fresh'], { conditions: 'from the tank' });
  see('light-into-fins', ['chaff'], {
    words: 'Grass between the fins of the head.',
    conditions: 'flashlight',
  });
  see('kickback', ['every-pull'], {
    words: 'As told by the owner; not tried here.',
    doubtful: true,
    conditions: 'on the lawn, cold',
  });
  see('shaft-wobble', ['one-to-three-mm'], {
    words:
      'About 2 mm at the blade tip, but the tip itself is bent: again with a straight pointer on the hub.',
    doubtful: true,
    conditions: 'plug out, turned by hand',
  });
}
