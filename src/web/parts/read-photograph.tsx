import { useId } from 'react';
import { Button, Wrong } from './act.js';

/** Takes or chooses one photograph that a worker reads: how far it has come, a way to stop it, and why it was refused. */
export function ReadPhotograph(props: {
  label: string;
  /** what is being done with it now */
  doing: string | undefined;
  refused: { readonly why: string; readonly do: string } | undefined;
  wrong: string | undefined;
  onTake: (file: File) => void;
  onStop: () => void;
}) {
  const id = useId();
  const { label, doing, refused, wrong, onTake, onStop } = props;
  return (
    <div className="stack tight">
      <input
        id={id}
        className="hidden"
        type="file"
        accept="image/jpeg,image/png,image/webp"
        onChange={(e) => {
          const file = e.target.files?.[0];
          e.target.value = '';
          if (file) onTake(file);
        }}
      />
      {doing === undefined ? (
        <div className="row">
          <label htmlFor={id} className="button">
            {label}
          </label>
        </div>
      ) : (
        <div className="row" role="status">
          <span>{doing}</span>
          <Button look="quiet" onClick={onStop}>
            Stop
          </Button>
        </div>
      )}
      {refused && (
        <div className="wrong-box" role="alert">
          <b>{refused.why}</b>
          <div>{refused.do}</div>
        </div>
      )}
      <Wrong words={wrong} />
    </div>
  );
}
