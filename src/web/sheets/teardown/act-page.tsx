import type { ReactNode } from 'react';
import type { Job, Stage } from '../../../job/index.js';
import { Button } from '../../parts/act.js';
import { Camera } from '../../parts/picture.js';
import { Speak } from '../../parts/speak.js';
import { useStepKeys } from '../../parts/step-keys.js';
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
  go: { readonly label: string; readonly act: () => void; readonly disabled?: boolean };
  back?: (() => void) | undefined;
  /** what that does; “Back” goes to the one before */
  backWords?: string | undefined;
  other?: ReactNode;
  onLeave: () => void;
}

/** Step mode: one act at a time in large type, driven by thumb, space and arrows or a foot pedal. */
export function ActPage(props: ActPageProps) {
  const { job, stage, title, go, back, onLeave } = props;
  const talk = useTalk(job.id, { stage, about: title });
  useStepKeys(go.disabled ? undefined : go.act, back, onLeave, talk);
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
          <TalkAtStep job={job} stage={stage} about={title} talk={talk} />
        </div>
        <div className="stack">{props.side}</div>
      </section>
      <ActFoot {...props} />
    </main>
  );
}

function ActFoot({ back, backWords = 'Back', other, go }: ActPageProps) {
  return (
    <footer>
      {back && (
        <Button className="back" onClick={back}>
          <span className="cut">{backWords}</span>
        </Button>
      )}
      {other}
      <Button look="go" disabled={go.disabled} onClick={go.act}>
        {go.label}
      </Button>
    </footer>
  );
}
