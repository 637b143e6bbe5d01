import { useCatalog } from '../../data/answers.js';
import { usePrimary } from '../../frame/job-frame.js';
import { Sheet, type SheetProps } from '../../frame/sheet.js';
import { PictureGrid, TakePicture } from '../../parts/picture.js';
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
      say="Write down what is known and leave the rest open. Photograph every side before a wrench moves."
    >
      <Owner job={job} />
      <section className="section stack tight">
        <h2>Condition as it came in</h2>
        <PictureGrid photographs={pictures} />
        <div className="row">
          <TakePicture
            job={job.id}
            stage="intake"
            inputId={chooser}
            when="before"
            caption={viewNames[pictures.length] ?? 'as it came in'}
            label={`Photograph: ${viewNames[pictures.length] ?? 'another view'}`}
          />
        </div>
      </section>
      <EngineFacts job={job} />
      <History job={job} />
      <Identity job={job} />
      <MakersSheet job={job} />
      <Forgotten />
    </Sheet>
  );
}

/** Sides in the order in which one walks round a machine. */
const viewNames = [
  'front',
  'left side',
  'back',
  'right side',
  'top',
  'plates and numbers',
  'guards and what is missing',
  'control cables as they run',
];

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
