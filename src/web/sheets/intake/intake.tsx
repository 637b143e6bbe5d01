import { useState } from 'react';
import type { Job } from '../../../job/index.js';
import { useCatalog } from '../../data/answers.js';
import { usePrimary } from '../../frame/job-frame.js';
import { Sheet, type SheetProps } from '../../frame/sheet.js';
import { PictureGrid, TakePicture } from '../../parts/picture.js';
import { sideKey, sidesLeft } from '../../parts/sides.js';
import { EngineFacts } from './engine-facts.js';
import { History } from './history.js';
import { Identity } from './identity.js';
import { MakersSheet } from './makers-sheet.js';
import { Owner } from './owner.js';

const chooser = 'photograph-intake';

/** Who brings what, in which state, with which history; what the engine is; what its maker says. */
export function Intake({ job, gate }: SheetProps) {
  usePrimary({ label: 'Photograph it', act: () => document.getElementById(chooser)?.click() });
  const pictures = job.photographs.filter((p) => p.stage === 'intake');
  return (
    <Sheet
      job={job}
      gate={gate}
      headline={job.intake.machine || 'What has come in?'}
      rule="Write down what is known and leave the rest open. Photograph every side before a wrench moves."
    >
      <Owner job={job} />
      <section className="section stack tight">
        <h2>Condition as it came in</h2>
        <PictureGrid job={job.id} photographs={pictures} />
        <TakeSide job={job} pictures={pictures} />
      </section>
      <EngineFacts job={job} />
      <History job={job} />
      <Identity job={job} />
      <MakersSheet job={job} />
      <Forgotten />
    </Sheet>
  );
}

/** The next side is offered; another is chosen by name, so that a side that cannot be reached shifts none of the others. */
function TakeSide({ job, pictures }: { job: Job; pictures: Job['photographs'] }) {
  const left = sidesLeft(pictures);
  const [chosen, setChosen] = useState<string>();
  const side = chosen !== undefined && left.includes(chosen) ? chosen : left[0];
  return (
    <div className="row">
      <TakePicture
        job={job.id}
        stage="intake"
        inputId={chooser}
        when="before"
        {...(side && { about: sideKey(side) })}
        caption={side ?? 'as it came in'}
        label={`Photograph: ${side ?? 'another view'}`}
      />
      {left.length > 1 && (
        <select aria-label="Another side" value={side} onChange={(e) => setChosen(e.target.value)}>
          {left.map((name) => (
            <option key={name}>{name}</option>
          ))}
        </select>
      )}
    </div>
  );
}

function Forgotten() {
  const parts = useCatalog().stageParts.filter((p) => p.stage === 'intake');
  const forgotten = parts.flatMap((p) => p.forgotten);
  if (forgotten.length === 0) return null;
  return (
    <details className="section">
      <summary>Often forgotten here</summary>
      <ul>
        {forgotten.map((f) => (
          <li key={f}>{f}</li>
        ))}
      </ul>
    </details>
  );
}
