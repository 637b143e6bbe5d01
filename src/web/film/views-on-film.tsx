import type { RefObject } from 'react';
import {
  type Answers,
  type Body,
  type Film,
  type FilmMoment,
  momentAt,
  type ViewOnFilm,
} from '../../job/index.js';
import { capital } from '../../phrase/index.js';
import { writePhotograph } from '../data/outbox.js';
import { longestSide } from '../data/smaller-picture.js';
import { Button, useAct, Wrong } from '../parts/act.js';
import type { OpenFilm } from './open-film.js';
import { useStills } from './use-stills.js';

interface Looked {
  readonly player: RefObject<HTMLVideoElement | null>;
  readonly answers: Answers;
  readonly film: OpenFilm;
  readonly ran: Film;
}

/** What has no picture, each with the pictures of the film that may show it: one touch keeps one. */
export function ViewsOnFilm({ answers, film, ran, player }: Looked) {
  const views = answers.viewsOnFilm(ran);
  const seen = views.filter((v) => v.moments.length > 0);
  const unseen = views.filter((v) => v.moments.length === 0);
  const { stills, left, wrong } = useStills(film, seen);
  return (
    <section className="section stack" aria-label="Without a picture">
      <h2>Without a picture</h2>
      {views.length === 0 && <p className="empty">Everything that was wanted has its picture.</p>}
      {left > 0 && <p role="status">Taking {left} pictures out of the film …</p>}
      <Wrong words={wrong} />
      {seen.length > 0 && (
        <p>Touch the picture that shows it: it is kept, with the time at which it was taken.</p>
      )}
      {seen.map((view) => (
        <OneView key={keyOf(view)} {...{ answers, film, ran, player, view, stills }} />
      ))}
      {unseen.length > 0 && (
        <details open={seen.length === 0}>
          <summary>{unseen.length} that this film was not running for</summary>
          <div className="stack">
            {unseen.map((view) => (
              <OneView key={keyOf(view)} {...{ answers, film, ran, player, view, stills }} />
            ))}
          </div>
        </details>
      )}
    </section>
  );
}

const keyOf = ({ about, caption }: ViewOnFilm) => about ?? caption;

function OneView(props: Looked & { view: ViewOnFilm; stills: ReadonlyMap<number, string> }) {
  const { answers, film, ran, player, view, stills } = props;
  const { job } = answers;
  const { wrong, busy, act } = useAct(job);
  const keep = (moment: FilmMoment) =>
    void act(async () => {
      const picture = await film.pictureAt(moment.seconds, longestSide);
      await writePhotograph(job.id, picture, keptAs(view, film.file.name, moment));
    });
  return (
    <article className="stack tight" aria-label={view.caption}>
      <div className="row apart">
        <div>
          <b>{capital(view.caption)}</b>
          <div className="soft">{view.of}</div>
        </div>
        <Button
          look="quiet"
          disabled={busy}
          onClick={() => keep(momentAt(ran, player.current?.currentTime ?? 0))}
        >
          Keep what the film shows now
        </Button>
      </div>
      <div className="film-stills">
        {view.moments.map((moment) => (
          <button
            type="button"
            key={moment.seconds}
            className="film-still"
            disabled={busy || !stills.has(moment.seconds)}
            onClick={() => keep(moment)}
            aria-label={`Keep ${moment.at.slice(11, 19)} as ${view.caption}`}
          >
            {stills.has(moment.seconds) ? <img src={stills.get(moment.seconds)} alt="" /> : <span />}
            <span>{moment.at.slice(11, 19)}</span>
          </button>
        ))}
      </div>
      <Wrong words={wrong} />
    </article>
  );
}

const longestName = 400;

const keptAs = (
  { about, caption, stage, when }: ViewOnFilm,
  file: string,
  { seconds, at }: FilmMoment,
): Omit<Body<'photograph'>, 'picture'> => ({
  ...(about !== undefined && { about }),
  ...{ caption, stage, when },
  still: { film: file.slice(0, longestName), seconds: Math.round(seconds * 1000) / 1000, at },
});
