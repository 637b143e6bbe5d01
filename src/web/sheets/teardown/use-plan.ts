import { useEffect, useState } from 'react';
import { type Answers, localTime } from '../../../job/index.js';

/** The plan of the teardown as the log stands, soaks run down to the minute. */
export function useTeardownPlan(answers: Answers): Answers['teardown'] {
  const [now, setNow] = useState(() => localTime(new Date()));
  useEffect(() => {
    const tick = setInterval(() => setNow(localTime(new Date())), 60_000);
    return () => clearInterval(tick);
  }, []);
  return answers.teardownAt(now);
}
