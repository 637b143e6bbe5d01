import { useState } from 'react';
import type { Body, Job } from '../../job/index.js';
import { inPercent } from '../../phrase/index.js';
import type { Seen } from '../../sight/index.js';
import { writePhotograph } from '../data/outbox.js';
import { useShop } from '../data/queries.js';
import { Button, useAct, Wrong } from '../parts/act.js';
import { TextField } from '../parts/field.js';
import { barsOf } from './bars.js';
import { paint } from './saw.js';

/** The straightened picture with a scale under it, kept in the job's log; its caption says what was measured, and by which bars. */
export function KeepSeen(props: {
  job: Job;
  about: string | undefined;
  stage: Body<'photograph'>['stage'];
  seen: Seen;
  sizes: string;
}) {
  const { job, stage, seen, sizes } = props;
  const [name, setName] = useState('');
  const [kept, setKept] = useState<string>();
  const { wrong, busy, act } = useAct();
  const bars = barsOf(useShop());
  const by = bars ? `all ±${inPercent(bars.u, 2)} for the mat’s bars` : 'the mat’s bars not measured';
  const about = [name.trim(), sizes].filter(Boolean).join(': ');
  const caption = `${about.slice(0, longest - by.length - 2)}; ${by}`;
  const keep = () =>
    act(async () => {
      const file = await withScale(seen);
      await writePhotograph(job.id, file, {
        caption,
        stage,
        when: 'during',
        ...(props.about && { about: props.about }),
      });
      setKept(caption);
    });
  return (
    <div className="stack tight">
      <TextField label="What it is" value={name} onChange={setName} placeholder="head gasket, old" />
      <div className="row">
        <Button onClick={() => void keep()} disabled={busy || kept === caption}>
          {kept === caption ? 'In the log' : 'Keep picture and sizes'}
        </Button>
      </div>
      <Wrong words={wrong} />
    </div>
  );
}

/** characters that a caption may have */
const longest = 400;

const bar = { mm: 50, room: 12 } as const;

async function withScale({ straight }: Seen): Promise<Blob> {
  if (!straight) throw new Error('There is no picture to keep.');
  const { width, height } = straight.picture;
  const canvas = document.createElement('canvas');
  const perMm = 1 / straight.step;
  canvas.width = width;
  canvas.height = height + bar.room * perMm;
  const drawn = canvas.getContext('2d')!;
  drawn.fillStyle = '#ffffff';
  drawn.fillRect(0, 0, canvas.width, canvas.height);
  paint(canvas, straight);
  const [left, low] = [10 * perMm, height + 8 * perMm];
  drawn.fillStyle = '#000000';
  drawn.fillRect(left, low, bar.mm * perMm, 1 * perMm);
  drawn.font = `${4 * perMm}px sans-serif`;
  drawn.fillText(`${bar.mm} mm`, left + (bar.mm + 2) * perMm, low + 1.5 * perMm);
  const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/jpeg', 0.9));
  if (!blob) throw new Error('This browser could not keep the picture.');
  return blob;
}
