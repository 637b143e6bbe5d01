import { useEffect, useRef, useState } from 'react';
import type { ViewOnFilm } from '../../job/index.js';
import type { OpenFilm } from './open-film.js';

/** Long side in pixels: enough to tell which one shows it. */
const smallPicture = 480;

/**
 * The pictures of a film at the moments of the views, small, as they come: by the seconds from its beginning. What was
 * taken once is kept while the film is open.
 */
export function useStills(film: OpenFilm, views: readonly ViewOnFilm[]) {
  const [stills, setStills] = useState<ReadonlyMap<number, string>>(new Map());
  const [wrong, setWrong] = useState<string>();
  const taken = useRef(new Map<number, string>());
  const moments = [...new Set(views.flatMap((v) => v.moments.map((m) => m.seconds)))].sort((a, b) => a - b);
  const asked = moments.join(' ');
  useEffect(() => {
    const wanted = asked === '' ? [] : asked.split(' ').map(Number);
    let isWanted = true;
    const takeAll = async () => {
      for (const seconds of wanted.filter((each) => !taken.current.has(each))) {
        const picture = await film.pictureAt(seconds, smallPicture);
        if (!isWanted) return;
        taken.current.set(seconds, URL.createObjectURL(picture));
        setStills(new Map(taken.current));
      }
    };
    takeAll().catch((error) => isWanted && setWrong(error instanceof Error ? error.message : String(error)));
    return () => {
      isWanted = false;
    };
  }, [film, asked]);
  useEffect(() => {
    const all = taken.current;
    return () => {
      for (const address of all.values()) URL.revokeObjectURL(address);
    };
  }, []);
  return { stills, left: moments.filter((each) => !stills.has(each)).length, wrong };
}
