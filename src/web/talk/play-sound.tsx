import { useEffect, useRef, useState } from 'react';
import type { Body } from '../../job/index.js';
import { clockWords } from '../../phrase/index.js';
import { pictureUrl } from '../data/api.js';
import { localPicture } from '../data/outbox.js';
import { Button, useAct, Wrong } from '../parts/act.js';

/** Plays what was said, from this device while it has not been sent, and else from the store. */
export function PlaySound({ sound }: { sound: Pick<Body<'spoken-note'>['sound'], 'sha256' | 'seconds'> }) {
  const { wrong, busy, act } = useAct();
  const [playing, setPlaying] = useState(false);
  const player = useRef<HTMLAudioElement>(undefined);
  const stop = () => {
    player.current?.pause();
    setPlaying(false);
  };
  useEffect(() => () => player.current?.pause(), []);
  const play = () =>
    act(async () => {
      const url = URL.createObjectURL(await soundOf(sound.sha256));
      const audio = new Audio(url);
      audio.onended = () => setPlaying(false);
      audio.onpause = () => URL.revokeObjectURL(url);
      player.current = audio;
      await audio.play();
      setPlaying(true);
    });
  return (
    <span className="play">
      <Button disabled={busy} aria-pressed={playing} onClick={playing ? stop : () => void play()}>
        {playing ? 'Stop' : `Play ${clockWords(sound.seconds)}`}
      </Button>
      <Wrong words={wrong} />
    </span>
  );
}

async function soundOf(sha256: string): Promise<Blob> {
  const here = await localPicture(sha256);
  if (here) return new Blob([here], { type: 'audio/wav' });
  const answer = await fetch(pictureUrl(sha256)).catch(() => undefined);
  if (!answer?.ok) throw new Error('This sound lies in the shop’s store, which cannot be reached now.');
  return answer.blob();
}
