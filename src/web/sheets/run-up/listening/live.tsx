import { useEffect, useRef, useState } from 'react';
import { type Body, engineHeard, type Job, loadOn } from '../../../../job/index.js';
import type { EngineKind } from '../../../../listen/index.js';
import { write } from '../../../data/outbox.js';
import { Button, useAct, Wrong } from '../../../parts/act.js';
import { Caution } from '../../../parts/caution.js';
import { Dialog } from '../../../parts/dialog.js';
import { Choices } from '../../../parts/field.js';
import { StopNow } from '../stop-now.js';
import { cylindersOf, handleFor, type Strokes, strokeChoices, strokesOf } from './add-recording.js';
import { hear } from './ear.js';
import { type Microphone, useMicrophone } from './microphone.js';
import { SpeedPicture, spanOf } from './speed-picture.js';

type Point = Body<'recording'>['track'][number];
type Mark = Body<'recording'>['marks'][number];

/** The engine listened to as it runs: a number to be read from two meters, the last minute, and marks for the log. */
export function Live(props: { job: Job; most: number | undefined; open: boolean; onClose: () => void }) {
  return (
    <Dialog title="Listen now" open={props.open} onClose={props.onClose}>
      {props.open && <LiveForm {...props} />}
    </Dialog>
  );
}

const everyMs = 500;
const marks = [loadOn, 'Load off', 'Choke off', 'Throttle open'];

function LiveForm({ job, most, onClose }: Parameters<typeof Live>[0]) {
  const microphone = useMicrophone();
  const [strokes, setStrokes] = useState(strokesOf(job));
  const engine = engineHeard(strokes === '2' ? 2 : 4, cylindersOf(job), most);
  const run = useLiveRun(microphone, engine);
  const { wrong, act } = useAct();
  const now = run.track.at(-1);
  const fresh = now && run.seconds - now.t < 2 ? now : undefined;
  const keep = () =>
    act(async () => {
      await write(job.id, 'recording', run.recorded(job));
      microphone.close();
      onClose();
    });
  const tooFast =
    fresh && most !== undefined && fresh.rpm - 2 * fresh.u > most
      ? [`Overspeed: ${Math.round(fresh.rpm)} rpm, ${Math.round(most)} rpm is the most`]
      : [];
  if (microphone.state !== 'on')
    return <BeforeListening microphone={microphone} strokes={strokes} onStrokes={setStrokes} />;
  return (
    <>
      <StopNow stops={tooFast} />
      <output className="live-speed" aria-label="Speed now">
        {fresh ? Math.round(fresh.rpm) : '–'}
      </output>
      <p>
        {fresh ? `rpm, ± ${Math.max(1, Math.ceil(2 * fresh.u))}` : 'No steady beat is heard.'}
        {run.rivals.length > 0 && ` It could also be ${run.rivals.map(Math.round).join(' or ')} rpm.`}
      </p>
      <LastMinute track={run.track} marks={run.marks} seconds={run.seconds} most={most} />
      <div className="row">
        {marks.map((what) => (
          <Button key={what} onClick={() => run.mark(what)}>
            {what}
          </Button>
        ))}
      </div>
      <Wrong words={wrong ?? run.wrong} />
      <div className="row end">
        <Button onClick={onClose}>Close without keeping</Button>
        <Button look="go" disabled={run.track.length < 2} onClick={() => void keep()}>
          Stop and keep
        </Button>
      </div>
    </>
  );
}

const refusals: Readonly<Record<Microphone['state'], string>> = {
  off: 'The microphone is used while this is open; the sound stays on this device.',
  asking: 'The browser asks whether the page may use the microphone.',
  on: '',
  refused:
    'The browser refused the microphone. Allow it for this page, or record with the phone and add the file.',
  none: 'No microphone can be used from this page. Record with the phone and add the file.',
};

