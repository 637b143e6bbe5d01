import { useState } from 'react';
import { roleOf } from '../../../../catalog/index.js';
import { type From, type Job, mostRpm } from '../../../../job/index.js';
import { useCatalog } from '../../../data/answers.js';
import { Button } from '../../../parts/act.js';
import { AddRecording } from './add-recording.js';
import { HeardTable } from './heard-table.js';
import { Live } from './live.js';
import { SpeedPicture, type SpeedSpan, spanOf } from './speed-picture.js';

type Recording = From<'recording'>;

/** What the engine sounds like, before the work and after it: speed, pulls, hunting, droop and missed beats. */
export function Listening({ job }: { job: Job }) {
  const [doing, setDoing] = useState<'file' | 'live'>();
  const most = mostRpm(job, roleOf(useCatalog(), 'top-speed'));
  const recordings = [...job.recordings.values()];
  const span = spanOf(recordings, most);
  return (
    <section className="section stack tight" aria-label="How it sounds">
      <h2>How it sounds</h2>
      {recordings.length === 0 && (
        <p className="soft">
          Record the engine with the phone, half a meter from the muffler, before the work and after it: the
          same pulls, the same warm-up. The sound stays on this device; what was heard goes into the log.
        </p>
      )}
      <div className="row">
        <Button onClick={() => setDoing('file')}>Add a recording</Button>
        <Button onClick={() => setDoing('live')}>Listen now</Button>
      </div>
      <HeardTable />
      {span && <BeforeAndAfter recordings={recordings} span={span} most={most} />}
      <AddRecording job={job} most={most} open={doing === 'file'} onClose={() => setDoing(undefined)} />
      <Live job={job} most={most} open={doing === 'live'} onClose={() => setDoing(undefined)} />
    </section>
  );
}

function BeforeAndAfter(props: {
  recordings: readonly Recording[];
  span: SpeedSpan;
  most: number | undefined;
}) {
  return (
    <div className="side-by-side">
      {props.recordings.map((r) => (
        <figure key={r.recording}>
          <figcaption>
            <b>{r.phase === 'before' ? 'Before the work' : 'After it'}</b> · {r.name}
            {r.temperature !== 'unknown' && `, ${r.temperature}`}
          </figcaption>
          {r.track.length > 1 && (
            <SpeedPicture heard={r} span={props.span} mostRpm={props.most} title={r.name} />
          )}
          <p className="soft">{r.says}</p>
        </figure>
      ))}
    </div>
  );
}
