import { useEffect, useRef, useState } from 'react';
import { notRead, readAmount } from '../form/amount.js';
import { Field } from './field.js';

/**
 * A number that is kept as it is typed. What cannot be read is said under the field and bars the form that it stands in: it
 * is never left out silently.
 */
export function AmountField(props: {
  label: string;
  value: number | undefined;
  /** what the log holds: an emptied field does not take it back */
  kept: number | undefined;
  onRead: (amount: number | undefined) => void;
  currency?: string;
  help?: string;
  placeholder?: string;
}) {
  const { label, value, kept, currency = '' } = props;
  const [text, setText] = useState(value === undefined ? '' : String(value));
  const input = useRef<HTMLInputElement>(null);
  const empty = text.trim() === '';
  const wrong =
    !empty && readAmount(text, currency) === undefined
      ? notRead(label, text, currency)
      : empty && kept !== undefined
        ? `${currency}${kept} still stands in the log. Strike that line to take it back.`
        : '';
  useEffect(() => input.current?.setCustomValidity(wrong), [wrong]);
  const change = (written: string) => {
    setText(written);
    const read = readAmount(written, currency);
    if (read !== undefined || written.trim() === '') props.onRead(read);
  };
  return (
    <Field label={label} help={props.help} wrong={wrong || undefined}>
      {(control) => (
        <input
          {...control}
          ref={input}
          type="text"
          value={text}
          placeholder={props.placeholder}
          inputMode="decimal"
          onChange={(e) => change(e.target.value)}
        />
      )}
    </Field>
  );
}
