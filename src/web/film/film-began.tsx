import { type RefObject, useState } from 'react';
import { type Film, type Job, lineWords, momentAt, whenOf } from '../../job/index.js';
import { Button } from '../parts/act.js';
import { SelectField } from '../parts/field.js';
import type { OpenFilm } from './open-film.js';
import { TimeField } from './time-field.js';

/**
 * The film beside the log: when it began by the bench's clock. A camera's own clock is often wrong, so the picture that
 * is shown can be said to be the moment of a line.
 */
export function FilmBegan(props: {
  job: Job;
  film: OpenFilm;
  ran: Film;
  player: RefObject<HTMLVideoElement | null>;
  onBegan: (ms: number) => void;
}) {
  const { job, film, ran, player, onBegan } = props;
  const [shown, setShown] = useState(0);
  const [line, setLine] = useState('');
  const lines = nearLines(job, ran);
  const chosen = lines.find(({ id }) => id === line);
  return (
    <div className="side-by-side">
      <video
        ref={player}
        className="film-player"
        src={film.address}
        controls
        muted
        playsInline
        preload="metadata"
        aria-label={`The film ${film.file.name}`}
        onTimeUpdate={(e) => setShown(e.currentTarget.currentTime)}
      />
      <div className="stack tight">
        <p role="status">
          In the picture it is <b>{clockAt(ran, shown)}</b> by the log.
        </p>
        <TimeField
          label="The film began"
          ms={ran.beganMs}
          onChange={onBegan}
          help="At first by the file’s own time. A camera’s clock is often wrong: hold it against a line of the log."
        />
        <SelectField
          label="What happens in the picture that the film shows now"
          choices={lines}
          value={line}
          onChange={setLine}
        />
        <div className="row">
          <Button
            disabled={!chosen}
            onClick={() => chosen && onBegan(chosen.ms - (player.current?.currentTime ?? 0) * 1000)}
          >
            It is this moment
          </Button>
        </div>
      </div>
    </div>
  );
}

const clockAt = (ran: Film, seconds: number) => momentAt(ran, seconds).at.slice(11, 19);

const halfDayMs = 12 * 3_600_000;

/** The lines that a clock may be wrong by; all of them where none lies near. */
function nearLines(job: Job, { beganMs, seconds }: Film) {
  const all = job.log
    .filter(({ known, struck }) => known && !struck && known.kind !== 'strike')
    .map((line) => {
      const at = whenOf(line.entry);
      const { title, value } = lineWords(line);
      const words = [at.slice(11, 19), title, value].filter(Boolean).join(' · ');
      return { id: line.entry.id, label: words, ms: Date.parse(at) };
    });
  const near = all.filter(({ ms }) => ms > beganMs - halfDayMs && ms < beganMs + seconds * 1000 + halfDayMs);
  return near.length > 0 ? near : all;
}
