import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import { type From, type Job, quantityOf, type StepTorque } from '../../../job/index.js';
import { Button } from '../../parts/act.js';
import { NumberWithOrigin } from '../../parts/number.js';
import { LayOutJoint } from './lay-out-joint.js';

/** How tight: this engine's own line with its origin, else the class figure, named as no more than that. */
export function TorqueLines({ job, torques }: { job: Job; torques: readonly StepTorque[] }) {
  return torques.map((t) => (
    <div className="act-row" key={t.component}>
      <div>
        {torques.length > 1 && <b>{t.name}: </b>}
        {t.spec ? <Confirmed spec={t.spec} /> : <ClassFigure usual={t.usual} />}
      </div>
      <BoltByBolt job={job} torque={t} />
    </div>
  ));
}

/** To the bolts of the joint; one that is not laid out yet is, from the maker's line, and begun at once. */
function BoltByBolt({ job, torque: { joint, spec } }: { job: Job; torque: StepTorque }) {
  const [laying, setLaying] = useState(false);
  const [, go] = useLocation();
  const tighten = (handle: string) => go(`/job/${job.id}/tighten/${handle}`);
  if (joint)
    return (
      <Link className="button" href={`/job/${job.id}/tighten/${joint}`}>
        Bolt by bolt
      </Link>
    );
  if (!spec) return null;
  return (
    <>
      <Button onClick={() => setLaying(true)}>Bolt by bolt</Button>
      <LayOutJoint
        job={job}
        joint={laying ? 'new' : undefined}
        spec={spec.spec}
        onClose={() => setLaying(false)}
        onLaid={tighten}
      />
    </>
  );
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
