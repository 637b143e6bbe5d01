import { useEffect, useState } from 'react';
import { Link } from 'wouter';
import type { Answers, Bell } from '../../job/index.js';
import { lowerFirst } from '../../phrase/index.js';
import { hearBells, type KeptBell, tellBells, useBells } from '../data/bells.js';
import { useRunsSince } from '../data/running.js';
import { Button } from '../parts/act.js';
import { sayIfAsked } from '../parts/speak.js';

/** A touch is answered first: what it changes about the bells is told after that. */
const afterMs = 400;

/** Tells this device what will ring for the job on screen: its soaks and waits, and the looks of an engine that runs. */
export function BellsOf({ answers }: { answers: Answers }) {
  const since = useRunsSince(answers.job.id);
  useEffect(() => {
    const tell = () =>
      tellBells(answers.job, [...answers.bells, ...(since === undefined ? [] : looksOf(answers, since))]);
    const timer = setTimeout(tell, afterMs);
    return () => clearTimeout(timer);
  }, [answers, since]);
  return null;
}

/** The looks for heat and leaks that an engine which runs since then is due for. */
function looksOf({ runUp }: Answers, since: number): Bell[] {
  return runUp.items.flatMap(({ step, state }): Bell[] =>
    step.runMinutes === undefined || state !== 'open'
      ? []
      : [
          {
            key: `look ${step.id} ${since}`,
            at: since + step.runMinutes * 60_000,
            words: `look now: ${lowerFirst(step.title)}`,
            stage: 'run-up',
          },
        ],
  );
}

/** How often what nobody has heard calls again. */
const againMs = 30_000;
const called = 'Time is up';

/** On every page: what is over rings by the page's title, a bar, the phone's buzz, its notification and, where it was asked for, aloud. */
export function Bells() {
  const due = useDue();
  const words = due.map(({ tag, words: said }) => `Tag ${tag}, ${said}`).join('; ');
  useTitle(words && `! ${called}: ${words}`);
  useEffect(() => {
    if (words === '') return;
    const call = () => ring(words);
    call();
    const again = setInterval(call, againMs);
    return () => clearInterval(again);
  }, [words]);
  if (due.length === 0) return null;
  const [first] = due;
  return (
    <div className="bells" role="alert">
      <Link href={`/job/${first!.job}/${first!.stage}`} onClick={() => hearBells(due)}>
        <b>{called}.</b> {words}
      </Link>
      <Button onClick={() => hearBells(due)}>Heard</Button>
    </div>
  );
}

/** Those whose time has come and that nobody has heard. */
function useDue(): readonly KeptBell[] {
  const bells = useBells();
  const [now, setNow] = useState(() => Date.now());
  const open = bells.filter(({ heard }) => !heard);
  const next = Math.min(...open.filter(({ at }) => at > now).map(({ at }) => at));
  useEffect(() => {
    if (next === Number.POSITIVE_INFINITY) return;
    // looked at each second: a device that slept does not wake a timer in time
    const timer = setInterval(() => Date.now() >= next && setNow(Date.now()), 1000);
    return () => clearInterval(timer);
  }, [next]);
  return open.filter(({ at }) => at <= now);
}

function useTitle(words: string): void {
  useEffect(() => {
    if (words === '') return;
    const before = document.title;
    document.title = words;
    return () => {
      document.title = before;
    };
  }, [words]);
}

function ring(words: string): void {
  navigator.vibrate?.([400, 200, 400, 200, 400]);
  sayIfAsked(`${called}. ${words}`);
  if (!('Notification' in window) || Notification.permission !== 'granted') return;
  void notify(words);
}

/** A phone shows only what its service worker shows; a page without one shows it itself. */
async function notify(words: string): Promise<void> {
  const shown = { body: words, tag: 'wristpin-bell' };
  try {
    const worker = await navigator.serviceWorker?.getRegistration();
    if (worker?.active) await worker.showNotification(called, shown);
    else new Notification(called, shown);
  } catch {
    // the title, the bar and the buzz have told it already
  }
}

/** Where a time runs: whether this device may ring while another page, or none, is looked at. Asked by a touch, as browsers want it. */
export function AllowRinging() {
  const [asked, setAsked] = useState(() => ('Notification' in window ? Notification.permission : 'denied'));
  if (asked !== 'default') return null;
  return (
    <Button look="quiet" onClick={() => void Notification.requestPermission().then(setAsked)}>
      Ring also while this page is not in sight
    </Button>
  );
}
