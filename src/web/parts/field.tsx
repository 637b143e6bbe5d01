import { type ReactNode, useId } from 'react';

/** A label, its control, and under it help or what is wrong, tied together for screen readers. */
export function Field(props: {
  label: string;
  help?: ReactNode;
  wrong?: string | undefined;
  /** what the program read out of what was written */
  read?: string | undefined;
  children: (control: { id: string; 'aria-describedby'?: string; 'aria-invalid'?: boolean }) => ReactNode;
}) {
  const id = useId();
  const about = props.wrong || props.help || props.read ? `${id}-about` : undefined;
  return (
    <div className="field">
      <label htmlFor={id}>{props.label}</label>
      {props.children({
        id,
        ...(about && { 'aria-describedby': about }),
        ...(props.wrong && { 'aria-invalid': true }),
      })}
      <div id={about} aria-live="polite">
        {props.wrong ? (
          <div className="wrong">{props.wrong}</div>
        ) : props.read ? (
          <div className="read">{props.read}</div>
        ) : null}
        {props.help && <div className="help">{props.help}</div>}
      </div>
    </div>
  );
}

export function TextField(props: {
  label: string;
  value: string;
  onChange: (value: string) => void;
  help?: ReactNode;
  wrong?: string | undefined;
  long?: boolean;
  placeholder?: string;
  inputMode?: 'text' | 'decimal' | 'numeric';
  type?: 'text' | 'date';
}) {
  const { value, onChange, long, placeholder } = props;
  return (
    <Field label={props.label} help={props.help} wrong={props.wrong}>
      {(control) =>
        long ? (
          <textarea
            {...control}
            value={value}
            placeholder={placeholder}
            onChange={(e) => onChange(e.target.value)}
          />
        ) : (
          <input
            {...control}
            type={props.type ?? 'text'}
            value={value}
            placeholder={placeholder}
            inputMode={props.inputMode ?? 'text'}
            onChange={(e) => onChange(e.target.value)}
          />
        )
      }
    </Field>
  );
}

export interface Choice<T extends string> {
  readonly id: T;
  readonly label: string;
}

/** One answer out of several, all of them in sight. */
export function Choices<T extends string>(props: {
  label: string;
  choices: readonly Choice<T>[];
  value: T | undefined;
  onChange: (value: T) => void;
  help?: ReactNode;
}) {
  const name = useId();
  return (
    <fieldset className="field" style={{ border: 0, padding: 0 }}>
      <legend className="label" style={{ padding: 0, marginBottom: 4 }}>
        {props.label}
      </legend>
      <div className="choices">
        {props.choices.map((c) => (
          <label className="choice" key={c.id}>
            <input
              type="radio"
              name={name}
              checked={props.value === c.id}
              onChange={() => props.onChange(c.id)}
            />
            <span>{c.label}</span>
          </label>
        ))}
      </div>
      {props.help && <div className="help">{props.help}</div>}
    </fieldset>
  );
}

/** Any number of answers out of several. */
export function ManyChoices<T extends string>(props: {
  label: string;
  choices: readonly Choice<T>[];
  value: readonly T[];
  onChange: (value: T[]) => void;
  help?: ReactNode;
}) {
  const toggle = (id: T) =>
    props.onChange(props.value.includes(id) ? props.value.filter((v) => v !== id) : [...props.value, id]);
  return (
    <fieldset className="field" style={{ border: 0, padding: 0 }}>
      <legend className="label" style={{ padding: 0, marginBottom: 4 }}>
        {props.label}
      </legend>
      <div className="choices">
        {props.choices.map((c) => (
          <label className="choice" key={c.id}>
            <input type="checkbox" checked={props.value.includes(c.id)} onChange={() => toggle(c.id)} />
            <span>{c.label}</span>
          </label>
        ))}
      </div>
      {props.help && <div className="help">{props.help}</div>}
    </fieldset>
  );
}

export function SelectField<T extends string>(props: {
  label: string;
  choices: readonly Choice<T>[];
  value: T | '';
  onChange: (value: T | '') => void;
  help?: ReactNode;
  /** the empty choice's words */
  none?: string;
}) {
  return (
    <Field label={props.label} help={props.help}>
      {(control) => (
        <select {...control} value={props.value} onChange={(e) => props.onChange(e.target.value as T | '')}>
          <option value="">{props.none ?? 'choose …'}</option>
          {props.choices.map((c) => (
            <option key={c.id} value={c.id}>
              {c.label}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}
