import type { Stage } from '../../entry.js';
import { filmSeconds } from '../../film-time.js';
import type { From } from '../../job.js';
import { localTime } from '../../local-time.js';
import { whenOf } from '../../order.js';
import type { Answers } from '../answers.js';
import { viewsOf, type WantedView } from './coverage.js';
import { piecesOf } from './taken.js';

/** A film that a camera took along the work. */
export interface Film {
  readonly file: string;
  /** when it began by the bench's clock, in milliseconds since 1970 */
  readonly beganMs: number;
  /** its length */
  readonly seconds: number;
}

export interface FilmMoment {
  /** from the beginning of the film */
  readonly seconds: number;
  /** ISO 8601 with offset */
  readonly at: string;
}

/** Something that should have a picture and has none, and when in the film it may be seen. */
export interface ViewOnFilm {
  /** what a picture of it carries as `about`; none for a piece of film that was named by its caption alone */
  readonly about?: string;
  readonly caption: string;
  /** the step or piece that it belongs to */
  readonly of: string;
  readonly stage: Stage;
  readonly when: From<'photograph'>['when'];
  /** in the order of the film; none where the film did not run then */
  readonly moments: readonly FilmMoment[];
}

const mostMoments = 6;
/** What lies further back before a line was hardly written of what is seen there. */
const longestBeforeMs = 120_000;
/** Lines of one touch are written at once: none of them was before the others. */
const apartMs = 1_000;

/**
 * The views without a picture, each with the moments of a film at which to look for it: from the line of the log before
 * its piece was logged as off (or its gate as passed) to that line, at most two minutes, both ends among them. A piece
 * of this film that was named by its times has moments between those, whatever its clock said.
 */
export function viewsOnFilm(answers: Answers, film: Film): ViewOnFilm[] {
  return [...namedPieces(answers, film), ...missedAtTeardown(answers, film), ...missedAtGates(answers, film)];
}

function missedAtTeardown(answers: Answers, film: Film): ViewOnFilm[] {
  return answers.takenOff.flatMap((step) => {
    const { title } = step;
    const views = viewsOf(answers, {
      step: step.step,
      title,
      components: piecesOf(answers, step),
      done: step,
    });
    const moments = momentsBefore(answers, step.step, film);
    return views.filter((v) => !v.shown).map((v) => wanted(v, 'teardown', 'before', moments));
  });
}

function missedAtGates(answers: Answers, film: Film): ViewOnFilm[] {
  const { gates, coverage } = answers.assembly;
  return gates
    .filter((gate) => gate.answer?.state === 'done')
    .flatMap(({ gate, step }) => {
      const missing = coverage.wanted.filter((v) => v.of === gate.id && !v.shown);
      const moments = momentsBefore(answers, step, film);
      return missing.map((v) => wanted(v, 'assembly', 'after', moments));
    });
}

const wanted = (
  { key, view, title }: WantedView,
  stage: Stage,
  when: ViewOnFilm['when'],
  moments: readonly FilmMoment[],
): ViewOnFilm => ({ about: key, caption: view, of: title, stage, when, moments });

/** Pieces that were named by their times in this very film, and of which no picture was kept. */
function namedPieces({ job }: Answers, film: Film): ViewOnFilm[] {
  return job.photographs.flatMap(({ clip, caption, about, stage, when }) => {
    if (clip?.file !== film.file || isShown(job.photographs, { about, caption })) return [];
    const [from, to] = [filmSeconds(clip.from), filmSeconds(clip.to)];
    if (from === undefined) return [];
    const moments = spread(film, from, Math.max(from, to ?? from));
    return [{ ...(about !== undefined && { about }), caption, of: clip.file, stage, when, moments }];
  });
}

const isShown = (
  photographs: readonly From<'photograph'>[],
  { about, caption }: Pick<From<'photograph'>, 'about' | 'caption'>,
): boolean =>
  photographs.some((p) => p.picture && (about === undefined ? p.caption === caption : p.about === about));

/** Up to the line that first says that a step is done. */
function momentsBefore({ job }: Answers, step: string, film: Film): FilmMoment[] {
  const lines = job.log.filter(({ known, struck }) => known && !struck);
  const done = lines.find(
    ({ known }) => known?.kind === 'step' && known.body.step === step && known.body.state === 'done',
  );
  if (!done) return [];
  const off = Date.parse(whenOf(done.entry));
  const before = lines.map(({ entry }) => Date.parse(whenOf(entry))).filter((at) => at <= off - apartMs);
  const from = Math.max(off - longestBeforeMs, ...before);
  return spread(film, (from - film.beganMs) / 1000, (off - film.beganMs) / 1000);
}

/** Moments between two, both of them where the film ran then, evenly and no closer than a second. */
function spread(film: Film, from: number, to: number): FilmMoment[] {
  const [first, last] = [Math.max(0, from), Math.min(film.seconds, to)];
  if (!(first <= last)) return [];
  const count = Math.min(mostMoments, Math.floor(last - first) + 1);
  return Array.from({ length: count }, (_, i) =>
    momentAt(film, count === 1 ? last : first + ((last - first) * i) / (count - 1)),
  );
}

/** A moment of a film by the bench's clock. */
export const momentAt = ({ beganMs }: Pick<Film, 'beganMs'>, seconds: number): FilmMoment => ({
  seconds,
  at: localTime(new Date(Math.round(beganMs + seconds * 1000))),
});
