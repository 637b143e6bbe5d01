import type { Job } from '../../../job/index.js';
import { useCatalog } from '../../data/answers.js';
import { AskedNow } from '../findings/asked-now.js';

/** What is not known of the engine and decides what a reading means: the compression release, at the compression. */
export function AskedAtReading({ job, measure }: { job: Job; measure: string }) {
  const check = useCatalog().checks.find((c) => c.measurement === measure);
  return check && <AskedNow job={job} check={check} />;
}
