import type { Job } from '../../src/job/index.js';
import { Log, length, torque } from './log.js';
import { sha256 } from './ordinary-job.js';

/** Only a tag. */
export function emptyJob(): Job {
  const log = new Log();
  log.add('open', { tag: 4, title: '' });
  return log.fold();
}

/** 200 measurements, 60 photographs, 40 findings, three joints: far more than a person logs. */
export function hugeJob(picture: Uint8Array): Job {
  const log = new Log();
  log.add('open', { tag: 90210, title: 'Everything that can be logged about one chipper engine' });
  log.add('intake', {
    machine: 'Chipper',
    use: 'chipper',
    complaint: `It ${'really '.repeat(120)}does not run.`,
  });
  for (let i = 0; i < 200; i++) {
    log.add('measurement', {
      measure: `reading-${i}`,
      title: `Reading ${i + 1} of the bore`,
      value: length(`2.5${String(900 + (i % 80))} in`),
      limit: { max: length('2.5960 in'), origin: { from: "maker's sheet", detail: 'page 18' } },
      place: `height ${(i % 5) + 1}`,
      phase: 'as-found',
    });
  }
  for (let i = 0; i < 60; i++) {
    log.add('photograph', {
      picture: {
        sha256: sha256(picture),
        mime: 'image/jpeg',
        bytes: picture.length,
        width: 800,
        height: 600,
      },
      caption: `View ${i + 1}`,
      stage: 'teardown',
      when: 'during',
    });
  }
  for (let i = 0; i < 40; i++) {
    log.add('observation', { title: `Check ${i + 1}`, outcomes: ['as expected'], conditions: 'cold' });
    log.add('step', { step: `off-${i}`, stage: 'teardown', title: `Piece ${i + 1} off`, state: 'done' });
  }
  for (const joint of ['head', 'sump', 'flange']) {
    log.add('joint', {
      joint,
      name: joint,
      holes: Array.from({ length: 8 }, (_, i) => ({ xMm: 40 * Math.cos(i), yMm: 40 * Math.sin(i) })),
      target: torque('140 in-lb'),
      targetOrigin: { from: "maker's sheet" },
      passes: [0.3, 0.7, 1],
      finalRound: true,
      order: [1, 2, 3, 4, 5, 6, 7, 8],
      orderOrigin: { from: 'computed' },
    });
    log.add('torque', { joint, hole: 2, pass: 1, set: torque('42 in-lb'), result: 'turned without rising' });
    log.add('torque', { joint, hole: 1, pass: 1, set: torque('60 in-lb'), result: 'clicked' });
  }
  return log.fold();
}