function BeforeListening(props: {
  microphone: Microphone;
  strokes: Strokes | undefined;
  onStrokes: (strokes: Strokes) => void;
}) {
  const { microphone, strokes } = props;
  return (
    <>
      <Caution
        lines={[
          'Outdoors. Phone and hands clear of belt, blade, fan and muffler; a second way to stop is ready.',
        ]}
      />
      <p role="status">{refusals[microphone.state]}</p>
      <Choices label="Engine" choices={strokeChoices} value={strokes} onChange={props.onStrokes} />
      <div className="row end">
        <Button
          look="go"
          disabled={!strokes || microphone.state === 'asking'}
          onClick={() => void microphone.open()}
        >
          Use the microphone
        </Button>
      </div>
    </>
  );
}

function LastMinute(props: {
  track: readonly Point[];
  marks: readonly Mark[];
  seconds: number;
  most: number | undefined;
}) {
  const from = Math.max(0, props.seconds - 60);
  const shifted = <T extends { t: number }>(list: readonly T[]) =>
    list.filter(({ t }) => t >= from).map((each) => ({ ...each, t: each.t - from }));
  const heard = { seconds: 60, track: shifted(props.track), marks: shifted(props.marks), segments: [] };
  const span = spanOf([heard], props.most);
  return span ? (
    <SpeedPicture heard={heard} span={span} mostRpm={props.most} title="The last minute" />
  ) : null;
}

interface LiveRun {
  readonly track: readonly Point[];
  readonly marks: readonly Mark[];
  readonly seconds: number;
  readonly rivals: readonly number[];
  readonly wrong: string | undefined;
  readonly mark: (what: string) => void;
  readonly recorded: (job: Job) => Body<'recording'>;
}

/** Listens to the last two seconds twice a second, one question at a time; a slow device skips, never lags. */
function useLiveRun(microphone: Microphone, engine: EngineKind): LiveRun {
  const [track, setTrack] = useState<Point[]>([]);
  const [marked, setMarked] = useState<Mark[]>([]);
  const [rivals, setRivals] = useState<readonly number[]>([]);
  const [wrong, setWrong] = useState<string>();
  const [seconds, setSeconds] = useState(0);
  const began = useRef(0);
  const busy = useRef(false);
  const on = microphone.state === 'on';
  const { last } = microphone;
  const elapsed = () => (performance.now() - began.current) / 1000;
  const ask = useRef(async () => {});
  ask.current = async () => {
    const sound = last();
    setSeconds(elapsed());
    if (!sound || busy.current) return;
    busy.current = true;
    try {
      const { hearing: heard } = await hear(sound, engine);
      const point = heard.track.at(-1);
      setRivals(heard.rivalsRpm);
      if (point) setTrack((known) => [...known, { t: elapsed(), rpm: point.rpm, u: point.u }]);
      setWrong(undefined);
    } catch (error) {
      setWrong(error instanceof Error ? error.message : String(error));
    } finally {
      busy.current = false;
    }
  };
  useEffect(() => {
    if (!on) return;
    began.current = performance.now();
    const timer = setInterval(() => void ask.current(), everyMs);
    return () => clearInterval(timer);
  }, [on]);
  return {
    track,
    marks: marked,
    seconds,
    rivals,
    wrong,
    mark: (what) => setMarked((known) => [...known, { t: elapsed(), what }]),
    recorded: (job) => recordedLive({ job, track, marks: marked, seconds, engine, rivals }),
  };
}

function recordedLive(run: {
  job: Job;
  track: readonly Point[];
  marks: readonly Mark[];
  seconds: number;
  engine: EngineKind;
  rivals: readonly number[];
}): Body<'recording'> {
  const phase = run.job.runUp.size > 0 ? 'after' : 'before';
  const mean = run.track.reduce((sum, { rpm }) => sum + rpm, 0) / run.track.length;
  const u = Math.sqrt(run.track.reduce((sum, p) => sum + p.u * p.u, 0)) / run.track.length;
  return {
    recording: handleFor(run.job, phase),
    name: 'microphone',
    phase,
    temperature: 'unknown',
    strokes: run.engine.strokes,
    cylinders: run.engine.cylinders,
    seconds: run.seconds,
    mean: { rpm: mean, u },
    rivalsRpm: [...run.rivals],
    says: `Listened to for ${Math.round(run.seconds)} seconds.`,
    track: run.track.slice(-1200),
    segments: [],
    marks: [...run.marks],
  };
}
