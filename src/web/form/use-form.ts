import { useMemo, useRef, useSyncExternalStore } from 'react';
import type { Body, EntryKind } from '../../job/index.js';
import { contextOf } from '../data/known-jobs.js';
import { writeAll } from '../data/outbox.js';
import type { Fields, Given } from './field.js';
import {
  bodyOf,
  differing,
  type FormOf,
  type FormStore,
  formStore,
  givenOf,
  keyOf,
  plainForm,
  wrongAt,
  wrongTogether,
} from './store.js';

/** A form as its screen sees it. */
export interface Form<B = unknown> extends Pick<FormStore<B>, 'set' | 'change' | 'keep' | 'giveUp'> {
  readonly fields: Fields;
  readonly given: Given;
  /** words that stand in a field, without the blanks around them */
  text(name: string): string;
  list<T = string>(name: string): readonly T[];
  wrongAt(name: string): string | undefined;
  /** what is wrong and stands at no field: with the form as a whole, or with what is drawn */
  readonly wrong: string | undefined;
  readonly wrongField: string | undefined;
  readonly busy: boolean;
  readonly resumed: boolean;
  /** something was typed or tapped that the log does not have */
  readonly differs: boolean;
  /** the body as it would be written now; nothing while something is missing or wrong */
  readonly body: B | undefined;
}

/** Looked up by the kind, so that the words of a description are checked against that kind's body and no wider. */
type FormOfKind<K extends EntryKind> = { readonly kind: K } & { [Any in EntryKind]: FormOf<Any> }[K];

/** Holds a form of one thing: what is typed, its draft, what is wrong, the writing. How to describe one: `store.ts`. */
export function useForm<K extends EntryKind>(description: FormOfKind<K>): Form<Body<K>> {
  return useFormOf<K, Body<K>>(description as unknown as FormOf<K>);
}

/** The same where the kind has several bodies and the form says one of them: `useFormOf<'identity', Measured>`. */
export function useFormOf<K extends EntryKind, B>(description: FormOf<K, B>): Form<B> {
  const latest = useRef(plainForm(description));
  latest.current = plainForm(description);
  const key = keyOf(description);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another thing is another form; its description is read anew each time
  const store = useMemo(() => formStore<B>(() => latest.current, writeAll), [key]);
  const state = useSyncExternalStore(store.subscribe, store.get);
  const form = latest.current;
  const given = givenOf(form, state);
  const together = wrongTogether(form, state, contextOf(form.job));
  return {
    ...store,
    fields: form.fields,
    given,
    text: (name) => String(given[name] ?? '').trim(),
    list: <T>(name: string) => (given[name] ?? []) as readonly T[],
    wrongAt: (name) => wrongAt(form, state, name) ?? (together?.field === name ? together.words : undefined),
    wrong: standsAlone(form.fields, state.wrong?.field) ? state.wrong?.words : undefined,
    wrongField: state.wrong?.field,
    busy: state.busy,
    resumed: state.resumed,
    differs: Object.keys(differing(form, state)).length > 0,
    get body() {
      try {
        return bodyOf(form, state) as B;
      } catch {
        return undefined; // what is missing is said when it is kept
      }
    },
  };
}

const standsAlone = (fields: Fields, field: string | undefined): boolean =>
  field === undefined || fields[field]?.as === 'drawn';
