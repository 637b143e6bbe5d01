import { type ReactNode, useState } from 'react';
import { Link } from 'wouter';
import { shopLog } from '../../job/index.js';
import { counted, joined, listed, picturesAndSounds } from '../../phrase/index.js';
import type { ImportPlan, PlannedJob } from '../../record/index.js';
import { type Imported, lookInto, takeIn } from '../data/bundles.js';
import { queries } from '../data/queries.js';
import { Button, useAct, Wrong } from '../parts/act.js';
import { toggled } from '../parts/field.js';

/**
 * Taking in whole jobs of another shop. Not a form of the log: a file cannot stand as a draft, so what was chosen here and
 * not taken is gone when the page is left, and says nothing of "begun".
 */
export function Bundles() {
  const { wrong, busy, act } = useAct();
  const [seen, setSeen] = useState<{ file: File; plan: ImportPlan }>();
  const [done, setDone] = useState<{ plan: ImportPlan; imported: Imported }>();
  const look = (file: File) => {
    setSeen(undefined);
    setDone(undefined);
    void act(async () => setSeen({ file, plan: await lookInto(file) }));
  };
  const take = (into: readonly string[], shop: boolean) =>
    act(async () => {
      if (!seen) return;
      setDone({ plan: seen.plan, imported: await takeIn(seen.file, into, shop) });
      setSeen(undefined);
      await queries.invalidateQueries();
    });
  return (
    <section className="section stack tight" aria-labelledby="bundles">
      <h2 id="bundles">Jobs from another shop</h2>
      <p>
        A bundle is one file with whole jobs in it, every line and every picture. Hand-over makes one. Nothing
        of it is taken before you have seen what it would do.
      </p>
      <div>
        <label className="button" aria-disabled={busy}>
          Choose a bundle
          <input
            className="hidden"
            type="file"
            accept=".zip,application/zip"
            disabled={busy}
            onChange={(e) => {
              const file = e.target.files?.[0];
              e.target.value = '';
              if (file) look(file);
            }}
          />
        </label>
      </div>
      {busy && <p role="status">{seen ? 'It is being taken in …' : 'It is being looked through …'}</p>}
      <Wrong words={wrong} />
      {seen && (
        <WhatItWouldDo
          name={seen.file.name}
          plan={seen.plan}
          busy={busy}
          onTake={take}
          onLeave={() => setSeen(undefined)}
        />
      )}
      {done && <WhatItDid {...done} />}
    </section>
  );
}

function chosenWords(
  jobs: readonly PlannedJob[],
  into: readonly string[],
  shop: boolean,
): string | undefined {
  const fresh = jobs.filter(({ here }) => !here).length;
  return listed([
    ...(fresh > 0 ? [counted(fresh, 'new job')] : []),
    ...(into.length > 0 ? [`lines for ${counted(into.length, 'job')} of yours`] : []),
    ...(shop ? ['lines of the shop'] : []),
  ]);
}

function WhatItWouldDo(props: {
  name: string;
  plan: ImportPlan;
  busy: boolean;
  onTake: (into: readonly string[], shop: boolean) => void;
  onLeave: () => void;
}) {
  const { jobs, shopLines, pictures, sounds, digest } = props.plan;
  const [into, setInto] = useState<readonly string[]>([]);
  const [shop, setShop] = useState(false);
  const chosen = chosenWords(jobs, into, shop);
  return (
    <section className="card stack tight" aria-label={`What ${props.name} would do`}>
      <h3>
        {props.name}: {counted(jobs.length, 'job')}, {picturesAndSounds(pictures, sounds)}
      </h3>
      <ul className="lines">
        {jobs.map((job) => (
          <Would key={job.job} name={jobName(job)} what={jobWords(job)}>
            {job.here && job.fresh > 0 && (
              <Yes
                words={`Add ${counted(job.fresh, 'line')} to it`}
                on={into.includes(job.job)}
                onChange={() => setInto(toggled(into, job.job))}
              />
            )}
          </Would>
        ))}
        {shopLines.fresh > 0 && (
          <Would
            name="The shop itself"
            what={`${counted(shopLines.fresh, 'line')} that would change your own: name, rates, tools, people or packs.`}
          >
            <Yes
              words={`Change the shop by ${shopLines.fresh === 1 ? 'it' : 'them'}`}
              on={shop}
              onChange={() => setShop(!shop)}
            />
          </Would>
        )}
      </ul>
      <SameLines digest={digest} />
      <div className="row">
        <Button onClick={props.onLeave} disabled={props.busy}>
          Leave it
        </Button>
        {chosen ? (
          <Button look="go" disabled={props.busy} onClick={() => props.onTake(into, shop)}>
            Take in {chosen}
          </Button>
        ) : (
          <p>Nothing is chosen to be taken.</p>
        )}
      </div>
    </section>
  );
}

const SameLines = ({ digest }: { digest: string }) => (
  <details>
    <summary>Are they the lines that were handed over?</summary>
    <p>
      <code>wristpin export</code> says a digest when it writes a bundle. Where it is this one, no sign was
      changed on the way: <code className="long">{digest}</code>
    </p>
  </details>
);

const Would = (props: { name: string; what: string; children: ReactNode }) => (
  <li>
    <div>
      <b>{props.name}</b>
      <div className="soft">{props.what}</div>
      {props.children}
    </div>
  </li>
);

const Yes = (props: { words: string; on: boolean; onChange: () => void }) => (
  <label className="tick">
    <input type="checkbox" checked={props.on} onChange={props.onChange} />
    {props.words}
  </label>
);

const jobName = ({ tag, title }: PlannedJob): string =>
  joined([tag !== undefined && `Tag ${tag}`, title], ' · ') || 'A job without a tag';

/** What taking it would mean for the shop that reads this. */
function jobWords({ here, fresh, known, asKept }: PlannedJob): string {
  if (!here) return `New: ${counted(fresh, 'line')}.`;
  if (asKept)
    return `Here already, and ${known === 1 ? 'its line is the very one that was' : `its ${known} lines are the very ones that were`} kept here.`;
  if (fresh === 0) return `Here already: ${counted(known, 'line')}, none of them new.`;
  const same = known > 0 ? `; ${counted(known, 'line')} ${known === 1 ? 'is' : 'are'} the same` : '';
  return `Here already${same}. ${counted(fresh, 'line')} would be added.`;
}

function WhatItDid({ plan, imported }: { plan: ImportPlan; imported: Imported }) {
  const { stored, pictures, sounds, leftOut } = imported;
  const without = new Set(leftOut.map(({ job }) => job));
  const taken = plan.jobs.filter(({ job, fresh }) => fresh > 0 && !without.has(job));
  const nameOf = (log: string) => {
    const job = plan.jobs.find((each) => each.job === log);
    return log === shopLog || !job ? 'the shop itself' : jobName(job);
  };
  return (
    <div className="stack tight" role="status">
      <p>
        Taken in: {counted(stored.length, 'line')} and {picturesAndSounds(pictures, sounds)}.
      </p>
      <ul className="lines">
        {taken.map((job) => (
          <li key={job.job}>
            <Link href={`/job/${job.job}/intake`}>{jobName(job)}</Link>
          </li>
        ))}
      </ul>
      {leftOut.map(({ job, lines }) => (
        <p key={job} className="soft">
          Left out: {counted(lines, 'line')} for {nameOf(job)}. Choose the file again to take{' '}
          {lines === 1 ? 'it' : 'them'} too.
        </p>
      ))}
    </div>
  );
}
