import { type ReactNode, useId } from 'react';

/** A label, its control, and under it help or what is wrong, tied together for screen readers. */
export function Field(props: {
  label: string;
  help?: ReactNode;
  wrong?: string | undefined;
  /** it was refused: said aloud at once, and not only shown */
  refused?: boolean | undefined;
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
          <WrongLine {...props} />
        ) : props.read ? (
          <div className="read">{props.read}</div>
        ) : null}
        {props.help && <div className="help">{props.help}</div>}
      </div>
    </div>
  );
}

function WrongLine({ wrong, refused }: { wrong?: string | undefined; refused?: boolean | undefined }) {
  if (!wrong) return null;
  return (
    <div className="wrong" role={refused ? 'alert' : undefined}>
      {wrong}
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
  readonly wrong?: string | undefined;
  readonly refused?: boolean | undefined;
}

/** One answer out of several, all of them in sight. */
export function Choices<T extends string>(
  props: ChoiceSet<T> & { value: T | undefined; onChange: (value: T) => void },
) {
  return <ChoiceButtons {...props} type="radio" isOn={(id) => props.value === id} onTap={props.onChange} />;
}

/** Any number of answers out of several: buttons, or things to tick off one under the other. */
export function ManyChoices<T extends string>(
  props: ChoiceSet<T> & { stacked?: boolean; value: readonly T[]; onChange: (value: T[]) => void },
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
export function toggled<T>(list: readonly T[], item: T): T[] {
  return list.includes(item) ? list.filter((other) => other !== item) : [...list, item];
}

interface ButtonsProps<T extends string> extends ChoiceSet<T> {
  readonly type: 'radio' | 'checkbox';
  readonly stacked?: boolean;
  readonly isOn: (id: T) => boolean;
  readonly onTap: (id: T) => void;
}

function ChoiceButtons<T extends string>(props: ButtonsProps<T>) {
  const name = useId();
  const { stacked } = props;
  return (
    <fieldset className="field">
      <legend className="label">{props.label}</legend>
      <div className={stacked ? undefined : 'choices'}>
        {props.choices.map((c) => (
          <label className={stacked ? 'tick' : 'choice'} key={c.id}>
            <input
              type={props.type}
              name={name}
              checked={props.isOn(c.id)}
              aria-invalid={props.wrong ? true : undefined}
              onChange={() => props.onTap(c.id)}
            />
            <span>{c.label}</span>
          </label>
        ))}
      </div>
      <WrongLine {...props} />
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
  wrong?: string | undefined;
  refused?: boolean | undefined;
  /** the empty choice's words */
  none?: string;
}) {
  return (
    <Field label={props.label} help={props.help} wrong={props.wrong} refused={props.refused}>
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
