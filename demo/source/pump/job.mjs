import { Log } from '../log.mjs';
import { assembly } from './assembly.mjs';
import { findings } from './findings.mjs';
import { handOver } from './hand-over.mjs';
import { intake } from './intake.mjs';
import { measure } from './measure.mjs';
import { orderParts, partsArrive } from './parts.mjs';
import { runUp } from './run-up.mjs';
import { teardown } from './teardown.mjs';
import { worthIt } from './worth-it.mjs';

/**
 * Tag 17, invented from end to end: a market garden's water pump that stood four winters with fuel in. Three days at
 * the bench and the morning after.
 */
export function pumpJob(know, pictures) {
  const log = new Log({ know, tag: 17, by: 'Maren', opens: '2026-03-16 08:35', offset: '-05:00' });
  const bench = { log, know, photograph: photographer(log, pictures) };
  for (const part of [
    intake,
    findings,
    worthIt,
    teardown,
    measure,
    orderParts,
    partsArrive,
    assembly,
    runUp,
    handOver,
  ]) {
    part(bench);
  }
  return log.entries;
}

export const photographer = (log, pictures) => (name, caption, stage, when, about) =>
  log.add('photograph', { picture: pictures.get(name).facts, caption, stage, about, when });
