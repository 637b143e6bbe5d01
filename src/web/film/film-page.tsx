import { useEffect, useRef, useState } from 'react';
import { Link } from 'wouter';
import type { Answers, Film } from '../../job/index.js';
import { clockWords } from '../../phrase/index.js';
import { Page } from '../frame/page.js';
import { useAct, Wrong } from '../parts/act.js';
import { DropFile } from '../parts/drop-file.js';
import { CardLeft } from './card-left.js';
import { FilmBegan } from './film-began.js';
import { FilmChapters } from './film-chapters.js';
import { type OpenFilm, openFilm } from './open-film.js';
import { ViewsOnFilm } from './views-on-film.js';

/** A film that ran along the work: what nobody photographed is taken out of it, by the log's times. */
export function FilmPage({ answers, stage }: { answers: Answers; stage: string | undefined }) {
  const { job } = answers;
  const [film, setFilm] = useState<OpenFilm>();
  const [beganMs, setBeganMs] = useState<number>();
  const player = useRef<HTMLVideoElement>(null);
  const { wrong, busy, act } = useAct();
  useEffect(() => () => film?.close(), [film]);
  const take = (file: File) =>
    act(async () => {
      const opened = await openFilm(file);
      setFilm(opened);
      setBeganMs(file.lastModified - opened.seconds * 1000);
    });
  const ran: Film | undefined =
    film && beganMs !== undefined ? { file: film.file.name, seconds: film.seconds, beganMs } : undefined;
  return (
    <Page title="Film">
      <p className="row">
        <Link href={`/job/${job.id}/${stage ?? 'teardown'}`} className="button quiet">
          Back to tag {job.tag}
        </Link>
      </p>
      <p>
        A camera that ran along saw what nobody photographed. The film is read on this device; nothing is sent
        but the pictures that you keep.
      </p>
      <DropFile
        label={busy ? 'Opening the film …' : film ? 'Choose another film' : 'Choose a film'}
        or="or drop it here"
        accept="video/*,.mp4,.mov,.webm,.mkv"
        onFile={(file) => void take(file)}
      />
      <Wrong words={wrong} />
      {film && ran && (
        <>
          <section className="section stack tight" aria-label="The film">
            <div className="row apart">
              <h2>{film.file.name}</h2>
              <span className="soft">
                {clockWords(film.seconds)} long, {rateWords(rateOf(film))} Mb/s
              </span>
            </div>
            <FilmBegan key={film.address} {...{ job, film, ran, player }} onBegan={setBeganMs} />
          </section>
          <ViewsOnFilm key={`views ${film.address}`} {...{ answers, film, ran, player }} />
        </>
      )}
      <FilmChapters job={job} ran={ran} />
      <CardLeft key={`card ${film?.address}`} rate={film && rateWords(rateOf(film))} />
    </Page>
  );
}

/** Three figures are more than a camera keeps to. */
const rateWords = (rate: number): string => String(Number(rate.toPrecision(3)));

/** Megabits a second, sound and all. */
const rateOf = ({ file, seconds }: OpenFilm): number => (file.size * 8) / seconds / 1e6;
