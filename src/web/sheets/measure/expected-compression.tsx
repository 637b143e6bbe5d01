import { bandWords } from '../../../job/index.js';
import { useWorkedOut } from '../../work/use-worked-out.js';

/**
 * What a sound engine of this size should show on the gauge, computed from its bore and stroke. Without it the class
 * figure beside it stands alone.
 */
export function ExpectedCompression() {
  const { answer } = useWorkedOut('compression');
  if (!answer) return null;
  return (
    <p>
      A sound engine of this size shows {bandWords(answer.expected)}
      <span className="soft"> (computed from its bore, stroke and cranking, as pulled by hand).</span>
    </p>
  );
}
