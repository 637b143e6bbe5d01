import { type ComponentProps, useId, useRef, useState } from 'react';
import { show, showBoth } from '../../quantity/index.js';
import { useUnits } from '../data/queries.js';
import { Button } from '../parts/act.js';
import { Choices, Field as Labelled, ManyChoices, SelectField } from '../parts/field.js';
import {
  beginOf,
  type Field,
  type Fields,
  type Given,
  now,
  quantityIn,
  type RowsField,
  wrongWhileTyped,
} from './field.js';
import type { Form } from './use-form.js';

const short: readonly Field['as'][] = ['text', 'date', 'search', 'number', 'money', 'quantity', 'select'];
/** Stands beside its neighbours. */
export const isShort = ({ as }: Field): boolean => short.includes(as);

/** One field of a form, whatever its kind. */
export function AskedField({ form, name }: { form: Form; name: string }) {
  return (
    <FieldControl
      field={form.fields[name]!}
      value={form.given[name]}
      given={form.given}
      wrong={form.wrongAt(name)}
      refused={form.wrongField === name}
      onChange={(value) => form.set(name, value)}
    />
  );
}

interface ControlProps<F extends Field = Field> {
  readonly field: F;
  readonly value: unknown;
  readonly given: Given;
  readonly wrong: string | undefined;
  readonly refused?: boolean;
  readonly onChange: (value: unknown) => void;
}

function FieldControl(props: ControlProps) {
  const { field, value, given, wrong, refused, onChange } = props;
  const about = { label: field.label, help: field.help && now(field.help, given), wrong, refused };
  switch (field.as) {
    case 'choice':
      return (
        <Choices {...about} choices={now(field.choices, given)} value={value as string} onChange={onChange} />
      );
    case 'select':
      return (
        <SelectField
          {...about}
          choices={now(field.choices, given)}
          value={value as string}
          onChange={onChange}
          {...(field.none && { none: field.none })}
        />
      );
    case 'yes-no':
      return <Choices {...about} choices={yesNo} value={value as string} onChange={onChange} />;
    case 'many':
    case 'ticks':
      return (
        <ManyChoices
          {...about}
          stacked={field.as === 'ticks'}
          choices={now(field.choices, given)}
          value={value as readonly string[]}
          onChange={onChange}
        />
      );
    case 'tick':
      return (
        <label className="tick">
          <input type="checkbox" checked={value === true} onChange={(e) => onChange(e.target.checked)} />
          {field.label}
        </label>
      );
    case 'rows':
      return <Rows {...props} field={field} />;
    case 'drawn':
      return null;
    default:
      return <TypedField {...props} field={field} about={about} />;
  }
}

const yesNo = [
  { id: 'yes', label: 'Yes' },
  { id: 'no', label: 'No' },
];

type Typed = Exclude<
  Field,
  { as: 'choice' | 'select' | 'yes-no' | 'many' | 'ticks' | 'tick' | 'rows' | 'drawn' }
>;

/** Everything that is typed; numbers bring up the number keyboard unless a unit must be written. */
function TypedField(
  props: ControlProps<Typed> & { about: Omit<ComponentProps<typeof Labelled>, 'children'> },
) {
  const { field, given, onChange, about } = props;
  const value = String(props.value ?? '');
  const system = useUnits();
  const read = field.as === 'quantity' && !props.wrong ? understood(value, field, given, system) : undefined;
  const typed = {
    value,
    placeholder: field.hint && now(field.hint, given),
    onChange: (e: { target: { value: string } }) => onChange(e.target.value),
  };
  return (
    <Labelled {...about} read={read}>
      {(control) =>
        field.as === 'long' || field.as === 'lines' ? (
          <textarea {...control} {...typed} />
        ) : field.as === 'quantity' ? (
          <QuantityInput control={control} typed={typed} unit={field.unit && now(field.unit, given)} />
        ) : (
          <input {...control} {...typed} {...inputOf(field, typed.placeholder)} />
        )
      }
    </Labelled>
  );
}

/** The unit that a bare number gets stands beside it; a tap on it brings up letters for another. */
function QuantityInput(props: { control: object; typed: object; unit: string | undefined }) {
  const [letters, setLetters] = useState(false);
  const box = useRef<HTMLInputElement>(null);
  const bare = props.unit !== undefined && !letters;
  const input = (
    <input
      {...props.control}
      {...props.typed}
      ref={box}
      inputMode={bare ? 'decimal' : 'text'}
      autoComplete="off"
      autoCapitalize="off"
      spellCheck={false}
    />
  );
  if (!bare) return input;
  const another = () => {
    setLetters(true);
    box.current?.focus();
  };
  return (
    <span className="with-unit">
      {input}
      <Button look="quiet" aria-label={`${props.unit}: write another unit`} onClick={another}>
        {props.unit}
      </Button>
    </span>
  );
}

function inputOf(field: Typed, hint: string | undefined): ComponentProps<'input'> {
  if (field.as === 'date' || field.as === 'search') return { type: field.as };
  if (field.as === 'money')
    return { type: 'text', inputMode: 'decimal', placeholder: hint ?? field.currency };
  if (field.as === 'number') return { type: 'text', inputMode: field.whole ? 'numeric' : 'decimal' };
  return { type: 'text' };
}

/** What the program read, unless that is just what was typed. */
function understood(
  text: string,
  field: Extract<Field, { as: 'quantity' }>,
  given: Given,
  system: ReturnType<typeof useUnits>,
): string | undefined {
  if (text.trim() === '') return undefined;
  const read = quantityIn(text, now(field.kind, given), field.unit && now(field.unit, given));
  if (read.kind === 'torque') return showBoth(read, system);
  const shown = show(read, system);
  return shown.replace(/\s/g, '') === text.replace(/\s/g, '') ? undefined : shown;
}

function Rows({ field, value, wrong, onChange }: ControlProps<RowsField<Given>>) {
  const row = field.row as Fields;
  const about = useId();
  const rows = value as readonly Given[];
  const change = (i: number, name: string, to: unknown) =>
    onChange(rows.map((each, k) => (k === i ? { ...each, [name]: to } : each)));
  return (
    <fieldset className="field" aria-describedby={about}>
      <legend className="label">{field.label}</legend>
      {rows.map((each, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the rows have no other name and are only added at the end
        <div className="form-row" key={i}>
          {Object.entries(row).map(([name, inner]) => (
            <FieldControl
              key={name}
              field={inner}
              value={each[name]}
              given={each}
              wrong={wrongWhileTyped(name, inner, each)}
              onChange={(to) => change(i, name, to)}
            />
          ))}
        </div>
      ))}
      <div id={about}>
        {wrong && (
          <div className="wrong" role="alert">
            {wrong}
          </div>
        )}
      </div>
      <div>
        <Button onClick={() => onChange([...rows, beginOf(row)])}>{field.more}</Button>
      </div>
    </fieldset>
  );
}
