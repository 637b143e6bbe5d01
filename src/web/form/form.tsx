import { type ReactNode, useEffect, useRef } from 'react';
import { Button, Wrong } from '../parts/act.js';
import { AskedField, isShort } from './asked-field.js';
import { isAsked } from './field.js';
import type { Form } from './use-form.js';

interface BoxProps {
  readonly form: Form;
  /** the button that writes; Enter does the same. A form whose answers write by themselves has none */
  readonly keep?: string;
  /** the button that drops what was typed; Escape closes a dialog and keeps it as a draft */
  readonly leave?: string;
  readonly onLeave?: () => void;
  /** further buttons, before the one that writes: one that closes and keeps the draft, one that says it another way */
  readonly more?: ReactNode;
  readonly barred?: boolean;
  /** stands before the fields: cautions, what is known */
  readonly before?: ReactNode;
  /** in place of all fields in their order */
  readonly children?: ReactNode;
  readonly className?: string;
}

/** A form: its fields, what is wrong, and its buttons. */
export function FormBox(props: BoxProps) {
  const { form, leave, onLeave } = props;
  return (
    <FormFrame form={form} className={props.className}>
      {props.before}
      <Resumed form={form} />
      {props.children ?? <Asked form={form} />}
      <Wrong words={form.wrong} />
      <div className="row form-end">
        {leave && (
          <Button
            onClick={() => {
              form.giveUp();
              onLeave?.();
            }}
          >
            {leave}
          </Button>
        )}
        {props.more}
        {props.keep && (
          <Button look="go" type="submit" disabled={form.busy || props.barred}>
            {props.keep}
          </Button>
        )}
      </div>
    </FormFrame>
  );
}

/** The bare form: Enter writes, and what is refused gets the focus. */
export function FormFrame(props: {
  form: Form;
  className?: string | undefined;
  /** where Enter says more than that the form is kept */
  onEnter?: () => void;
  children: ReactNode;
}) {
  const { form } = props;
  const box = useRef<HTMLFormElement>(null);
  useEffect(() => {
    if (form.wrongField) box.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();
  }, [form.wrongField]);
  return (
    <form
      ref={box}
      noValidate
      className={props.className ?? 'stack'}
      onSubmit={(event) => {
        event.preventDefault();
        if (props.onEnter) props.onEnter();
        else void form.keep();
      }}
    >
      {props.children}
    </form>
  );
}

/** What an earlier visit left is said, so that nobody takes it for the log's word. */
export function Resumed({ form }: { form: Form }) {
  if (!form.resumed || !form.differs) return null;
  return (
    <p className="row resumed" role="note">
      <span>Begun earlier and not written down yet.</span>
      <Button look="quiet" onClick={form.giveUp}>
        Begin anew
      </Button>
    </p>
  );
}

/** Fields in their order, or those named: short ones side by side, each other on its own. */
export function Asked({ form, names }: { form: Form; names?: readonly string[] }) {
  const asked = (names ?? Object.keys(form.fields)).filter((name) => {
    const field = form.fields[name]!;
    return isAsked(field, form.given) && (names !== undefined || field.as !== 'drawn');
  });
  const groups: string[][] = [];
  for (const name of asked) {
    const before = groups.at(-1)?.[0];
    const joins = before !== undefined && isShort(form.fields[before]!) && isShort(form.fields[name]!);
    if (joins) groups.at(-1)!.push(name);
    else groups.push([name]);
  }
  return groups.map((group) =>
    isShort(form.fields[group[0]!]!) ? (
      <div className="fields" key={group[0]}>
        {group.map((name) => (
          <AskedField key={name} form={form} name={name} />
        ))}
      </div>
    ) : (
      <AskedField key={group[0]} form={form} name={group[0]!} />
    ),
  );
}
