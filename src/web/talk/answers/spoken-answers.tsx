import { Link } from 'wouter';
import type { Nothing } from '../../../hear/index.js';
import { Button, Wrong } from '../../parts/act.js';
import { type Question, sayables } from './choice.js';
import type { Voice } from './use-answering.js';

const nothingCame: Readonly<Record<Nothing, string>> = {
  'nothing said': 'Nobody was heard. Nothing is written.',
  'too loud': 'Too loud here: nothing is taken for an answer.',
  'not told': 'Not understood. Nothing is written.',
  dropped: 'Dropped. Nothing is written.',
};

/** What may be said to the question in hand, and above all else what is heard. */
export function SpokenAnswers({ question, voice }: { question: Question; voice: Voice }) {
  const may = sayables(question);
  if (!voice.on) return null;
  return (
    <section className="stack tight" aria-label="Answer by voice">
      <p className="soft">
        Answering by voice, a trial: hold the pedal, the space key or the lower half of the screen, say one of
        these, let go. What writes waits for a tap.
      </p>
      <ul className="may-say" aria-label="What may be said">
        {may.map(({ phrase }) => (
          <li key={phrase}>{phrase}</li>
        ))}
      </ul>
      <p>
        <Link href={`/shop/voice?${new URLSearchParams(may.map(({ phrase }) => ['say', phrase]))}`}>
          Teach it how you say these
        </Link>
      </p>
      <Wrong words={voice.wrong} />
      <VoiceNow voice={voice} />
    </section>
  );
}

function VoiceNow({ voice: { state, opening, shown, tap, drop } }: { voice: Voice }) {
  if (shown && state.at === 'shown')
    return (
      <div className="heard-now" role="status">
        <small>Heard</small>
        <b>“{state.phrase}”</b>
        <span>{shown.label}</span>
        <small>Tap the pedal to write it. Hold and talk again for another. Wait, and it is dropped.</small>
        <div className="row">
          <Button onClick={drop}>Drop it</Button>
          <Button look="go" onClick={() => tap(undefined)}>
            Write it
          </Button>
        </div>
      </div>
    );
  const words = opening
    ? 'The microphone opens …'
    : { rest: '', shown: '', held: 'Say it …', hearing: 'Hearing …', nothing: '' }[state.at];
  const said = state.at === 'nothing' ? nothingCame[state.why] : words;
  return said ? (
    <div className="talk-now" role="status">
      {said}
    </div>
  ) : null;
}
