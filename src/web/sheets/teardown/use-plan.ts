import { useEffect, useMemo, useState } from 'react';
import { type Job, localTime, teardownPlanOf } from '../../../job/index.js';
import { useCatalog, useShopMinutes } from '../../data/queries.js';

/** The plan of the teardown as the log stands, soaks run down to the minute. */
export function useTeardownPlan(job: Job) {
  const catalog = useCatalog();
  const minutes = useShopMinutes();
  const now = useMinute();
  return useMemo(() => teardownPlanOf(job, catalog, { now, minutes }), [job, now, minutes, catalog]);
}

function useMinute(): string {
  const [now, setNow] = useState(() => localTime(new Date()));
  useEffect(() => {
    const tick = setInterval(() => setNow(localTime(new Date())), 60_000);
    return () => clearInterval(tick);
  }, []);
  return now;
}
