import { useState } from 'react';
import { cautionsFor } from '../../../catalog/index.js';
import { doneSteps, type From, type Job } from '../../../job/index.js';
import { documentUrl } from '../../data/api.js';
import { useCatalog } from '../../data/queries.js';
import { usePrimary } from '../../frame/job-frame.js';
import { Sheet, type SheetProps } from '../../frame/sheet.js';
import { Button } from '../../parts/act.js';
import { Caution } from '../../parts/caution.js';
import { NameClip } from '../../parts/name-clip.js';
import { PictureGrid, TakePicture } from '../../parts/picture.js';
import { componentFor, componentsOf } from '../components.js';
import { ChooseComponent } from './choose-component.js';
import { missingViews } from './missing-views.js';
import { TakeOff } from './take-off.js';

/** Off in order, recorded, bagged. What comes off is a step; its fasteners, bag, ports and pictures stay with it. */
export function Teardown({ job, gate }: SheetProps) {
  const [choosing, setChoosing] = useState(false);
  const [taking, setTaking] = useState<From<'step'>>();
  usePrimary({ label: 'Something comes off', act: () => setChoosing(true) });
  const catalog = useCatalog();
  const steps = [...job.steps.values()].filter((s) => s.stage === 'teardown' && s.state !== 'dropped');
  const off = doneSteps(job, 'teardown');
  return (
    <Sheet
      job={job}
      gate={gate}
      headline={
        steps.length === 0
          ? 'Nothing has come off yet'
          : `${off.length} ${off.length === 1 ? 'piece' : 'pieces'} off`
      }
      say="Photograph each joint before it is parted, count the fasteners, bag them by assembly, plug what stands open."
    >
      <Caution lines={cautionsFor(catalog, { stage: 'teardown' })} />
      {componentsOf(catalog, job).length === 0 && (
        <p className="empty">
          Say on the Intake sheet which kind of engine it is, and its pieces are listed here with what must
          come off before each. Any piece can be logged without that.
        </p>
      )}
      <ol className="lines">
        {steps.map((s) => (
          <StepLine key={s.step} job={job} step={s} onTake={() => setTaking(s)} />
        ))}
      </ol>
      <section className="section stack tight">
        <h2>Photographs of the teardown</h2>
        <PictureGrid photographs={job.photographs.filter((p) => p.stage === 'teardown')} />
        <div className="row">
          <TakePicture job={job.id} stage="teardown" when="before" label="Photograph" />
          <NameClip job={job.id} stage="teardown" />
          {steps.some((s) => s.bag) && (
            <a
              className="button"
              href={documentUrl(job.id, 'bag-labels.pdf')}
              target="_blank"
              rel="noreferrer"
            >
              Labels for the bags (PDF)
            </a>
          )}
        </div>
      </section>
      <ChooseComponent
        job={job}
        open={choosing}
        onClose={() => setChoosing(false)}
        onChoose={(step) => {
          setChoosing(false);
          setTaking(step);
        }}
      />
      <TakeOff job={job} step={taking} onClose={() => setTaking(undefined)} />
    </Sheet>
  );
}

function StepLine({ job, step, onTake }: { job: Job; step: From<'step'>; onTake: () => void }) {
  const component = componentFor(useCatalog(), job, step.component);
  const views = missingViews(job, step, component);
  return (
    <li>
      <div>
        <b>{step.title}</b>
        <div className="soft">
          {[
            step.bag && `bag ${step.bag}`,
            ...(step.fasteners ?? []).map(
              (f) => `${f.count} × ${[f.size, f.length, f.what].filter(Boolean).join(' ')}`,
            ),
            step.plugged?.length ? `plugged: ${step.plugged.join(', ')}` : undefined,
          ]
            .filter(Boolean)
            .join(' · ')}
        </div>
        {step.state === 'planned' && views.length > 0 && (
          <div className="verdict cannot-decide wraps">no picture yet of: {views.join('; ')}</div>
        )}
      </div>
      {step.state === 'planned' ? (
        <Button look="go" onClick={onTake}>
          Take off
        </Button>
      ) : (
        <span className="row">
          <span className="verdict pass">off</span>
          <Button look="quiet" onClick={onTake}>
            Change
          </Button>
        </span>
      )}
    </li>
  );
}
