import { byId } from '../../../catalog/index.js';
import { amountOf, type FaceAnswer, type Job, milled } from '../../../job/index.js';
import { of, show, to } from '../../../quantity/index.js';
import { useCatalog } from '../../data/answers.js';
import { useUnits } from '../../data/queries.js';
import { NumberWithOrigin } from '../../parts/number.js';
import type { Deciding } from './decide-reading.js';
import { faceName } from './face-form.js';
import { FacePicture } from './face-picture.js';
import { WorkedLine } from './worked-line.js';

/** A face read place by place: its picture, how flat it is, what must come off, and what that does to the squeeze. */
export function FaceSection(props: {
  job: Job;
  answer: FaceAnswer;
  past: boolean;
  onDecide: (about: Deciding) => void;
}) {
  const { job, answer, past, onDecide } = props;
  const { measure, way, phase, face, figure, unit, instruments, asRead } = answer;
  const catalog = useCatalog();
  const name = faceName(byId(catalog.measurements).get(measure)!);
  const tools = instruments.map((i) => `${i.name}, ± ${i.uncertainty.written}`).join('; ');
  const off = face && `Rub flat: ${trimmed(face.removeAtLeast)} ${unit} at the least.`;
  return (
    <section className="section stack tight">
      <h2>
        {name}, {answer.points.length || answer.groups.length} places
        {phase === 'after' ? ', after the work' : ''}
      </h2>
      <p className="soft">
        {asRead ? 'The uncertainty of the tool is not known, so this is compared as read.' : tools}
        {answer.agree && ` ${answer.agree}`}
      </p>
      {answer.cannot && <p className="wrong-line">{answer.cannot}</p>}
      <FacePicture answer={answer} />
      {face && figure && (
        <>
          <ul className="lines">
            <WorkedLine
              job={job}
              figure={figure}
              of={name}
              how={`minimum zone of ${way === 'gap' ? 'heights worked out from the gaps' : 'the heights'}, by exact linear program`}
              reasons={off ? [off] : []}
              past={past}
              onDecide={onDecide}
            />
          </ul>
          <Removal job={job} answer={answer} />
        </>
      )}
    </section>
  );
}

function Removal({ job, answer }: { job: Job; answer: FaceAnswer }) {
  const catalog = useCatalog();
  const system = useUnits();
  const { face, unit, measure } = answer;
  const least = face!.removeAtLeast;
  const chamber = byId(catalog.measurements).get(measure)?.closesChamber;
  if (!(least > 0)) return <p>Flat as far as it was read.</p>;
  const effect = chamber ? milled({ job, catalog }, to(amountOf(least, unit), 'mm')) : undefined;
  return (
    <div className="stack tight">
      <p>
        Off at the least{' '}
        <NumberWithOrigin
          what="Stock to take off"
          quantity={{
            ...amountOf(least, unit),
            origin: { from: 'computed', detail: 'width of the minimum zone; rubbing on a plate takes more' },
          }}
        />
        <span className="soft">
          {' '}
          with the face set to the zone. Least squares says{' '}
          {show(of(face!.leastSquares.peakToValley, unit), system)}.
        </span>
      </p>
      {effect && (
        <p>
          {effect.words}{' '}
          {effect.ratio && job.intake.architecture === 'side-valve' && (
            <span className="soft">
              A side-valve chamber is wider than the bore: the real step is larger, and a valve may come near
              the head.
            </span>
          )}
        </p>
      )}
      {chamber && !effect && (
        <p className="soft">
          With bore and stroke written down at Intake, what it does to the compression is worked out.
        </p>
      )}
    </div>
  );
}

const trimmed = (x: number) => String(Number(x.toPrecision(3)));
