import { type Body, EntryError, type EntryKind, type RuleContext, readBody } from '../../job/index.js';
import { type DraftStore, draftKey, drafts } from './drafts.js';
import {
  beginOf,
  type Field,
  FieldError,
  type Fields,
  type FieldsOf,
  type Given,
  isEmpty,
  readFields,
  wrongWhileTyped,
} from './field.js';

export interface Line {
  readonly kind: EntryKind;
  readonly body: unknown;
}

/**
 * A form is the schema of its kind plus this description. To convert a form:
 *
 * 1. List its fields by the place in the body that each one says (`name`, `consent.by`, `limit.min`); what is asked and goes
 *    into no line by itself begins with `$`. A misspelt name or a kind of field that cannot say its value does not compile.
 * 2. Everything a field needs stands in it: label, hint, help, need (the refusal when it is empty), when (asked only then),
 *    begin, choices. Help, kind, unit and choices may be functions of what stands in the form.
 * 3. `also` gives what the body holds besides: handles, parts made of several fields. Throw a FieldError to name the field.
 * 4. `lines` only where more than one line, or none of this kind, is written.
 * 5. `const form = useForm({ job, kind, handle, title, fields, also, onDone })`, then
 *    `<FormBox form={form} keep="Keep" leave="Leave it" onLeave={onClose} />`. Fields lay themselves out: short ones side by
 *    side, choices and long text on their own. For another layout give children with `<Asked form={form} names={[…]} />`.
 * 6. `changes: true` for a group of facts on a sheet: only what was changed is written.
 *
 * No useState, no trim, no readWritten, no error box in the converted form; nothing of the domain: that stands in `job`.
 */
export interface FormOf<K extends EntryKind, B = Body<K>> {
  readonly job: string;
  readonly kind: K;
  /** which thing it is about: the same handle finds its draft again */
  readonly handle?: string | undefined;
  /** what it is called in the list of what was begun */
  readonly title: string;
  readonly fields: FieldsOf<B>;
  /** the body that is said anew; its fields stand in the form */
  readonly before?: Partial<B> | undefined;
  readonly changes?: boolean;
  readonly also?: Partial<B> | ((said: Partial<B>, given: Given) => Partial<B>);
  readonly lines?: (body: Body<K>, given: Given) => readonly Line[] | Promise<readonly Line[]>;
  readonly onDone?: (body: Body<K>) => void;
}

interface FormState {
  /** what was typed or tapped, by field */
  readonly changed: Given;
  /** what cannot be kept: at which field, or for the form as a whole */
  readonly wrong?: { readonly field?: string | undefined; readonly words: string } | undefined;
  readonly busy: boolean;
  /** opened with what an earlier visit left */
  readonly resumed: boolean;
}

interface Keeping<B> {
  /** what this button says besides */
  readonly also?: Partial<B>;
  /** fields that keep standing for another one after this; the form then stays open */
  readonly stays?: readonly string[];
}

export interface FormStore<B> {
  get(): FormState;
  subscribe(tell: () => void): () => void;
  set(name: string, value: unknown): void;
  change(values: Given): void;
  /** Writes the lines. False when something cannot be kept; what and why then stands in the state. */
  keep(how?: Keeping<B>): Promise<boolean>;
  /** Begins anew: what was typed is dropped. */
  giveUp(): void;
}

export type WriteLines = (job: string, lines: readonly Line[]) => Promise<unknown>;

/** The description in the widest terms, in which the store reads it. */
interface Plain {
  readonly job: string;
  readonly kind: EntryKind;
  readonly title: string;
  readonly fields: Fields;
  readonly before?: Given | undefined;
  readonly changes?: boolean;
  readonly also?: Given | ((said: Given, given: Given) => Given);
  readonly lines?: (body: unknown, given: Given) => readonly Line[] | Promise<readonly Line[]>;
  readonly onDone?: (body: unknown) => void;
}

export const plainForm = <K extends EntryKind, B>(form: FormOf<K, B>): Plain => form as unknown as Plain;

export const keyOf = (form: { job: string; kind: string; handle?: string | undefined }): string =>
  draftKey(form.job, form.kind, form.handle ?? 'new');

