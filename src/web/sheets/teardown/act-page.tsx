import type { ReactNode } from 'react';
import type { Job } from '../../../job/index.js';
import { Button } from '../../parts/act.js';
import { Speak } from '../../parts/speak.js';
import { useStepKeys } from '../../parts/step-keys.js';

/** Step mode: one act at a time in large type, driven by thumb, space and arrows or a foot pedal. */
export function ActPage(props: {
  job: Job;
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
  other?: ReactNode;
  onLeave: () => void;
}) {
  const { go, back, onLeave } = props;
  useStepKeys(go.disabled ? undefined : go.act, back, onLeave);
  return (
    <main className="act-page">
      <header>
        <Button look="quiet" onClick={onLeave}>
          Leave
        </Button>
        <span>
          <span className="only-wide">Tag {props.job.tag} · </span>
          {props.where}
        </span>
        <Speak words={props.spoken} />
      </header>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: this region scrolls, and a keyboard must reach it */}
      <section className="act-body" tabIndex={0} aria-label="This step">
        <div className="stack">
          <div>
            <h1>{props.title}</h1>
            {props.say && <div className="say">{props.say}</div>}
          </div>
          {props.children}
        </div>
        <div className="stack">{props.side}</div>
      </section>
      <footer>
        {back && <Button onClick={back}>Back</Button>}
        {props.other}
        <Button look="go" disabled={go.disabled} onClick={go.act}>
          {go.label}
        </Button>
      </footer>
    </main>
  );
}
