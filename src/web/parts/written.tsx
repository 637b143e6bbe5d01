import type { ReactNode } from 'react';
import { type Written, written } from '../../job/index.js';
import { type Kind, QuantityError, show, showBoth } from '../../quantity/index.js';
import { useUnits } from '../data/queries.js';
import { Field } from './field.js';

/** What stands in a number field: the words, and the number they were read as or why they could not be. */
export interface WrittenState {
  readonly text: string;
  readonly value?: Written;
  readonly wrong?: string;
}

/** Reads a number as it is written at the bench. Empty text is neither a value nor wrong. */
export function readWritten(text: string, kind: Kind, assumeUnit?: string): WrittenState {
  if (text.trim() === '') return { text };
  try {
    return { text, value: written(text, kind, assumeUnit) };
  } catch (error) {
    if (error instanceof QuantityError) return { text, wrong: error.message };
    throw error;
  }
}

/** A number with its unit, kept word for word; under it what the program understood. */
export function WrittenField(props: {
  label: string;
  kind: Kind;
  state: WrittenState;
  onChange: (state: WrittenState) => void;
  help?: ReactNode;
  hint?: string;
  /** unit taken when only a number is written; say it in the label */
  assumeUnit?: string;
  /** says more than the parse: an implausible value */
  wrong?: string | undefined;
}) {
  const system = useUnits();
  const { text, value, wrong } = props.state;
  const read =
    value && (value.kind === 'torque' ? showBoth(value, system) : other(show(value, system), text));
  return (
    <Field label={props.label} help={props.help} wrong={wrong ?? props.wrong} read={read}>
      {(control) => (
        <input
          {...control}
          value={text}
          placeholder={props.hint}
          autoComplete="off"
          autoCapitalize="off"
          spellCheck={false}
          onChange={(e) => props.onChange(readWritten(e.target.value, props.kind, props.assumeUnit))}
        />
      )}
    </Field>
  );
}

/** Nothing is gained by repeating what was just typed. */
const other = (shown: string, typed: string) =>
  shown.replace(/\s/g, '') === typed.replace(/\s/g, '') ? undefined : shown;
