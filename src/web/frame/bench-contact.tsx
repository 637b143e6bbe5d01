import { Link } from 'wouter';
import { minutesWords } from '../../phrase/index.js';
import { api } from '../data/api.js';
import { useClockBehind } from '../data/bench-clock.js';
import { useMovedTo } from '../data/contact.js';
import { useAct } from '../parts/act.js';

const worthSayingMs = 60_000;

/** "This device’s clock is 3 min slow"; nothing while it is as right as anybody needs. */
export function clockWords(behindMs: number): string | undefined {
  if (Math.abs(behindMs) < worthSayingMs) return undefined;
  const by = minutesWords(Math.abs(behindMs) / 60_000);
  return `This device’s clock is ${by} ${behindMs > 0 ? 'slow' : 'fast'}`;
}

/** What a person must know of the bench beside what has been sent: that its clock differs, that it is found elsewhere. */
export function BenchContact() {
  return (
    <>
      <ClockOff />
      <Moved />
    </>
  );
}

function ClockOff() {
  const words = clockWords(useClockBehind());
  if (!words) return null;
  return (
    <Link href="/shop" className="state waiting" title={`${words}: lines are dated by the bench’s.`}>
      clock off
    </Link>
  );
}

/** What was written still goes there; the rest of the page needs the address that the bench has now. */
function Moved() {
  const origin = useMovedTo();
  const { act, busy } = useAct();
  if (!origin) return null;
  const goOn = () => act(async () => globalThis.location.assign(origin + (await api.stepOver()).path));
  return (
    <button
      type="button"
      className="button state-link"
      disabled={busy}
      title={`The bench is at ${new URL(origin).host} now`}
      onClick={goOn}
    >
      Bench moved: go on there
    </button>
  );
}
