import { useId, useState } from 'react';

/** A place to drop a file, which a tap or the keyboard opens as a file chooser. */
export function DropFile(props: {
  /** on the button */
  label: string;
  /** under it: what may be dropped */
  or: string;
  accept: string;
  onFile: (file: File) => void;
}) {
  const id = useId();
  const [over, setOver] = useState(false);
  const take = (files: FileList | null) => {
    const [file] = files ?? [];
    if (file) props.onFile(file);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping is an extra way; the file field inside does the same by tap and keyboard
    <div
      className={over ? 'drop over' : 'drop'}
      onDragOver={(e) => {
        e.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={(e) => {
        e.preventDefault();
        setOver(false);
        take(e.dataTransfer.files);
      }}
    >
      <label className="button" htmlFor={id}>
        {props.label}
      </label>
      <input
        id={id}
        className="hidden"
        type="file"
        accept={props.accept}
        onChange={(e) => {
          take(e.target.files);
          e.target.value = '';
        }}
      />
      <p className="soft">{props.or}</p>
    </div>
  );
}
