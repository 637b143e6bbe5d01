import { type ButtonHTMLAttributes, useState } from 'react';
import type { Job } from '../../job/index.js';

/**
 * Runs an act that may fail and keeps its word for the person: what happened, never a silent nothing.
 *
 * @param writesTo the job as the sheet shows it, where each of these acts writes a line into it: they are busy until the
 * sheet shows another one. On a slow phone it stands a moment longer, and the same button would write the same again.
 */
export function useAct(writesTo?: Job): {
  wrong: string | undefined;
  busy: boolean;
  act: (work: () => Promise<unknown>) => Promise<boolean>;
} {
  const [wrong, setWrong] = useState<string>();
  const [running, setBusy] = useState(false);
  const [written, setWritten] = useState<Job>();
  const busy = running || (written !== undefined && written === writesTo);
  const act = async (work: () => Promise<unknown>) => {
    setWrong(undefined);
    setBusy(true);
    try {
      await work();
      setWritten(writesTo);
      return true;
    } catch (error) {
      setWrong(error instanceof Error ? error.message : String(error));
      return false;
    } finally {
      setBusy(false);
    }
  };
  return { wrong, busy, act };
}

export function Wrong({ words }: { words: string | undefined }) {
  if (!words) return null;
  return (
    <div className="wrong-box" role="alert">
      <b>{words}</b>
    </div>
  );
}

type Look = 'plain' | 'go' | 'quiet' | 'danger';

export function Button({
  look = 'plain',
  className,
  ...rest
}: ButtonHTMLAttributes<HTMLButtonElement> & { look?: Look }) {
  return (
    <button
      type="button"
      {...rest}
      className={['button', look === 'plain' ? '' : look, className].filter(Boolean).join(' ')}
    />
  );
}
