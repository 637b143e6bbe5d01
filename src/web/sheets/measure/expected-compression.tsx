import { useEffect, useState } from 'react';
import type { ExpectedCompression as Expected } from '../../../engine/index.js';
import { bandWords } from '../../../job/index.js';
import { useAnswers } from '../../data/queries.js';
import { solveCompression } from '../../work/solve.js';

/** What a sound engine of this size should show on the gauge, computed from its bore and stroke; the class figure is for others. */
export function ExpectedCompression() {
  const [expected, setExpected] = useState<Expected>();
  const { compressionQuestion: question } = useAnswers();
  const asked = JSON.stringify(question);
  // the cranking cycle takes a moment, the first time most: a worker does it, and the sheet is shown meanwhile
  // biome-ignore lint/correctness/useExhaustiveDependencies: `asked` holds all of the question
  useEffect(() => {
    let wanted = true;
    setExpected(undefined);
    if (question)
      solveCompression(question).then(
        (answer) => wanted && setExpected(answer),
        // without it the class figure beside it stands alone
        () => undefined,
      );
    return () => {
      wanted = false;
    };
  }, [asked]);
  if (!expected) return null;
  return (
    <p>
      A sound engine of this size shows {bandWords(expected)}
      <span className="soft"> (computed from its bore, stroke and cranking, as pulled by hand).</span>
    </p>
  );
}
