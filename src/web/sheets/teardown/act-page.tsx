import type { ReactNode } from 'react';
import type { Job, Stage } from '../../../job/index.js';
import { Button } from '../../parts/act.js';
import { Camera } from '../../parts/picture.js';
import { Speak } from '../../parts/speak.js';
import { useStepKeys } from '../../parts/step-keys.js';
import { type Choice, type Question, toldAloud } from '../../talk/answers/choice.js';
import { ChoiceButton } from '../../talk/answers/choice-button.js';
import { phrases } from '../../talk/answers/phrases.js';
import { SpokenAnswers } from '../../talk/answers/spoken-answers.js';
import { useAnswering } from '../../talk/answers/use-answering.js';
import { TalkAtStep } from '../../talk/talk.js';
import { useTalk } from '../../talk/use-talk.js';

interface ActPageProps {
  job: Job;
  stage: Stage;
  /** "Teardown 6 / 13" */
  where: string;
  title: string;
  say?: ReactNode;
  spoken: string;
  /** what is done and noted; the right half of a wide screen */
  side: ReactNode;
  children: ReactNode;
  go: {
    readonly label: string;
    readonly say?: string;
    readonly act: () => unknown;
    readonly disabled?: boolean;
  };
  back?: (() => void) | undefined;
  /** what that does; “Back” goes to the one before */
  backWords?: string | undefined;
  /** what else answers it */
  choices?: readonly Choice[];
  /** answers that have no button of their own */
  alsoSaid?: readonly Choice[];
  other?: ReactNode;
  /** said for "how tight" */
  tight?: string | undefined;
  onLeave: () => void;
}

/** Step mode: one act at a time in large type, driven by thumb, space and arrows or a foot pedal. */
export function ActPage(props: ActPageProps) {
  const { job, stage, title, go, back, onLeave } = props;
  const talk = useTalk(job.id, { stage, about: title });
  const question = questionOf(props);
  const voice = useAnswering(question);
  useStepKeys(go.disabled ? undefined : () => void go.act(), back, onLeave, talk, voice);
  return (
    <main className="act-page">
      <header>
        <Button look="quiet" onClick={onLeave}>
          Leave
        </Button>
        <span>
          <span className="only-wide">Tag {job.tag} · </span>
          {props.where}
        </span>
        <span className="row">
          <Camera job={job.id} stage={stage} about={title} />
          <Speak words={props.spoken} />
        </span>
      </header>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: this region scrolls, and a keyboard must reach it */}
      <section className="act-body" tabIndex={0} aria-label="This step">
        <div className="stack">
          <div>
            <h1>{title}</h1>
            {props.say && <div className="say">{props.say}</div>}
          </div>
          {props.children}
          <SpokenAnswers question={question} voice={voice} />
          <TalkAtStep job={job} stage={stage} about={title} talk={talk} byPedal={!voice.on} />
        </div>
        <div className="stack">{props.side}</div>
      </section>
      <ActFoot {...props} />
    </main>
  );
}

function ActFoot({ back, backWords = 'Back', choices = [], other, go }: ActPageProps) {
  return (
    <footer>
      {back && (
        <Button className="back" onClick={back}>
          <span className="cut">{backWords}</span>
        </Button>
      )}
      {choices.map((choice) => (
        <ChoiceButton key={choice.label} choice={choice} />
      ))}
      {other}
      <Button look="go" disabled={go.disabled} onClick={() => void go.act()}>
        {go.label}
      </Button>
    </footer>
  );
}

/** The buttons at the foot, and what is only told. A look that is confirmed is another question than the one before it. */
function questionOf({
  title,
  go,
  back,
  backWords,
  choices = [],
  alsoSaid = [],
  spoken,
  tight,
}: ActPageProps): Question {
  return {
    key: `${title} ${go.label}`,
    choices: [
      { say: phrases.next, ...go, writes: true },
      ...choices,
      ...alsoSaid,
      ...(back
        ? [{ label: backWords ?? 'Back', say: phrases.back, writes: backWords !== undefined, act: back }]
        : []),
      toldAloud(phrases.again, spoken),
      ...(tight ? [toldAloud(phrases.tight, tight)] : []),
    ],
  };
}
