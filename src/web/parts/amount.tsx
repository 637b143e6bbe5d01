import { useEffect, useRef, useState } from 'react';
import { Field } from './field.js';

/** A sum or a plain number as people write it, "1,200", "$37.50", "26"; nothing where it is none. Never below zero. */
export function readAmount(text: string, currency = ''): number | undefined {
  const bare = text.replace(currency, '').trim();
  if (!/^(\d+|\d{1,3}(,\d{3})+)?(\.\d+)?$/.test(bare) || !/\d/.test(bare)) return undefined;
  return Number(bare.replaceAll(',', ''));
}

/** The same for an act that is refused without it. */
export function amountIn(what: string, text: string, currency = ''): number {
  const read = readAmount(text, currency);
  if (read === undefined) throw new Error(notRead(what, text, currency));
  return read;
}

/** A whole number from 1. */
export function countIn(what: string, text: string): number {
  const read = readAmount(text);
  if (read === undefined || !Number.isInteger(read) || read < 1)
    throw new Error(`${what}: “${text}” is no whole number. Write it in digits, 1 or more.`);
  return read;
}

const notRead = (what: string, text: string, currency: string): string =>
  `${what}: “${text}” is no ${currency ? 'sum' : 'number'}. Write it in digits, such as ${currency ? '150 or 37.50' : '26'}.`;

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
