import { useState } from 'react';
import { type Film, type Job, whenOf } from '../../job/index.js';
import { counted } from '../../phrase/index.js';
import { logChaptersUrl, namedChaptersUrl } from '../data/api.js';
import { Button } from '../parts/act.js';
import { TimeField } from './time-field.js';

/** Chapter files (WebVTT) for the films of a job: most players show them when the file lies beside the film. */
export function FilmChapters({ job, ran }: { job: Job; ran: Film | undefined }) {
  const films = [...new Set(job.photographs.flatMap(({ clip }) => (clip ? [clip.file] : [])))];
  return (
    <section className="section stack tight" aria-label="Chapters for a film">
      <h2>Chapters for a film</h2>
      <p>Beside the film, under its name, most players show them.</p>
      {films.length > 0 && (
        <ul className="lines film-names">
          {films.map((film, i) => (
            <li key={film}>
              <span>{film}, by the pieces that were named</span>
              <a className="button" href={namedChaptersUrl(job.id, i + 1)} download>
                Chapter file
              </a>
            </li>
          ))}
        </ul>
      )}
      {ran ? (
        <LogChapters job={job} fromMs={ran.beganMs} toMs={ran.beganMs + ran.seconds * 1000} />
      ) : (
        <ChaptersByTime job={job} />
      )}
    </section>
  );
}

/** Of a film that lies elsewhere: when it began and ended is said. */
function ChaptersByTime({ job }: { job: Job }) {
  const first = job.log.find(({ known, struck }) => !struck && known?.kind === 'step')?.entry;
  const [fromMs, setFrom] = useState(first && Date.parse(whenOf(first)));
  const [toMs, setTo] = useState<number>();
  return (
    <>
      <p>A camera that ran along: each line of the log becomes a chapter, by its time.</p>
      <div className="side-by-side">
        <TimeField label="The film began" ms={fromMs} onChange={setFrom} />
        <TimeField label="It ended (may be left open)" ms={toMs} onChange={setTo} />
      </div>
      <LogChapters job={job} fromMs={fromMs} toMs={toMs} />
    </>
  );
}

interface Between {
  readonly job: Job;
  readonly fromMs: number | undefined;
  readonly toMs: number | undefined;
}

function LogChapters({ job, fromMs, toMs }: Between) {
  const lines = linesBetween(job, fromMs, toMs);
  const times = { from: iso(fromMs) ?? '', to: iso(toMs) };
  return (
    <>
      <p className="soft" role="status">
        {counted(lines, 'line')} of the log {lines === 1 ? 'falls' : 'fall'} into it.
      </p>
      <div className="row">
        {lines > 0 ? (
          <a className="button" href={logChaptersUrl(job.id, times)} download>
            Chapter file of the log
          </a>
        ) : (
          <Button disabled>Chapter file of the log</Button>
        )}
      </div>
    </>
  );
}

const iso = (ms: number | undefined) => (ms === undefined ? undefined : new Date(ms).toISOString());

function linesBetween(job: Job, fromMs = Number.NaN, toMs = Number.POSITIVE_INFINITY): number {
  return job.log.filter(({ entry, known, struck }) => {
    const at = Date.parse(whenOf(entry));
    return known && !struck && known.kind !== 'strike' && at >= fromMs && at < toMs;
  }).length;
}
