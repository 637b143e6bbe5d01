import type { ReactNode } from 'react';
import type { Form } from '../../form/use-form.js';
import { toggled } from '../../parts/field.js';

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

/** A list of a form ticked off one by one. */
export function TickRows(props: {
  form: Form;
  name: string;
  items: readonly string[];
  says: (item: string) => ReactNode;
  more?: (item: string) => ReactNode;
}) {
  const { form, name, items, says, more } = props;
  const ticked = form.list(name);
  return items.map((item) => (
    <TickRow
      key={item}
      checked={ticked.includes(item)}
      onChange={() => form.set(name, toggled(ticked, item))}
      more={more?.(item)}
    >
      {says(item)}
    </TickRow>
  ));
}
