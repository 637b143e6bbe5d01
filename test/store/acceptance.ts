import { backupLaws } from './laws/backup.js';
import { deviceLaws } from './laws/devices.js';
import { digestLaws } from './laws/digests.js';
import { ground, type Place } from './laws/ground.js';
import { logLaws } from './laws/log.js';
import { notesLaws } from './laws/notes.js';
import { pictureLaws } from './laws/pictures.js';
import { removingLaws } from './laws/removing.js';
import { verifyLaws } from './laws/verify.js';
import { versionLaws } from './laws/versions.js';

/** The laws of a store. Each database passes all of them; `freshPlace` gives an empty place. */
export function acceptance(database: string, freshPlace: () => Promise<Place>): void {
  const stand = ground(database, freshPlace);
  for (const laws of [
    logLaws,
    notesLaws,
    pictureLaws,
    removingLaws,
    backupLaws,
    verifyLaws,
    digestLaws,
    versionLaws,
    deviceLaws,
  ])
    laws(stand);
}
