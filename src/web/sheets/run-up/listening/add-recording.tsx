import { useState } from 'react';
import { type Body, engineHeard, type Job, loadOn, settledSpeed, toolHeard } from '../../../../job/index.js';
import type { EngineKind, Spectrogram } from '../../../../listen/index.js';
import { counted } from '../../../../phrase/index.js';
import { FieldError } from '../../../form/field.js';
import { Asked, FormBox } from '../../../form/form.js';
import { useForm } from '../../../form/use-form.js';
import { Button, useAct, Wrong } from '../../../parts/act.js';
import { Dialog } from '../../../parts/dialog.js';
import { DropFile } from '../../../parts/drop-file.js';
import { decode } from './decode.js';
import { hear } from './ear.js';
import { SoundPicture } from './sound-picture.js';
import { SpeedPicture, spanOf } from './speed-picture.js';

type Recording = Body<'recording'>;

/** A recording is dropped in, listened to on this device, looked at, and what was heard is kept in the log. */
export function AddRecording(props: {
  job: Job;
  most: number | undefined;
  open: boolean;
  onClose: () => void;
}) {
  return (
    <Dialog title="Add a recording" open={props.open} onClose={props.onClose}>
      {props.open && <AddForm {...props} />}
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

/** As the last recording of this machine had it. */
export const cylindersOf = ({ recordings }: Job): number => [...recordings.values()].at(-1)?.cylinders ?? 1;

interface Heard {
  readonly file: File;
  readonly recording: Recording;
  readonly look: Spectrogram | undefined;
}

function useRecording(job: Job, heard: Heard | undefined, onDone: () => void) {
  return useForm({
    job: job.id,
    kind: 'recording',
    title: 'A recording',
    fields: {
      phase: {
        as: 'choice',
        label: 'Taken',
        choices: phases,
        begin: job.runUp.size > 0 ? 'after' : 'before',
      },
      temperature: { as: 'choice', label: 'Engine was', choices: temperatures, begin: 'unknown' },
      $strokes: { as: 'choice', label: 'Engine', choices: strokeChoices, begin: strokesOf(job) },
      $cylinders: { as: 'number', whole: true, label: 'Cylinders', begin: String(cylindersOf(job)) },
      $belt: {
        as: 'number',
        label: 'Driven over driving pulley',
        help: 'What the belt loses is listened for. 6 in over 2.5 in is 2.4.',
      },
      $beats: { as: 'number', whole: true, label: 'Blades or knives on its shaft', begin: '2' },
      $loadAt: {
        as: 'number',
        label: 'Load put on at, seconds',
        help: 'Leave empty if it ran without load all the time. Droop is worked out from it.',
        when: () => (heard?.recording.track.length ?? 0) > 1,
      },
    },
    also: ({ phase = 'after' }, { $loadAt }) => {
      if (!heard) throw new Error('Nothing was heard yet.');
      const { phase: _phase, temperature: _temperature, ...recording } = heard.recording;
      return {
        ...recording,
        recording: handleFor(job, phase),
        marks: marksOf(String($loadAt), recording.seconds),
      };
    },
    onDone,
  });
}

function AddForm({ job, most, onClose }: Parameters<typeof AddRecording>[0]) {
  const [heard, setHeard] = useState<Heard>();
  const form = useRecording(job, heard, onClose);
  const { wrong, busy, act } = useAct();
  const strokes = form.text('$strokes');
  const cylinders = form.text('$cylinders');
  const listen = (file: File) =>
    act(async () => {
      setHeard(undefined);
      if (!strokes) throw new Error('Say first whether it is a two-stroke or a four-stroke.');
      const engine = engineHeard(strokes === '2' ? 2 : 4, Number(cylinders), most);
      setHeard(await heardIn(file, { ...engine, ...beltOf(form.text('$belt'), form.text('$beats')) }));
    });
  return (
    <FormBox
      form={form}
      keep="Keep what was heard"
      barred={!heard || busy}
      more={
        <>
          <Button onClick={onClose}>Close</Button>
          {heard && (
            <Button look="quiet" onClick={() => void listen(heard.file)}>
              Listen again
            </Button>
          )}
        </>
      }
    >
      <Asked form={form} names={['phase', 'temperature']} />
      <details open={strokes === ''}>
        <summary>
          {strokes === '' ? 'Which engine?' : strokes === '4' ? 'Four strokes' : 'Two strokes'},{' '}
          {cylinders === '1' ? 'one cylinder' : `${cylinders} cylinders`}
        </summary>
        <Asked form={form} names={['$strokes', '$cylinders']} />
      </details>
      <details open={form.text('$belt') !== ''}>
        <summary>A belt drives the tool</summary>
        <Asked form={form} names={['$belt', '$beats']} />
      </details>
      <DropFile
        label="Choose a recording"
        or="or drop it here: sound, or a film with sound"
        accept="audio/*,video/mp4,video/webm,.wav,.mp3,.m4a,.ogg,.mp4"
        onFile={(chosen) => void listen(chosen)}
      />
      {busy && <p role="status">Listening …</p>}
      <Wrong words={wrong} />
      {heard && <Preview heard={heard.recording} look={heard.look} />}
      {heard && (
        <WhichSpeed
          heard={heard.recording}
          onSpeed={(rpm) => setHeard({ ...heard, recording: settledSpeed(heard.recording, rpm) })}
        />
      )}
      <Asked form={form} names={['$loadAt']} />
    </FormBox>
  );
}

async function heardIn(file: File, engine: EngineKind): Promise<Heard> {
  const { strokes, cylinders } = engine;
  const sound = await decode(file, file.name);
  const seconds = sound.samples.length / sound.sampleRate;
  const { hearing, look } = await hear(sound, engine, true);
  const said = { recording: 'heard', phase: 'after', temperature: 'unknown', name: file.name } as const;
  return { file, look, recording: { ...said, strokes, cylinders, seconds, marks: [], ...hearing } };
}

/** What a belt drives, where its ratio was typed. */
const beltOf = (ratio: string, beats: string): Pick<EngineKind, 'belt'> =>
  ratio.trim() === '' ? {} : { belt: { ratio: Number(ratio), beats: Number(beats) } };

function marksOf(loadAt: string, seconds: number): Recording['marks'] {
  if (loadAt.trim() === '') return [];
  const t = Number(loadAt.trim());
  if (t > seconds)
    throw new FieldError(
      '$loadAt',
      `The load was put on between 0 and ${seconds.toFixed(0)} seconds, not at “${loadAt}”.`,
    );
  return [{ t, what: loadOn }];
}

/** "before-1", "after-2": the next free one of its side */
export function handleFor(job: Job, phase: Recording['phase']): string {
  for (let n = 1; ; n++) if (!job.recordings.has(`${phase}-${n}`)) return `${phase}-${n}`;
}

/** Where the sound leaves more than one speed open, whoever stood beside the engine knows which it was. */
function WhichSpeed({ heard, onSpeed }: { heard: Recording; onSpeed: (rpm: number) => void }) {
  if (heard.mean === undefined || heard.rivalsRpm.length === 0) return null;
  const speeds = [heard.mean.rpm, ...heard.rivalsRpm].toSorted((a, b) => a - b);
  return (
    <fieldset className="stack tight">
      <legend>Was it idling, or at its working speed?</legend>
      <div className="row">
        {speeds.map((rpm) => (
          <Button key={rpm} onClick={() => onSpeed(rpm)}>
            {`It turned at ${Math.round(rpm)} rpm`}
          </Button>
        ))}
      </div>
    </fieldset>
  );
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
          {counted(heard.starts.attempts, 'pull')}
          {heard.starts.caught ? ' until it caught' : ', it did not catch'}
          {heard.starts.secondsToSteady !== undefined &&
            `, steady ${heard.starts.secondsToSteady.toFixed(1)} s after the first`}
        </p>
      )}
      {toolHeard(heard).map(({ what, words }) => (
        <p key={what}>
          {what}: {words}
        </p>
      ))}
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
