import { useEffect, useState } from 'react';
import type { Job, RunUpItem } from '../../../job/index.js';
import { tellRunning, useRunsSince } from '../../data/running.js';
import { AllowRinging } from '../../frame/bells.js';
import { Button } from '../../parts/act.js';

/** How long the engine has been running, and which looks are due by now. The device keeps the start, not the log. */
export function RunClock(props: {
  job: Job;
  looks: readonly RunUpItem[];
  onLook: (item: RunUpItem) => void;
}) {
  const since = useRunsSince(props.job.id);
  const turn = () => tellRunning(props.job.id, since === undefined ? Date.now() : undefined);
  const now = useNow(since !== undefined);
  const minutes = since === undefined ? 0 : Math.max(0, (now - since) / 60_000);
  const timed = props.looks.filter(({ step }) => step.runMinutes !== undefined);
  const open = timed.filter(({ state }) => state === 'open');
  const due = since === undefined ? undefined : open.find(({ step }) => step.runMinutes! <= minutes);
  if (props.job.handOver && since === undefined) return null;
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
        <Button onClick={turn}>{since === undefined ? 'It is running' : 'It stands still'}</Button>
        {since !== undefined && <AllowRinging />}
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
