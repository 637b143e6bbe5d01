import { type ButtonHTMLAttributes, useState } from 'react';

/** Runs an act that may fail and keeps its word for the person: what happened, never a silent nothing. */
export function useAct(): {
  wrong: string | undefined;
  busy: boolean;
  act: (work: () => Promise<unknown>) => Promise<boolean>;
} {
  const [wrong, setWrong] = useState<string>();
  const [busy, setBusy] = useState(false);
  const act = async (work: () => Promise<unknown>) => {
    setWrong(undefined);
    setBusy(true);
    try {
      await work();
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
