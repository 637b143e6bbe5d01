import { useEffect, useState } from 'react';
import { bandWords, type CompressionAnswer, compressionOf, type Job } from '../../../job/index.js';

/** What a sound engine of this size should show on the gauge, computed from its bore and stroke; the class figure is for others. */
export function ExpectedCompression({ job }: { job: Job }) {
  const [answer, setAnswer] = useState<CompressionAnswer>();
  const { architecture, variants, starter } = job.intake;
  const size = JSON.stringify([
    architecture,
    variants,
    starter,
    job.identities.length,
    ['bore-standard', 'stroke', 'compression-ratio'].map((id) => job.specs.get(id)?.value?.si),
    job.measurements.findLast((m) => m.measure === 'compression')?.entry,
  ]);
  // the cranking cycle takes a moment: the sheet is shown first
  // biome-ignore lint/correctness/useExhaustiveDependencies: `size` holds all of the job that the answer hangs on
  useEffect(() => {
    const soon = setTimeout(() => setAnswer(compressionOf(job)), 30);
    return () => clearTimeout(soon);
  }, [size]);
  if (!answer) return null;
  return (
    <p>
      A sound engine of this size shows {bandWords(answer.expected)}
      <span className="soft"> (computed from its bore, stroke and cranking, as pulled by hand).</span>
    </p>
  );
}
