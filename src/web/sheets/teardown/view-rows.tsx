import type { Body, Job, WantedView } from '../../../job/index.js';
import { NameClip } from '../../parts/name-clip.js';
import { Picture, TakePicture } from '../../parts/picture.js';

/** The pictures wanted before or after an act, each with its camera; a piece of film named by file and times counts. */
export function ViewRows(props: {
  job: Job;
  views: readonly WantedView[];
  stage: Body<'photograph'>['stage'];
  when: Body<'photograph'>['when'];
}) {
  const { job, views, stage, when } = props;
  return views.map((v) => (
    <div className="act-row view-row" key={v.key}>
      <span>
        Picture: {v.view} <ViewState view={v} />
      </span>
      {v.shown ? (
        v.shown.picture && <Picture sha256={v.shown.picture.sha256} alt={v.view} width={160} />
      ) : (
        <span className="row">
          <TakePicture job={job.id} stage={stage} when={when} about={v.key} caption={v.view} label="Camera" />
          <NameClip job={job.id} stage={stage} when={when} about={v.key} caption={v.view} label="Film" />
        </span>
      )}
    </div>
  ));
}

function ViewState({ view }: { view: WantedView }) {
  if (view.shown) return <b className="verdict pass">{view.shown.clip ? 'on film' : 'taken'}</b>;
  return <b className="verdict fail">{view.gone ? 'not taken' : 'missing'}</b>;
}
