import { Link } from 'wouter';
import { type From, type Job, quantityOf, type StepTorque } from '../../../job/index.js';
import { NumberWithOrigin } from '../../parts/number.js';

/** How tight: this engine's own line with its origin, else the class figure, named as no more than that. */
export function TorqueLines({ job, torques }: { job: Job; torques: readonly StepTorque[] }) {
  return torques.map((t) => (
    <div className="act-row" key={t.component}>
      <div>
        {torques.length > 1 && <b>{t.name}: </b>}
        {t.spec ? <Confirmed spec={t.spec} /> : <ClassFigure usual={t.usual} />}
      </div>
      {t.joint && (
        <Link className="button" href={`/job/${job.id}/tighten/${t.joint}`}>
          Bolt by bolt
        </Link>
      )}
    </div>
  ));
}

function Confirmed({ spec }: { spec: From<'spec'> }) {
  const { label, value, origin } = spec;
  if (!value) return null;
  return (
    <span>
      <b>Tighten to </b>
      <NumberWithOrigin what={label} quantity={{ ...quantityOf(value), origin: origin as never }} />
    </span>
  );
}

function ClassFigure({ usual }: { usual: StepTorque['usual'] }) {
  if (!usual) return null;
  return (
    <>
      No torque of this engine is confirmed
      <div className="care">
        ! {usual.name} as a rule: {usual.range}. A class figure, not this engine’s ({usual.origin}): confirm
        the maker’s line at Intake first.
      </div>
    </>
  );
}
