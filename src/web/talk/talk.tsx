import { useEffect, useState } from 'react';
import type { Body, Job } from '../../job/index.js';
import { clockWords } from '../../phrase/index.js';
import { Wrong } from '../parts/act.js';
import { HoldButton } from './hold-button.js';
import { PlaySound } from './play-sound.js';
import { type Talk, useTalk } from './use-talk.js';

/** Held while one talks into the log. */
export function HoldToTalk({ talk }: { talk: Talk }) {
  const isOn = talk.state === 'opening' || talk.state === 'talking';
  return (
    <div className="stack tight">
      <HoldButton isOn={isOn} disabled={talk.state === 'keeping'} begin={talk.begin} end={talk.end}>
        {isOn ? 'Talking: let go, or tap' : 'Hold and talk'}
      </HoldButton>
      <Wrong words={talk.wrong} />
      <TalkNow talk={talk} />
    </div>
  );
}

/** What the microphone does now, above all else and read from two meters. */
function TalkNow({ talk: { state } }: { talk: Talk }) {
  if (state === 'idle') return null;
  return (
    <div className="talk-now" role="status">
      {state === 'opening' && 'The microphone opens …'}
      {state === 'talking' && <Talking />}
      {state === 'keeping' && 'Keeping what you said …'}
    </div>
  );
}

function Talking() {
  const [seconds, setSeconds] = useState(0);
  useEffect(() => {
    const timer = setInterval(() => setSeconds((before) => before + 1), 1000);
    return () => clearInterval(timer);
  }, []);
  return (
    <>
      Talk now <b aria-hidden="true">{clockWords(seconds)}</b>
    </>
  );
}

interface Beside {
  readonly job: Job;
  readonly stage: Body<'spoken-note'>['stage'];
}

/** What was said beside what is in hand, oldest first. */
export function SpokenNotes({ job, stage, about }: Beside & { about?: string }) {
  const notes = job.spokenNotes.filter((note) => note.stage === stage && (!about || note.about === about));
  if (notes.length === 0) return null;
  return (
    <ul className="spoken-notes" aria-label="Spoken notes">
      {notes.map((note) => (
        <li key={note.entry}>
          <PlaySound sound={note.sound} />
          <span>
            {note.at.slice(11, 16)}
            {!about && note.about && ` · ${note.about}`}
          </span>
        </li>
      ))}
    </ul>
  );
}

/** On every sheet: talk, and hear again what was said at this stage. */
export function TalkOnSheet({ job, stage }: Beside) {
  const talk = useTalk(job.id, { stage });
  return (
    <section className="talk" aria-label="Talk into the log">
      <HoldToTalk talk={talk} />
      <SpokenNotes job={job} stage={stage} />
    </section>
  );
}

/** In step mode: the pedal, a key or the lower half of the screen is held as well. */
export function TalkAtStep({
  job,
  stage,
  about,
  talk,
  byPedal,
}: Beside & { about: string; talk: Talk; byPedal: boolean }) {
  return (
    <section className="talk" aria-label="Talk into the log">
      <HoldToTalk talk={talk} />
      {byPedal ? (
        <p className="soft">
          Or hold the pedal, the space key, N or the lower half of the screen, talk, let go.
        </p>
      ) : (
        <p className="soft">Or hold N, or a third pedal, talk, let go.</p>
      )}
      <SpokenNotes job={job} stage={stage} about={about} />
    </section>
  );
}
