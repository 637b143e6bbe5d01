import type { ReactNode } from 'react';
import type { Body, Job } from '../../../job/index.js';
import { useShop, useUnits } from '../../data/queries.js';
import type { Field } from '../../form/field.js';
import { FormBox } from '../../form/form.js';
import type { Line } from '../../form/store.js';
import { type Form, useForm } from '../../form/use-form.js';
import { Button } from '../../parts/act.js';
import { GridEntry, type Typed } from './grid-entry.js';
import { CircumstanceFields, circumstances, requireMeasurable, unitField, unitOf } from './reading-fields.js';

/** What a form of many readings holds while it is filled in. */
export interface Readings {
  readonly form: Form<Body<'measurement'>>;
  readonly unit: string;
  readonly typed: Typed;
}

/**
 * A form of many readings: what its questions and the typed cells become in the log. A line of the maker's sheet comes before
 * what is held against it. Every line is made before the first is written, so that a wrong one leaves nothing half kept.
 */
export function useReadings(of: {
  job: Job;
  handle: string;
  title: string;
  fields: Readonly<Record<`$${string}`, Field>>;
  /** throws an Error in words for what cannot be kept */
  lines: (
    about: Partial<Body<'measurement'>>,
    given: Readonly<Record<string, unknown>>,
  ) => { specs: readonly Body<'spec'>[]; measurements: readonly Body<'measurement'>[] };
  onDone: () => void;
}): Readings {
  const shop = useShop();
  const metric = useUnits() === 'metric';
  const form = useForm({
    job: of.job.id,
    kind: 'measurement',
    handle: of.handle,
    title: of.title,
    fields: {
      ...unitField(metric),
      ...of.fields,
      $typed: { as: 'drawn', label: 'Readings', begin: {} },
      ...circumstances(shop, 'length'),
    },
    lines: (about, given): readonly Line[] => {
      requireMeasurable(about);
      const { specs, measurements } = of.lines(about, given);
      return [
        ...specs.map((body) => ({ kind: 'spec' as const, body })),
        ...measurements.map((body) => ({ kind: 'measurement' as const, body })),
      ];
    },
    onDone: of.onDone,
  });
  return { form, unit: unitOf(form.given), typed: form.given.$typed as Typed };
}

/** Many readings in one go, what is the same for all of them, what else is asked, and the button that keeps it all. */
export function KeepReadings(props: {
  readings: Readings;
  before: ReactNode;
  grid: { readonly rows: readonly string[]; readonly columns: readonly string[] } | undefined;
  doubt?: (key: string) => string | undefined;
  onClose: () => void;
  children?: ReactNode;
}) {
  const { readings, grid } = props;
  const { form, typed, unit } = readings;
  return (
    <FormBox
      form={form}
      keep="Keep the readings"
      more={<Button onClick={props.onClose}>Close</Button>}
      before={props.before}
    >
      {grid && (
        <GridEntry
          rows={grid.rows}
          columns={grid.columns}
          typed={typed}
          unit={unit}
          onChange={(cells) => form.set('$typed', cells)}
          {...(props.doubt && { doubt: props.doubt })}
        />
      )}
      <CircumstanceFields form={form} />
      {props.children}
    </FormBox>
  );
}
