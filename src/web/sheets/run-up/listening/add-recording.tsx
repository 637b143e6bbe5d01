import { useState } from 'react';
import { type Body, type Job, loadOn } from '../../../../job/index.js';
import type { Spectrogram } from '../../../../listen/index.js';
import { write } from '../../../data/outbox.js';
import { Button, useAct, Wrong } from '../../../parts/act.js';
import { Dialog } from '../../../parts/dialog.js';
import { Choices, TextField } from '../../../parts/field.js';
import { decode } from './decode.js';
import { DropSound } from './drop-sound.js';
import { hear } from './ear.js';
import { SoundPicture } from './sound-picture.js';
import { SpeedPicture, spanOf } from './speed-picture.js';

type Recording = Body<'recording'>;

/** A recording is dropped in, listened to on this device, looked at, and what was heard is kept in the log. */
export function AddRecording({ job, open, onClose }: { job: Job; open: boolean; onClose: () => void }) {
  return (
    <Dialog title="Add a recording" open={open} onClose={onClose}>
      {open && <AddForm job={job} onClose={onClose} />}
    </Dialog>
  );
}

const phases = [
  { id: 'before', label: 'before the work' },
  { id: 'after', label: 'after it' },
] as const;
const temperatures = [
  { id: 'cold', label: 'cold' },
  { id: 'hot', label: 'hot' },
  { id: 'unknown', label: 'not known' },
] as const;
export const strokeChoices = [
  { id: '4', label: 'four strokes' },
  { id: '2', label: 'two strokes' },
] as const;

export type Strokes = (typeof strokeChoices)[number]['id'];

/** Known by the architecture; before that is known a person has to say it: the beat alone does not tell. */
export function strokesOf({ intake: { architecture } }: Job): Strokes | undefined {
  if (architecture === undefined || architecture === 'unknown') return undefined;
  return architecture === 'two-stroke' ? '2' : '4';
}

function AddForm({ job, onClose }: { job: Job; onClose: () => void }) {
  const [phase, setPhase] = useState<Recording['phase']>(job.runUp.size > 0 ? 'after' : 'before');
  const [temperature, setTemperature] = useState<Recording['temperature']>('unknown');
  const [strokes, setStrokes] = useState(strokesOf(job));
  const [cylinders, setCylinders] = useState('1');
  const [file, setFile] = useState<File>();
  const [heard, setHeard] = useState<Recording>();
  const [look, setLook] = useState<Spectrogram>();
  const [loadAt, setLoadAt] = useState('');
  const { wrong, busy, act } = useAct();

  const listen = (chosen: File) =>
    act(async () => {
      setFile(chosen);
      setHeard(undefined);
      if (!strokes) throw new Error('Say first whether it is a two-stroke or a four-stroke.');
      const engine = { strokes: strokes === '2' ? 2 : 4, cylinders: Number(cylinders) } as const;
      const sound = await decode(chosen, chosen.name);
      const seconds = sound.samples.length / sound.sampleRate;
      const { hearing, look } = await hear(sound, engine, true);
      setLook(look);
      const recording = handleFor(job, phase);
      setHeard({
        recording,
        name: chosen.name,
        phase,
        temperature,
        ...engine,
        seconds,
        marks: [],
        ...hearing,
      });
    });
  const keep = () =>
    act(async () => {
      if (!heard) return;
      const marks = marksOf(loadAt, heard.seconds);
      await write(job.id, 'recording', { ...heard, phase, temperature, marks });
      onClose();
    });
  return (
    <>
      <Choices label="Taken" choices={phases} value={phase} onChange={setPhase} />
      <Choices label="Engine was" choices={temperatures} value={temperature} onChange={setTemperature} />
      <details open={strokes === undefined}>
        <summary>
          {strokes === undefined ? 'Which engine?' : strokes === '4' ? 'Four strokes' : 'Two strokes'},{' '}
          {cylinders === '1' ? 'one cylinder' : `${cylinders} cylinders`}
        </summary>
        <Choices label="Engine" choices={strokeChoices} value={strokes} onChange={setStrokes} />
        <TextField label="Cylinders" value={cylinders} onChange={setCylinders} inputMode="numeric" />
      </details>
      <DropSound onSound={(chosen) => void listen(chosen)} />
      {busy && file && <p role="status">Listening to {file.name} …</p>}
      <Wrong words={wrong} />
      {heard && <Preview heard={heard} look={look} />}
      {heard && heard.track.length > 1 && (
        <TextField
          label="Load put on at, seconds"
          value={loadAt}
          onChange={setLoadAt}
          inputMode="decimal"
          help="Leave empty if it ran without load all the time. Droop is worked out from it."
        />
      )}
      <div className="row end">
        <Button onClick={onClose}>Close</Button>
        {file && heard && (
          <Button look="quiet" onClick={() => void listen(file)}>
            Listen again
          </Button>
        )}
        <Button look="go" disabled={!heard || busy} onClick={() => void keep()}>
          Keep what was heard
        </Button>
      </div>
    </>
  );
}

function marksOf(loadAt: string, seconds: number): Recording['marks'] {
  if (loadAt.trim() === '') return [];
  const t = Number(loadAt.trim());
  if (!(t >= 0 && t <= seconds))
    throw new Error(`The load was put on between 0 and ${seconds.toFixed(0)} seconds, not at “${loadAt}”.`);
  return [{ t, what: loadOn }];
}

/** "before-1", "after-2": the next free one of its side */
export function handleFor(job: Job, phase: Recording['phase']): string {
  for (let n = 1; ; n++) if (!job.recordings.has(`${phase}-${n}`)) return `${phase}-${n}`;
}

function Preview({ heard, look }: { heard: Recording; look: Spectrogram | undefined }) {
  const span = spanOf([heard], undefined);
  return (
    <section className="stack tight" aria-label="What was heard">
      <p>
        <b>{heard.says}</b>
      </p>
      {heard.starts && heard.starts.attempts > 0 && (
        <p>
          {heard.starts.attempts} {heard.starts.attempts === 1 ? 'pull' : 'pulls'}
          {heard.starts.caught ? ' until it caught' : ', it did not catch'}
          {heard.starts.secondsToSteady !== undefined &&
            `, steady ${heard.starts.secondsToSteady.toFixed(1)} s after the first`}
        </p>
      )}
      {span && <SpeedPicture heard={heard} span={span} title={heard.name} />}
      {look && (
        <details>
          <summary>See the sound, to judge whether to believe it</summary>
          <SoundPicture look={look} heard={heard} />
        </details>
      )}
    </section>
  );
}
