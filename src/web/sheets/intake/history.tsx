import type { Job } from '../../../job/index.js';
import { FactsForm } from './facts-form.js';

const choices = [
  { id: 'yes', label: 'Yes' },
  { id: 'no', label: 'No' },
  { id: 'unknown', label: 'Not known' },
] as const;

/** How it was kept and what happened to it: these facts shift what is likely to be wrong. */
export function History({ job }: { job: Job }) {
  return (
    <FactsForm
      job={job}
      title="Its history"
      fields={{
        storedMonths: {
          as: 'number',
          counts: { kind: 'time', unit: 'months' },
          label: 'Months since it last ran',
          hint: '48',
          help: 'Or “4 yrs”. Left empty: not known.',
        },
        fuelLeftIn: { as: 'choice', label: 'Stored with fuel in it', choices },
        tipped: { as: 'choice', label: 'Tipped, or shipped on its side', choices },
        struck: { as: 'choice', label: 'Struck something', choices },
        wrongFuel: { as: 'choice', label: 'Given the wrong fuel', choices },
      }}
    />
  );
}
