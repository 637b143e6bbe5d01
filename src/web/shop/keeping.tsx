import { type Shop, shopLog } from '../../job/index.js';
import { counted } from '../../phrase/index.js';
import { write } from '../data/outbox.js';
import { useStoreState } from '../data/queries.js';
import { useAct, Wrong } from '../parts/act.js';
import { Choices } from '../parts/field.js';

const oldAfterDays = 7;
const dayMs = 86_400_000;

/** At the head of the Shop, where it is read: a shop that has no good backup, or an old one. */
export function BackupDue() {
  const state = useStoreState();
  if (!state?.keeping.ok) return null;
  const words = state.backup ? `the last backup is ${ageWords(daysSince(state.backup.at))}` : 'no backup yet';
  if (state.backup && daysSince(state.backup.at) < oldAfterDays) return null;
  return (
    <p>
      <a className="button" href="#backups">
        <span className="verdict fail">{words}</span>
      </a>
    </p>
  );
}

/** When the shop's memory was last copied to another place, and whether it is kept at all just now. */
export function Keeping() {
  const state = useStoreState();
  return (
    <section className="section stack tight" aria-labelledby="backups">
      <h2 id="backups">Backups</h2>
      {state && !state.keeping.ok && (
        <p>
          <span className="verdict fail">not kept</span> {state.keeping.message}
        </p>
      )}
      {state?.keeping.ok && <LastBackup backup={state.backup} />}
      <p>
        {state?.kind === 'postgres' ? 'The database' : 'One file'} is the whole memory of the shop. On the
        bench computer: <code>wristpin backup FILE</code> copies it into one file and checks that, best on
        another disk; <code>wristpin restore FILE</code> brings it back into an empty store;{' '}
        <code>wristpin verify</code> checks every line and every picture and changes nothing.
      </p>
    </section>
  );
}

function LastBackup({ backup }: { backup: { readonly at: string; readonly file: string } | null }) {
  if (!backup)
    return (
      <p>
        <span className="verdict fail">no backup yet</span> If this disk fails, everything is gone.
      </p>
    );
  const days = daysSince(backup.at);
  const day = new Date(backup.at).toLocaleString([], { dateStyle: 'long', timeStyle: 'short' });
  return (
    <p>
      <span className={`verdict ${days >= oldAfterDays ? 'fail' : 'pass'}`}>{ageWords(days)}</span> The last
      good backup is of {day}, in the file {backup.file}.
    </p>
  );
}

const daysSince = (iso: string): number => Math.floor((Date.now() - Date.parse(iso)) / dayMs);

function ageWords(days: number): string {
  if (days >= oldAfterDays) return `${counted(days, 'day')} old`;
  return days < 1 ? 'backed up today' : `backed up ${counted(days, 'day')} ago`;
}

/** What the camera wrote beside a picture: a phone writes there where it was taken, when, and with which device. */
export function PictureOrigin({ shop }: { shop: Shop }) {
  const { wrong, act } = useAct();
  return (
    <section className="section stack tight">
      <h2>Pictures</h2>
      <Choices
        label="Place, time and serial number that the camera writes into a picture"
        value={shop.settings['picture-origin'] === 'kept' ? 'kept' : 'taken out'}
        onChange={(value) => void act(() => write(shopLog, 'setting', { key: 'picture-origin', value }))}
        choices={[
          { id: 'taken out', label: 'take them out' },
          { id: 'kept', label: 'keep them' },
        ]}
      />
      <p className="soft">
        They are taken out on the device, before it sends anything: a record or a bundle that goes out of the
        house then tells nobody where the picture was taken.
      </p>
      <Wrong words={wrong} />
    </section>
  );
}
