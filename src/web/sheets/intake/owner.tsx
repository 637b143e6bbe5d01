import type { IntakeFacts, Job } from '../../../job/index.js';
import { useCatalog } from '../../data/answers.js';
import { useShop } from '../../data/queries.js';
import { Asked } from '../../form/form.js';
import { FactsForm } from './facts-form.js';

const uses: readonly { id: NonNullable<IntakeFacts['use']>; label: string }[] = [
  { id: 'mower', label: 'Mower' },
  { id: 'tiller', label: 'Tiller' },
  { id: 'pump', label: 'Pump' },
  { id: 'generator', label: 'Generator' },
  { id: 'chipper', label: 'Chipper' },
  { id: 'blower', label: 'Blower' },
  { id: 'splitter', label: 'Log splitter' },
  { id: 'washer', label: 'Pressure washer' },
  { id: 'saw', label: 'Saw' },
  { id: 'trimmer', label: 'Trimmer' },
  { id: 'other', label: 'Something else' },
  { id: 'unknown', label: 'Not known' },
];

export function Owner({ job }: { job: Job }) {
  return (
    <>
      <FactsForm
        job={job}
        title="Machine and owner"
        fields={{
          machine: { as: 'text', label: 'Machine', hint: 'water pump on a frame' },
          use: { as: 'select', label: 'Used as', choices: uses },
          owner: { as: 'text', label: 'Owner' },
          contact: { as: 'text', label: 'Reached at' },
          missing: {
            as: 'text',
            label: 'Missing or damaged already',
            hint: 'air cleaner cover gone, guard bent',
          },
        }}
      />
      <Complaint job={job} />
      <Consent job={job} />
    </>
  );
}

function Complaint({ job }: { job: Job }) {
  const complaints = useCatalog().complaints.map((c) => ({ id: c.id, label: c.name }));
  return (
    <FactsForm
      job={job}
      title="The complaint"
      fields={{
        complaint: { as: 'long', label: 'In the owner’s words', hint: 'ran fine when I parked it' },
        complaints: { as: 'many', label: 'What it does', choices: complaints },
        tried: { as: 'text', label: 'Already tried', hint: 'new plug, starting spray' },
      }}
    >
      {(form) => {
        const known = form.list('complaints').length;
        return (
          <>
            <Asked form={form} names={['complaint']} />
            <details>
              <summary>In the trade’s words{known > 0 && ` (${known})`}</summary>
              <Asked form={form} names={['complaints']} />
            </details>
            <Asked form={form} names={['tried']} />
          </>
        );
      }}
    </FactsForm>
  );
}

function Consent({ job }: { job: Job }) {
  const shop = useShop();
  const currency = job.intake.stopLimit?.currency ?? shop.settings.currency ?? '$';
  return (
    <FactsForm
      job={job}
      title="Consent and limit"
      fields={{
        'consent.by': {
          as: 'text',
          label: 'Consent given by',
          help: 'Who agreed to the work. Your own machine: your own name.',
        },
        'consent.how': {
          as: 'text',
          label: 'How',
          hint: 'in person, signed sheet, telephone',
        },
        stopLimit: {
          as: 'money',
          currency,
          label: `Call above (${currency})`,
          help: 'Work stops here until the owner says go on.',
        },
        worthRunning: {
          as: 'money',
          currency,
          label: `Worth when it runs (${currency})`,
          help: 'What it would cost to have another as good, or what it is worth to the owner.',
        },
      }}
      also={({ consent }) => (consent ? { consent: consentOf(consent) } : {})}
    />
  );
}

const consentOf = ({ by = '', how = '' }: Partial<NonNullable<IntakeFacts['consent']>>) => ({
  given: by !== '',
  by,
  how,
});
