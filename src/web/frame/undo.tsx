import { useLayoutEffect, useState } from 'react';
import type { Body, RawEntry } from '../../job/index.js';
import { counted } from '../../phrase/index.js';
import { type JustWritten, useJustWritten } from '../data/just-written.js';
import { takeBack } from '../data/outbox.js';
import { wordsOfLine } from '../data/words-of.js';
import { Button, useAct, Wrong } from '../parts/act.js';
import { CaptionForm, captionTitle } from '../parts/caption.js';
import { Dialog } from '../parts/dialog.js';

/** For ten seconds after each act, above whatever stands at the foot of the screen: one touch takes it back. */
export function Undo() {
  const written = useJustWritten();
  // it outlives the ten seconds: somebody types in it
  const [captioned, setCaptioned] = useState<RawEntry>();
  return (
    <>
      {written.length > 0 && <TakeBack key={written.at(-1)!.id} written={written} onCaption={setCaptioned} />}
      {captioned && (
        <Dialog title={captionTitle} open onClose={() => setCaptioned(undefined)}>
          <CaptionForm
            job={captioned.job}
            of={{ ...(captioned.body as Body<'photograph'>), entry: captioned.id }}
            onDone={() => setCaptioned(undefined)}
          />
        </Dialog>
      )}
    </>
  );
}

function TakeBack(props: { written: JustWritten; onCaption: (photograph: RawEntry) => void }) {
  const { written, onCaption } = props;
  const [first] = written;
  const isPicture = written.length === 1 && first?.kind === 'photograph';
  const { wrong, busy, act } = useAct();
  const [foot, setFoot] = useState(0);
  useLayoutEffect(() => {
    const below = document.querySelector<HTMLElement>('.act-page > footer, nav.bottom');
    setFoot(below?.offsetHeight ?? 0);
  }, []);
  return (
    <div className="undo" role="status" style={{ bottom: foot + 10 }}>
      {/* drawn by the style sheet: on the page itself a line's words stand once, in the log */}
      <span className="cut" data-words={wordsOf(written)} />
      {isPicture && <Button onClick={() => onCaption(first)}>Caption</Button>}
      <Button disabled={busy} onClick={() => void act(() => takeBack(written))}>
        Undo
      </Button>
      <Wrong words={wrong} />
    </div>
  );
}

function wordsOf(written: JustWritten): string {
  const [entry] = written;
  if (written.length > 1) return `${counted(written.length, 'line')} written`;
  const { title, value } = wordsOfLine(entry!);
  return value ? `${title}: ${value}` : title;
}
