import type { ReactNode } from 'react';
import type { Body, IntakeFacts, Job } from '../../../job/index.js';
import type { FieldsOf } from '../../form/field.js';
import { Asked, FormFrame } from '../../form/form.js';
import { type Form, useForm } from '../../form/use-form.js';
import { Button, Wrong } from '../../parts/act.js';

/** A group of intake facts that is filled in together and written as one line: only what changed. */
export function FactsForm(props: {
  job: Job;
  title: string;
  fields: FieldsOf<Body<'intake'>>;
  also?: (said: Partial<IntakeFacts>) => Partial<IntakeFacts>;
  /** in place of all fields in their order */
  children?: (form: Form<IntakeFacts>) => ReactNode;
}) {
  const { job, title, fields, also } = props;
  const form = useForm({
    job: job.id,
    kind: 'intake',
    handle: title,
    title,
    before: job.intake,
    changes: true,
    fields,
    ...(also && { also }),
  });
  return (
    <FormFrame form={form} className="section stack tight">
      <h2>{title}</h2>
      {props.children?.(form) ?? <Asked form={form} />}
      <Wrong words={form.wrong} />
      {form.differs && (
        <div className="row">
          <Button type="submit" look="go" disabled={form.busy}>
            Write it down
          </Button>
          <Button look="quiet" onClick={form.giveUp}>
            Leave it as it was
          </Button>
          {form.resumed && <span className="soft">begun earlier, not written down yet</span>}
        </div>
      )}
    </FormFrame>
  );
}