/** What stands in the form now: the log's word, over it what was typed. */
export const givenOf = (form: Plain, { changed }: FormState): Given => ({
  ...beginOf(form.fields, form.before, changed),
  ...changed,
});

const same = (a: unknown, b: unknown) => JSON.stringify(a) === JSON.stringify(b);

/** What differs from what the log says: this is the draft, and in a group of facts what is written. */
export function differing(form: Plain, { changed }: FormState): Given {
  const begin = beginOf(form.fields, form.before, changed);
  return Object.fromEntries(
    Object.entries(changed).filter(([name, value]) => name in begin && !same(value, begin[name])),
  );
}

/**
 * One form's state: what was typed, what is wrong with it, whether it is being written. `description` is asked anew each time,
 * for the job goes on while the form stands open.
 */
export function formStore<B>(
  description: () => Plain,
  write: WriteLines,
  kept: DraftStore = drafts,
): FormStore<B> {
  const key = keyOf(description());
  const left = kept.all().get(key);
  const told = tellingState({ changed: left?.given ?? {}, busy: false, resumed: left !== undefined });
  const { get, change } = told;
  const remember = () => {
    const { job, title } = description();
    const given = differing(description(), get());
    void (Object.keys(given).length > 0 ? kept.keep(key, { given, title, job }) : kept.drop(key));
  };
  const typed = (values: Given) => {
    change({ changed: { ...get().changed, ...values }, wrong: undefined });
    remember();
  };
  const subscribe = (tell: () => void) => {
    const leave = told.subscribe(tell);
    // a form that opens with the page is there before what an earlier visit left has been read
    const stop = kept.subscribe(() => {
      const found = kept.all().get(key);
      if (found && Object.keys(get().changed).length === 0) change({ changed: found.given, resumed: true });
    });
    return () => {
      leave();
      stop();
    };
  };
  const keepNow = async ({ also, stays }: Keeping<B>) => {
    const { changed: begun } = get();
    change({ busy: true, wrong: undefined });
    try {
      const form = description();
      const body = await written(form, get(), also as Given | undefined, write);
      const left = leftOf(get().changed, begun, stays);
      change({ changed: left.changed, busy: false, resumed: false });
      if (left.isNew) remember();
      else void kept.drop(key);
      if (!stays) form.onDone?.(body);
      return true;
    } catch (error) {
      change({ busy: false, wrong: placed(error, description().fields) });
      return false;
    }
  };
  return {
    get,
    subscribe,
    set: (name, value) => typed(alsoSet(description(), get(), name, value)),
    change: typed,
    keep: inTurn(get, keepNow),
    giveUp: () => {
      change({ changed: {}, wrong: undefined, resumed: false });
      void kept.drop(key);
    },
  };
}

/** What a form holds once its line is written: what stays for another one, and what was typed meanwhile. */
function leftOf(now: Given, begun: Given, stays: readonly string[] = []) {
  const isNew = ([name, value]: [string, unknown]) => !same(value, begun[name]);
  const left = Object.entries(now).filter((each) => stays.includes(each[0]) || isNew(each));
  return { changed: Object.fromEntries(left), isNew: left.some(isNew) };
}

/** A second touch while the first is being written keeps nothing twice, and what is new by then after it. */
function inTurn<B>(
  get: () => FormState,
  keepNow: (how: Keeping<B>) => Promise<boolean>,
): FormStore<B>['keep'] {
  let asked: Given | undefined;
  let turn = Promise.resolve(true);
  return (how = {}) => {
    const { changed, busy } = get();
    if (busy && same(changed, asked)) return Promise.resolve(false);
    asked = changed;
    turn = busy ? turn.then(() => keepNow(how)) : keepNow(how);
    return turn;
  };
}

/** What changes when one field is changed by hand. */
const alsoSet = (form: Plain, state: FormState, name: string, value: unknown): Given => ({
  [name]: value,
  ...form.fields[name]?.sets?.(value as never, givenOf(form, state)),
});

/** A state that says when it is another. */
function tellingState(state: FormState) {
  const listeners = new Set<() => void>();
  return {
    get: () => state,
    change: (next: Partial<FormState>) => {
      state = { ...state, ...next };
      for (const tell of listeners) tell();
    },
    subscribe: (tell: () => void) => {
      listeners.add(tell);
      return () => listeners.delete(tell);
    },
  };
}

