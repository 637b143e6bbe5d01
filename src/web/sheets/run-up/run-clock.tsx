import { useEffect, useState } from 'react';
import type { Job, RunUpItem } from '../../../job/index.js';
import { remember, remembered } from '../../data/remember.js';
import { Button } from '../../parts/act.js';

/** How long the engine has been running, and which looks are due by now. The device keeps the start, not the log. */
export function RunClock(props: {
  job: Job;
  looks: readonly RunUpItem[];
  onLook: (item: RunUpItem) => void;
}) {
  const { since, start, stop } = useRunning(props.job.id);
  const now = useNow(since !== undefined);
  const minutes = since === undefined ? 0 : Math.max(0, (now - since) / 60_000);
  const timed = props.looks.filter(({ step }) => step.runMinutes !== undefined);
  const open = timed.filter(({ state }) => state === 'open');
  const due = since === undefined ? undefined : open.find(({ step }) => step.runMinutes! <= minutes);
  const coming = open.find(({ step }) => step.runMinutes! > minutes);
  return (
    <section className="run-clock" aria-label="Running time">
      <output>{since === undefined ? 'not running' : clock(minutes)}</output>
      <p>
        {due ? (
          <b>Look now: {due.step.title.toLowerCase()}</b>
        ) : since !== undefined && coming ? (
          `Next look in ${Math.ceil(coming.step.runMinutes! - minutes)} min`
        ) : (
          'Start it with the engine: it calls the looks for leaks and heat at 5, 15 and 30 minutes.'
        )}
      </p>
      <div className="row">
        {due && (
          <Button look="go" onClick={() => props.onLook(due)}>
            Log the look
          </Button>
        )}
        <Button onClick={since === undefined ? start : stop}>
          {since === undefined ? 'It is running' : 'It stands still'}
        </Button>
      </div>
    </section>
  );
}

const clock = (minutes: number) => {
  const seconds = Math.floor(minutes * 60);
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
};

function useNow(ticking: boolean): number {
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    if (!ticking) return;
    setNow(Date.now());
    const timer = setInterval(() => setNow(Date.now()), 1000);
    return () => clearInterval(timer);
  }, [ticking]);
  return now;
}

/** Survives a reload of the page: a phone in an apron locks its screen. */
function useRunning(job: string): { since: number | undefined; start: () => void; stop: () => void } {
  const key = `wristpin.running.${job}`;
  const [since, setSince] = useState<number | undefined>(() => Number(remembered(key)) || undefined);
  return {
    since,
    start: () => {
      const at = Date.now();
      remember(key, String(at));
      setSince(at);
    },
    stop: () => {
      remember(key, undefined);
      setSince(undefined);
    },
  };
}
