import { useId, useState } from 'react';

/** A place to drop a recording, which a tap or the keyboard opens as a file chooser. */
export function DropSound({ onSound }: { onSound: (file: File) => void }) {
  const id = useId();
  const [over, setOver] = useState(false);
  const take = (files: FileList | null) => {
    const [file] = files ?? [];
    if (file) onSound(file);
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
        Choose a recording
      </label>
      <input
        id={id}
        className="hidden"
        type="file"
        accept="audio/*,video/mp4,video/webm,.wav,.mp3,.m4a,.ogg,.mp4"
        onChange={(e) => {
          take(e.target.files);
          e.target.value = '';
        }}
      />
      <p className="soft">or drop it here: sound, or a film with sound</p>
    </div>
  );
}
