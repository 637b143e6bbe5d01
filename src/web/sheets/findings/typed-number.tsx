import type { Check } from '../../../catalog/index.js';
import { questionsAt, type ValueUnit } from '../../../diagnose/index.js';
import { type Answers, type Job, typedValue, valueAsked } from '../../../job/index.js';
import { of, readerUnit } from '../../../quantity/index.js';
import { useAnswers } from '../../data/answers.js';
import { useUnits } from '../../data/queries.js';
import { type Given, quantityIn } from '../../form/field.js';
import { Asked, FormFrame } from '../../form/form.js';
import type { Line } from '../../form/store.js';
import { useForm } from '../../form/use-form.js';
import { Button, Wrong } from '../../parts/act.js';

interface Typing {
  readonly job: Job;
  readonly check: Check;
  readonly doubtful?: boolean;
  readonly onLogged?: (() => void) | undefined;
}

/** The number that a check ends in: typed here, and the outcome follows from it. Nothing where it ends in none. */
export function TypedNumber(props: Typing) {
  const asked = valueAsked(useAnswers(), props.check);
  return asked && <NumberForm {...props} asked={asked} />;
}

function NumberForm({ job, check, doubtful, onLogged, asked }: Typing & { asked: ValueUnit }) {
  const answers = useAnswers();
  const unit = useReadersUnit(asked);
  const numberOf = ({ $number }: Given) => asWritten(String($number), asked, unit);
  const form = useForm({
    job: job.id,
    kind: 'observation',
    handle: `number ${check.id}`,
    title: check.title,
    fields: {
      $number: {
        ...(asked.kind === undefined
          ? { as: 'text', hint: unit }
          : { as: 'quantity', kind: asked.kind, unit }),
        label: `Number read, in ${unit}`,
        need: 'Type the number that was read.',
      },
    },
    also: (_, given) => ({
      ...said(answers, check, numberOf(given)),
      ...(doubtful && { doubtful }),
    }),
    lines: (body): readonly Line[] => linesOf(answers, check, body),
    onDone: () => onLogged?.(),
  });
  const { value, outcomes = [] } = form.body ?? {};
  const open = questionsAt(answers.catalog, answers.engine, check).length > 0;
  return (
    <FormFrame form={form} className="stack tight typed-number">
      <Asked form={form} />
      <p aria-live="polite" className="soft">
        {value !== undefined && meaning(outcomes[0], open)}
      </p>
      <div className="row">
        <Button type="submit" disabled={form.busy}>
          Log the number
        </Button>
      </div>
      <Wrong words={form.wrong} />
    </FormFrame>
  );
}

export function meaning(outcome: string | undefined, open: boolean): string {
  if (outcome !== undefined) return `On this engine: ${outcome}.`;
  return open
    ? 'What it means hangs on the answer above; without it the number is kept as read.'
    : 'Kept as a reading. It says nothing before this engine’s own figure is known.';
}

export function useReadersUnit({ unit, kind }: ValueUnit): string {
  const system = useUnits();
  return kind === undefined ? unit : readerUnit(of(1, unit), system);
}

export const asWritten = (text: string, { kind }: ValueUnit, unit: string): string =>
  kind === undefined ? `${text.trim()} ${unit}` : quantityIn(text, kind, unit).written;

/** The observation that a number is. */
export function said(answers: Answers, check: Check, value: string) {
  const { outcome } = typedValue(answers, check, value);
  return { check: check.id, title: check.title, outcomes: outcome === undefined ? [] : [outcome], value };
}

/** A number that is one of the measurements stands among them too: it is read once. */
export function linesOf(
  answers: Answers,
  check: Check,
  body: { readonly value?: string | undefined },
): Line[] {
  const { reading } = typedValue(answers, check, body.value ?? '');
  const phase = answers.putBack.length > 0 ? 'after' : 'as-found';
  return [
    { kind: 'observation', body },
    ...(reading ? [{ kind: 'measurement' as const, body: { ...reading, phase } }] : []),
  ];
}
