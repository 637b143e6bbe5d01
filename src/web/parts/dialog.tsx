import { type ReactNode, useEffect, useRef } from 'react';

/** A question over the sheet. The browser keeps focus inside it and Escape closes it. */
export function Dialog(props: { title: string; open: boolean; onClose: () => void; children: ReactNode }) {
  const box = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const dialog = box.current;
    if (!dialog) return;
    if (props.open && !dialog.open) {
      dialog.showModal();
      // in a thumb's reach a field in focus would cover half of it with a keyboard
      if (matchMedia('(pointer: coarse)').matches) dialog.focus();
      // Enter at once must not drop what was begun: its button stands first
      else if (dialog.querySelector('.resumed :focus'))
        dialog.querySelector<HTMLElement>('form :is(input, select, textarea)')?.focus();
    }
    if (!props.open && dialog.open) dialog.close();
  }, [props.open]);
  return (
    <dialog className="box" ref={box} tabIndex={-1} aria-label={props.title} onClose={props.onClose}>
      {props.open && (
        <div className="stack">
          <h2>{props.title}</h2>
          {props.children}
        </div>
      )}
    </dialog>
  );
}
