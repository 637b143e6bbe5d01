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

interface ChoiceSet<T extends string> {
  readonly label: string;
  readonly choices: readonly Choice<T>[];
  readonly help?: ReactNode;
}

/** One answer out of several, all of them in sight. */
export function Choices<T extends string>(
  props: ChoiceSet<T> & { value: T | undefined; onChange: (value: T) => void },
) {
  return <ChoiceButtons {...props} type="radio" isOn={(id) => props.value === id} onTap={props.onChange} />;
}

/** Any number of answers out of several. */
export function ManyChoices<T extends string>(
  props: ChoiceSet<T> & { value: readonly T[]; onChange: (value: T[]) => void },
) {
  return (
    <ChoiceButtons
      {...props}
      type="checkbox"
      isOn={(id) => props.value.includes(id)}
      onTap={(id) => props.onChange(toggled(props.value, id))}
    />
  );
}

/** The list with the item taken out, or put at its end. */
function toggled<T>(list: readonly T[], item: T): T[] {
  return list.includes(item) ? list.filter((other) => other !== item) : [...list, item];
}

function ChoiceButtons<T extends string>(
  props: ChoiceSet<T> & { type: 'radio' | 'checkbox'; isOn: (id: T) => boolean; onTap: (id: T) => void },
) {
  const name = useId();
  return (
    <Fieldset label={props.label}>
      <div className="choices">
        {props.choices.map((c) => (
          <label className="choice" key={c.id}>
            <input
              type={props.type}
              name={name}
              checked={props.isOn(c.id)}
              onChange={() => props.onTap(c.id)}
            />
            <span>{c.label}</span>
          </label>
        ))}
      </div>
      {props.help && <div className="help">{props.help}</div>}
    </Fieldset>
  );
}

/** Things to tick off one by one. */
export function Ticks(props: {
  label: string;
  items: readonly string[];
  value: readonly string[];
  onChange: (value: string[]) => void;
}) {
  return (
    <Fieldset label={props.label}>
      {props.items.map((item) => (
        <label className="tick" key={item}>
          <input
            type="checkbox"
            checked={props.value.includes(item)}
            onChange={() => props.onChange(toggled(props.value, item))}
          />
          {item}
        </label>
      ))}
    </Fieldset>
  );
}

function Fieldset({ label, children }: { label: string; children: ReactNode }) {
  return (
    <fieldset className="field">
      <legend className="label">{label}</legend>
      {children}
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
