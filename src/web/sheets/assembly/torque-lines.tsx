import { Link } from 'wouter';
import { type Job, quantityOf, type StepTorque } from '../../../job/index.js';
import { NumberWithOrigin } from '../../parts/number.js';

/** How tight: this engine's own line with its origin, else the class figure, named as no more than that. */
export function TorqueLines({ job, torques }: { job: Job; torques: readonly StepTorque[] }) {
  return torques.map((t) => (
    <div className="act-row" key={t.component}>
      <div>
        <b>{torques.length > 1 ? `${t.name}: ` : ''}Tighten to </b>
        {t.spec?.value ? (
          <NumberWithOrigin
            what={t.spec.label}
            quantity={{ ...quantityOf(t.spec.value), origin: t.spec.origin as never }}
          />
        ) : (
          <>
            <b>{t.usual?.range}</b>
            <div className="care">
              ! a class figure, not this engine’s: {t.usual?.name.toLowerCase()}, {t.usual?.origin}. Confirm
              the maker’s line at Intake first.
            </div>
          </>
        )}
      </div>
      {t.joint && (
        <Link className="button" href={`/job/${job.id}/tighten/${t.joint}`}>
          Bolt by bolt
        </Link>
      )}
    </div>
  ));
}
