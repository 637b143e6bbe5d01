import { useEffect, useState } from 'react';

/** The clock, told again every so often while the page is looked at; milliseconds since 1970. */
export function useNow(everyMs = 20_000): number {
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), everyMs);
    return () => clearInterval(timer);
  }, [everyMs]);
  return now;
}
