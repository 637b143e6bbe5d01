import type { Body, Job } from '../../../job/index.js';
import { useCatalog } from '../../data/answers.js';
import { type FieldsOf, isAsked } from '../../form/field.js';
import { Asked } from '../../form/form.js';
import type { Form } from '../../form/use-form.js';
import { FactsForm } from './facts-form.js';

const unknown = { id: 'unknown', label: 'Not known yet' } as const;

const kindFields: FieldsOf<Body<'intake'>> = {
  architecture: {
    as: 'choice',
    label: 'Valves',
    choices: [
      { id: 'side-valve', label: 'Side valve' },
      { id: 'overhead-valve', label: 'Overhead valve' },
      { id: 'two-stroke', label: 'Two-stroke' },
      unknown,
    ],
    help: 'Side valve: a flat finned head with only the plug in it. Overhead valve: a cover over rockers on the head. Two-stroke: oil in the fuel, no oil filler.',
  },
  ignition: {
    as: 'choice',
    label: 'Ignition',
    choices: [{ id: 'solid-state', label: 'Solid state' }, { id: 'points', label: 'Points' }, unknown],
  },
  fuelSystem: {
    as: 'choice',
    label: 'Carburetor',
    choices: [{ id: 'float-bowl', label: 'Float bowl' }, { id: 'diaphragm', label: 'Diaphragm' }, unknown],
  },
  shaft: {
    as: 'choice',
    label: 'Crankshaft',
    choices: [{ id: 'horizontal', label: 'Horizontal' }, { id: 'vertical', label: 'Vertical' }, unknown],
  },
  governor: {
    as: 'choice',
    label: 'Governor',
    choices: [
      { id: 'flyweight', label: 'Flyweights' },
      { id: 'air-vane', label: 'Air vane' },
      { id: 'none', label: 'None' },
      unknown,
    ],
  },
  starter: {
    as: 'choice',
    label: 'Starter',
    choices: [{ id: 'rope', label: 'Rope' }, { id: 'electric', label: 'Electric' }, unknown],
  },
};

/** What kind of engine it is. "Not known yet" is an answer; everything computed says what it leaves open. */
export function EngineFacts({ job }: { job: Job }) {
  const variants: FieldsOf<Body<'intake'>> = Object.fromEntries(
    useCatalog().variants.map((v) => [
      `variants.${v.id}`,
      {
        as: 'yes-no',
        label: v.asks,
        when: ({ architecture }: { architecture?: unknown }) =>
          v.architectures.some((known) => known === architecture),
        help: [v.words, `Taken as ${v.usual ? 'yes' : 'no'} until someone looks.`].filter(Boolean).join(' '),
      },
    ]),
  );
  return (
    <FactsForm
      job={job}
      title="What kind of engine"
      fields={{ ...kindFields, ...variants }}
      also={(said) => (said.variants ? { variants: { ...job.intake.variants, ...said.variants } } : {})}
    >
      {(form) => (
        <>
          <Asked form={form} names={Object.keys(kindFields)} />
          <Variants form={form} names={Object.keys(variants)} />
        </>
      )}
    </FactsForm>
  );
}

/** How this engine differs from others of its kind, asked once the kind is known. */
function Variants({ form, names }: { form: Form; names: readonly string[] }) {
  const asked = names.filter((name) => isAsked(form.fields[name]!, form.given));
  if (asked.length === 0) return null;
  const answered = asked.filter((name) => form.given[name] !== '').length;
  return (
    <details>
      <summary>How this one is built ({answered} answered)</summary>
      <div className="stack tight">
        <Asked form={form} names={asked} />
      </div>
    </details>
  );
}
