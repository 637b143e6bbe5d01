import { useEffect, useState } from 'react';
import { Link, useSearchParams } from 'wouter';
import { type FoundJob, type FoundPlace, type JobSummary, stageNames } from '../../job/index.js';
import { counted } from '../../phrase/index.js';
import { useFound } from '../data/queries.js';
import { Wrong } from '../parts/act.js';
import { Field } from '../parts/field.js';

/** So long a hand rests between two letters at most. */
const restMs = 150;

/** What is looked for stands in the address: Back from a job shows again what was found. */
export function useFindWords(): [string, (words: string) => void] {
  const [search, setSearch] = useSearchParams();
  const asked = search.get('find') ?? '';
  const [words, setWords] = useState(asked);
  const [known, setKnown] = useState(asked);
  if (asked !== known) {
    // the address was changed: Back, or the way to the bench
    setKnown(asked);
    if (asked !== words.trim()) setWords(asked);
  }
  useEffect(() => {
    const kept = words.trim();
    if (kept === asked) return;
    const timer = setTimeout(() => setSearch(kept === '' ? {} : { find: kept }, { replace: true }), restMs);
    return () => clearTimeout(timer);
  }, [words, asked, setSearch]);
  return [words, setWords];
}

export function FindField({ words, onChange }: { words: string; onChange: (words: string) => void }) {
  return (
    <Field label="Find in all jobs">
      {(control) => (
        <input
          {...control}
          type="search"
          value={words}
          placeholder="tag, owner, part number, bag 3, 140 in-lb, Nov 29, a word"
          enterKeyHint="search"
          autoComplete="off"
          autoCapitalize="none"
          spellCheck={false}
          maxLength={200}
          onChange={(e) => onChange(e.target.value)}
          onKeyDown={(e) => e.key === 'Escape' && onChange('')}
        />
      )}
    </Field>
  );
}

/** The jobs in which all of it stands, each with where. `open` stands in for a store that cannot be reached. */
export function FoundJobs({ words, open }: { words: string; open: readonly JobSummary[] }) {
  const { data, error, most } = useFound(words, open);
  const found = data?.found;
  return (
    <section className="stack" aria-label="What is found">
      <Wrong words={error?.message} />
      {data?.onlyHere && (
        <p className="verdict cannot-decide wraps">
          The shop’s store cannot be reached: only tag, machine and complaint of the open jobs are looked
          through.
        </p>
      )}
      <p className="soft" role="status">
        {found ? foundWords(found.length, most) : error ? '' : 'Looking …'}
      </p>
      {found && found.length > 0 && (
        <ul className="lines">
          {found.map((job) => (
            <FoundRow key={job.summary.id} found={job} />
          ))}
        </ul>
      )}
    </section>
  );
}

function foundWords(count: number, most: number): string {
  if (count === 0) return 'Nothing found. Fewer letters or fewer words find more.';
  if (count === most) return `The first ${most} jobs. One word more narrows it.`;
  return counted(count, 'job');
}

function FoundRow({ found: { summary, places } }: { found: FoundJob }) {
  const { id, tag, machine, title, handedOver, invented, last } = summary;
  const name = machine || title || 'Machine not named yet';
  const shown = places.filter(({ kind }) => kind !== 'open'); // the tag stands before it
  return (
    <li className="tag-line found">
      <Link href={`/job/${id}/${last?.stage ?? 'intake'}`} className="tag" aria-label={`Tag ${tag}: ${name}`}>
        <i aria-hidden="true" />
        <b>{tag}</b>
      </Link>
      <div>
        <b>{name}</b>
        {handedOver && <span className="chip">handed over</span>}
        {invented && <span className="chip">invented</span>}
        {shown.map((place) => (
          <FoundLine key={place.entry} job={id} place={place} />
        ))}
      </div>
    </li>
  );
}

function FoundLine({ job, place }: { job: string; place: FoundPlace }) {
  const { stage, title, value, detail, day, entry } = place;
  return (
    <Link href={`/job/${job}/${stage}?line=${entry}`} className="found-line">
      <span>
        {title}
        {value && (
          <>
            : <b>{value}</b>
          </>
        )}
        {detail && <span className="soft"> · {detail}</span>}
      </span>
      <small>
        {stageNames[stage]}, {day}
      </small>
    </Link>
  );
}
