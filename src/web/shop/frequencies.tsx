import { useState } from 'react';
import { Link } from 'wouter';
import { byId } from '../../catalog/index.js';
import { exportedFrequencies, type OwnFrequencies, shopLog } from '../../job/index.js';
import { counted } from '../../phrase/index.js';
import { useCatalog, useOwnFrequencies } from '../data/answers.js';
import { write } from '../data/outbox.js';
import { usePastJobs } from '../data/queries.js';
import { Button, useAct, Wrong } from '../parts/act.js';
import { Choices } from '../parts/field.js';
import { useArrival } from './arrival.js';
import { download } from './download.js';

type Learned = OwnFrequencies['learned']['frequencies'][number];

/** How the shop's finished jobs shift the catalog's frequencies: shown, taken back, taken along. */
export function Frequencies() {
  const own = useOwnFrequencies();
  const past = usePastJobs();
  const catalog = useCatalog();
  const { wrong, act } = useAct();
  const say = (value: 'on' | 'off') =>
    act(() => write(shopLog, 'setting', { key: 'own-frequencies', value }));
  const { jobs } = own.learned;
  useArrival('own-frequencies');
  return (
    <section className="section stack tight" aria-labelledby="own-frequencies">
      <h2 id="own-frequencies">The shop’s own frequencies</h2>
      {own.learned.jobs === 0 && !past?.all ? (
        <p className="empty">
          No finished job counts yet. A job counts once it is handed over and a fault was named in it; then
          the advice leans a little towards what this shop really meets.
        </p>
      ) : (
        <>
          <p>{standing(own)}</p>
          <Choices
            label="What the advice goes by"
            value={own.on ? 'on' : 'off'}
            onChange={(v) => void say(v)}
            choices={[
              { id: 'on', label: 'the catalog and our own jobs' },
              { id: 'off', label: 'the catalog alone' },
            ]}
          />
          <Shifts own={own} />
          <Jobs />
          <div>
            <Button
              disabled={jobs === 0}
              onClick={() =>
                download('own-frequencies.json', JSON.stringify(exportedFrequencies(own, catalog), null, 2))
              }
            >
              Take the counts along as a file
            </Button>
            <p className="soft">Counts by fault and kind of engine only: no job, no machine, no owner.</p>
          </div>
        </>
      )}
      <Wrong words={wrong} />
    </section>
  );
}

function standing({ on, learned: { jobs, strength } }: OwnFrequencies): string {
  if (jobs === 0) return 'Every finished job is left out: the catalog speaks alone.';
  const share = Math.round((100 * jobs) / (jobs + strength));
  const these = counted(jobs, 'finished job counts', 'finished jobs count');
  if (!on) return `${these}, but nothing is shifted by them: the catalog speaks alone.`;
  return `${these}. The catalog speaks with the weight of ${strength} machines, so a fault that all of them tell of has moved ${share} % of the way from the catalog’s figure to the shop’s own. What nobody decided on counts by the chance that was left of it.`;
}

const shownAtFirst = 6;
/** A fault never met here that hardly moved is not worth a line. */
const worthALine = 0.05;

function Shifts({ own }: { own: OwnFrequencies }) {
  const [all, setAll] = useState(false);
  const names = byId(useCatalog().faults);
  const met = own.learned.frequencies
    .filter((f) => f.found > 0 || Math.abs(f.learned - f.catalog) >= worthALine)
    .toSorted((a, b) => Math.abs(Math.log(b.oddsTimes)) - Math.abs(Math.log(a.oddsTimes)));
  if (met.length === 0) return null;
  const shown = all ? met : met.slice(0, shownAtFirst);
  return (
    <div>
      <h3>What has shifted most</h3>
      <ul className="lines">
        {shown.map((f) => (
          <li key={`${f.architecture} ${f.fault}`}>
            <div>
              <b>{names.get(f.fault)?.name ?? f.fault}</b> <span className="soft">{f.architecture}</span>
              <div className="soft">
                found in {f.found} of {f.present + f.absent}: {shiftWords(f)}
              </div>
            </div>
            <span className="minutes">
              {of100(f.catalog)} → {of100(f.learned)} %
            </span>
          </li>
        ))}
      </ul>
      {met.length > shownAtFirst && (
        <Button look="quiet" onClick={() => setAll(!all)}>
          {all ? 'Only the largest shifts' : `${met.length - shownAtFirst} more shifts`}
        </Button>
      )}
    </div>
  );
}

/** "1 to 9 in the catalog, 1 to 5 here" */
function shiftWords({ catalog, learned, halfWidth }: Learned): string {
  const range = `${of100(Math.max(0, learned - halfWidth))} and ${of100(Math.min(1, learned + halfWidth))} %`;
  return `odds ${odds(catalog)} in the catalog, ${odds(learned)} with yours; likely between ${range}`;
}

const odds = (p: number): string => {
  const against = (1 - p) / p;
  return against >= 1 ? `1 to ${short(against)}` : `${short(1 / against)} to 1`;
};
const short = (x: number): string => (x < 10 ? x.toFixed(1).replace('.0', '') : String(Math.round(x)));
const of100 = (p: number): string => (100 * p).toFixed(p < 0.1 ? 1 : 0);

function Jobs() {
  const past = usePastJobs();
  const { wrong, act } = useAct();
  const change = (job: string, counted: boolean) =>
    act(() => write(shopLog, 'learning', { job, counted, reason: '' }));
  if (!past) return null;
  const { all, leftOut, jobs } = past;
  return (
    <details>
      <summary>
        {counted(all - leftOut, 'job')} counted
        {leftOut > 0 && `, ${leftOut} left out`}
      </summary>
      <ul className="lines">
        {jobs.map((j) => (
          <li key={j.job}>
            <div>
              <Link href={`/job/${j.job}/findings`}>Tag {j.tag}</Link> {j.machine}
              <div className="soft">
                {j.architecture}, handed over {j.at.slice(0, 10)}
                {!j.counted && ' · left out'}
              </div>
            </div>
            <Button
              look="quiet"
              aria-label={j.counted ? `Leave out: tag ${j.tag}` : `Count again: tag ${j.tag}`}
              onClick={() => void change(j.job, !j.counted)}
            >
              {j.counted ? 'Leave out' : 'Count again'}
            </Button>
          </li>
        ))}
      </ul>
      {jobs.length < all && (
        <p className="soft">
          The latest {jobs.length} of {all} are shown.
        </p>
      )}
      <Wrong words={wrong} />
    </details>
  );
}
