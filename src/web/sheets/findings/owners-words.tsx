import type { Job } from '../../../job/index.js';
import { write } from '../../data/outbox.js';
import { useAct, Wrong } from '../../parts/act.js';
import { OwnerMeant } from '../intake/owner-meant.js';

/** The owner’s words steer the first look only in the trade’s: asked here while none of them was taken. */
export function OwnersWords({ job }: { job: Job }) {
  const { wrong, busy, act } = useAct();
  const { complaint, complaints = [] } = job.intake;
  if (complaint === undefined || complaints.length > 0 || job.handOver) return null;
  return (
    <div className="stack tight">
      <OwnerMeant
        words={complaint}
        said={complaints}
        busy={busy}
        onTake={(said) => void act(() => write(job.id, 'intake', { complaints: [...said] }))}
      />
      <Wrong words={wrong} />
    </div>
  );
}
