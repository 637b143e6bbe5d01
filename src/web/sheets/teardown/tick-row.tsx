import type { ReactNode } from 'react';

/** One thing to do or to prove: the whole line is the target. */
export function TickRow(props: {
  checked: boolean;
  onChange: (checked: boolean) => void;
  children: ReactNode;
  more?: ReactNode;
}) {
  return (
    <label className="act-row tick-row">
      <span>
        {props.children}
        {props.more && <span className="soft"> {props.more}</span>}
      </span>
      <input type="checkbox" checked={props.checked} onChange={(e) => props.onChange(e.target.checked)} />
    </label>
  );
}
