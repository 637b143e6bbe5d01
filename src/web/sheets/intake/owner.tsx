import { applies } from '../../../catalog/index.js';
import type { Job } from '../../../job/index.js';
import { useCatalog } from '../../data/answers.js';
import { useShop } from '../../data/queries.js';
import { Asked } from '../../form/form.js';
import { consentOf } from './consent.js';
import { FactsForm } from './facts-form.js';
import { OwnerMeant } from './owner-meant.js';

export function Owner({ job }: { job: Job }) {
  const uses = useCatalog().uses.map(({ id, name }) => ({ id, label: name }));
  return (
    <>
      <FactsForm
        job={job}
        title="Machine and owner"
        fields={{
          machine: { as: 'text', label: 'Machine', hint: 'water pump on a frame' },
          use: { as: 'select', label: 'Used as', choices: [...uses, { id: 'unknown', label: 'Not known' }] },
          alsoUses: {
            as: 'many',
            label: 'Drives as well',
            choices: uses.filter(({ id }) => id !== job.intake.use),
          },
          owner: { as: 'text', label: 'Owner' },
          contact: { as: 'text', label: 'Reached at' },
          missing: {
            as: 'text',
            label: 'Missing or damaged already',
            hint: 'air cleaner cover gone, guard bent',
          },
        }}
      >
        {(form) => (
          <>
            <Asked form={form} names={['machine', 'use']} />
            <details open={form.list('alsoUses').length > 0}>
              <summary>Drives something else as well</summary>
              <Asked form={form} names={['alsoUses']} />
            </details>
            <Asked form={form} names={['owner', 'contact', 'missing']} />
          </>
        )}
      </FactsForm>
      <Complaint job={job} />
      <Consent job={job} />
    </>
  );
}

function Complaint({ job }: { job: Job }) {
  const said = new Set(job.intake.complaints);
  // what only some machine does is asked once it is known that this is one
  const complaints = useCatalog()
    .complaints.filter(
      ({ id, when }) => said.has(id) || when?.use === undefined || applies(when, job.intake) === 'yes',
    )
    .map((c) => ({ id: c.id, label: c.name }));
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
            <OwnerMeant
              words={form.text('complaint')}
              said={form.list('complaints')}
              onTake={(said) => form.set('complaints', said)}
            />
            <details open={known > 0}>
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