async function written(form: Plain, state: FormState, also: Given | undefined, write: WriteLines) {
  const body = bodyOf(form, state, also);
  await write(form.job, (await form.lines?.(body, givenOf(form, state))) ?? [{ kind: form.kind, body }]);
  return body;
}

/** The body that would be written now. @throws FieldError or Error in words for what is missing or wrong */
export function bodyOf(form: Plain, state: FormState, more?: Given): Given {
  const given = givenOf(form, state);
  const fields = form.changes ? changedFields(form, state) : form.fields;
  for (const name of Object.keys(fields)) {
    const stands = stillStands(form, given, name);
    if (stands) throw new FieldError(name, stands);
  }
  const said = { ...readFields(fields, given), ...(form.changes && emptied(fields, given)) };
  const also = typeof form.also === 'function' ? form.also(said, given) : form.also;
  return { ...said, ...also, ...more };
}

/** Fields whose part of the body was touched: a part with several fields is written whole. */
function changedFields(form: Plain, state: FormState): Fields {
  const roots = new Set(Object.keys(differing(form, state)).map(root));
  return Object.fromEntries(Object.entries(form.fields).filter(([name]) => roots.has(root(name))));
}
const root = (path: string) => path.split('.')[0]!;

/** Words that were taken out are written as none; a number cannot be: its line must be struck. */
function emptied(fields: Fields, given: Given): Given {
  return Object.fromEntries(
    Object.entries(fields)
      .filter(([name, { as }]) => isEmpty(given[name]) && !name.includes('.') && as in noneOf)
      .map(([name, { as }]) => [name, noneOf[as as keyof typeof noneOf]]),
  );
}
const noneOf = { text: '', long: '', many: [], lines: [] } as const;

/** What stands under a field: what was refused when it was kept, or what cannot be read while it is typed. */
export function wrongAt(form: Plain, state: FormState, name: string): string | undefined {
  if (state.wrong?.field === name) return state.wrong.words;
  const given = givenOf(form, state);
  return wrongWhileTyped(name, form.fields[name] as Field, given) ?? stillStands(form, given, name);
}

/**
 * What the rules of its kind say of the line as it stands, while it is typed: a torque too high for its thread, a scale
 * that falls. Said at a field that was changed and is not empty; what is missing is said when it is kept.
 */
export function wrongTogether(form: Plain, state: FormState, context?: RuleContext): FormState['wrong'] {
  if (form.lines) return undefined; // which lines it becomes is told when it is kept
  try {
    readBody(form.kind, bodyOf(form, state), context);
  } catch (error) {
    const wrong = error instanceof EntryError ? placed(error, form.fields) : undefined;
    return wrong?.field !== undefined && !isEmpty(state.changed[wrong.field]) ? wrong : undefined;
  }
  return undefined;
}

/** In a group of facts an emptied number does not take back what the log holds. */
function stillStands(form: Plain, given: Given, name: string): string | undefined {
  const field = form.fields[name]!;
  if (!form.changes || !isEmpty(given[name]) || !['number', 'money', 'quantity'].includes(field.as))
    return undefined;
  const before = beginOf(form.fields, form.before)[name];
  if (isEmpty(before)) return undefined;
  const currency = 'currency' in field ? (field.currency ?? '') : '';
  return `${currency}${before} still stands in the log. Strike that line to take it back.`;
}

/** The words of a refusal, and the field that they belong to. The place in the body is said by where they stand. */
function placed(error: unknown, fields: Fields): FormState['wrong'] {
  const words = error instanceof Error ? error.message : String(error);
  if (error instanceof FieldError) return { field: fieldFor(error.field, fields), words };
  if (!(error instanceof EntryError) || error.field === undefined) return { words };
  const field = fieldFor(error.field.replace(/^body\./, ''), fields);
  const prefix = `${error.field}: `;
  return { field, words: field && words.startsWith(prefix) ? words.slice(prefix.length) : words };
}

/** The field of that place, or of the nearest part above it: the third row of `breaks` stands at `breaks`. */
function fieldFor(path: string, fields: Fields): string | undefined {
  for (let steps = path.split('.'); steps.length > 0; steps = steps.slice(0, -1))
    if (steps.join('.') in fields) return steps.join('.');
  return undefined;
}
