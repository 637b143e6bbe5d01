import { useEffect, useId, useState } from 'react';
import type { Body, From, Stage } from '../../job/index.js';
import { pictureUrl } from '../data/api.js';
import { localPicture, writePhotograph } from '../data/outbox.js';
import { ChangeCaption } from './caption.js';
import { inHandOn } from './in-hand.js';

/** A picture from the store, or from this device while it has not been sent yet. */
export function Picture({ sha256, alt, width = 320 }: { sha256: string; alt: string; width?: number }) {
  const [local, setLocal] = useState<string>();
  const [missing, setMissing] = useState(false);
  useEffect(() => () => (local ? URL.revokeObjectURL(local) : undefined), [local]);
  const fallBack = async () => {
    const blob = local ? undefined : await localPicture(sha256);
    if (blob) setLocal(URL.createObjectURL(blob));
    else setMissing(true);
  };
  if (missing) return <div className="empty">{alt}: the picture has not reached this device.</div>;
  return (
    <img src={local ?? pictureUrl(sha256, width)} alt={alt} loading="lazy" onError={() => void fallBack()} />
  );
}

/** Where a picture is while only this device has it; undefined while that is looked up, and once it is sent. */
export function useLocalAddress(sha256: string): string | undefined {
  const [address, setAddress] = useState<string>();
  useEffect(() => {
    let made: string | undefined;
    let isHere = true;
    void localPicture(sha256).then((blob) => {
      if (!blob || !isHere) return;
      made = URL.createObjectURL(blob);
      setAddress(made);
    });
    return () => {
      isHere = false;
      if (made) URL.revokeObjectURL(made);
      setAddress(undefined);
    };
  }, [sha256]);
  return address;
}

/** Each with what it shows; with the job, that may be said anew. */
export function PictureGrid(props: { photographs: readonly From<'photograph'>[]; job?: string }) {
  const { photographs, job } = props;
  if (photographs.length === 0) return null;
  return (
    <div className="pictures">
      {photographs.map((p) => (
        <figure key={p.entry}>
          {p.picture ? (
            <a href={pictureUrl(p.picture.sha256)} target="_blank" rel="noreferrer">
              <Picture sha256={p.picture.sha256} alt={p.caption || 'photograph without a caption'} />
            </a>
          ) : (
            <div className="empty">
              film {p.clip?.file}, {p.clip?.from} to {p.clip?.to}
            </div>
          )}
          <figcaption>{[p.caption, p.when].filter(Boolean).join(' · ')}</figcaption>
          {job !== undefined && <ChangeCaption job={job} of={p} />}
        </figure>
      ))}
    </div>
  );
}

interface Taking {
  job: string;
  stage: Body<'photograph'>['stage'];
  when: Body<'photograph'>['when'];
  about?: string;
  caption?: string;
  label?: string;
  /** names the hidden chooser, so that a sheet's primary action can open it */
  inputId?: string;
}

/** Keeps what was chosen, each picture by itself, and says of each that cannot be kept why. */
function useTaking(props: Taking) {
  const [wrong, setWrong] = useState<readonly string[]>([]);
  const [busy, setBusy] = useState(false);
  const take = async (files: FileList | null) => {
    setWrong([]);
    setBusy(true);
    const several = (files?.length ?? 0) > 1;
    let kept = 0;
    for (const file of files ?? []) {
      try {
        await writePhotograph(props.job, file, {
          caption: props.caption && kept > 0 ? `${props.caption}, ${kept + 1}` : (props.caption ?? ''),
          stage: props.stage,
          when: props.when,
          about: props.about,
        } as Body<'photograph'>);
        kept += 1;
      } catch (error) {
        // each by itself: what one is refused for is no reason to drop those after it
        const why = error instanceof Error ? error.message : String(error);
        setWrong((before) => [...before, several ? `${file.name}: ${why}` : why]);
      }
    }
    setBusy(false);
  };
  return { wrong, busy, take };
}

/** Before the work or after it, by the sheet that is open. */
const whenOn: Readonly<Record<Stage, Taking['when']>> = {
  intake: 'before',
  findings: 'before',
  'worth-it': 'before',
  parts: 'during',
  teardown: 'before',
  measure: 'during',
  assembly: 'after',
  'run-up': 'after',
  'hand-over': 'after',
};

/** One touch from anywhere on a job: a phone opens its camera at once. What is in hand is the caption. */
export function Camera({ job, stage, about }: { job: string; stage: Stage; about?: string }) {
  const id = useId();
  // read when it is taken
  const what = {
    job,
    stage,
    when: whenOn[stage],
    get caption() {
      return about ?? inHandOn(stage);
    },
  };
  const { wrong, busy, take } = useTaking(what);
  return (
    <>
      <input
        id={id}
        className="hidden"
        type="file"
        accept="image/jpeg,image/png,image/webp"
        capture="environment"
        onChange={(e) => {
          void take(e.target.files).then(() => {
            e.target.value = '';
          });
        }}
      />
      <label htmlFor={id} className="button camera" aria-busy={busy}>
        <svg viewBox="0 0 24 20" width="26" height="22" aria-hidden="true">
          <path d="M2 5h5l2-3h6l2 3h5v13H2z" />
          <circle cx="12" cy="11" r="4" />
        </svg>
        <span className="hidden">{busy ? 'Keeping the picture …' : 'Take a picture of it'}</span>
      </label>
      <WrongPictures words={wrong} />
    </>
  );
}

function WrongPictures({ words }: { words: readonly string[] }) {
  if (words.length === 0) return null;
  return (
    <div className="wrong-box" role="alert">
      {words.map((each) => (
        <div key={each}>
          <b>{each}</b>
        </div>
      ))}
    </div>
  );
}

/**
 * Takes photographs: opens the camera on a phone and the file chooser on a bench computer. Each becomes one line of
 * the log, with the caption that stands here; of several at once the others are numbered, for none shows quite the same.
 */
export function TakePicture(props: Taking) {
  const ownId = useId();
  const id = props.inputId ?? ownId;
  const { wrong, busy, take } = useTaking(props);
  return (
    <div className="stack tight">
      <input
        id={id}
        className="hidden"
        type="file"
        accept="image/jpeg,image/png,image/webp"
        multiple
        onChange={(e) => {
          void take(e.target.files).then(() => {
            e.target.value = '';
          });
        }}
      />
      <label htmlFor={id} className="button" aria-busy={busy}>
        {busy ? 'Keeping the picture …' : (props.label ?? 'Take a photograph')}
      </label>
      <WrongPictures words={wrong} />
    </div>
  );
}
