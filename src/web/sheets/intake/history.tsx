import type { Job } from '../../../job/index.js';
import { AmountField } from '../../parts/amount.js';
import { Choices } from '../../parts/field.js';
import { FactsForm } from './facts-form.js';

const answers = [
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
      keys={['storedMonths', 'fuelLeftIn', 'tipped', 'struck', 'wrongFuel']}
    >
      {(f, change) => (
        <>
          <div className="fields">
            <AmountField
              label="Months since it last ran"
              value={f.storedMonths}
              kept={job.intake.storedMonths}
              placeholder="48"
              help="Left empty: not known."
              onRead={(storedMonths) => change({ storedMonths })}
            />
          </div>
          <Choices
            label="Stored with fuel in it"
            choices={answers}
            value={f.fuelLeftIn}
            onChange={(fuelLeftIn) => change({ fuelLeftIn })}
          />
          <Choices
            label="Tipped, or shipped on its side"
            choices={answers}
            value={f.tipped}
            onChange={(tipped) => change({ tipped })}
          />
          <Choices
            label="Struck something"
            choices={answers}
            value={f.struck}
            onChange={(struck) => change({ struck })}
          />
          <Choices
            label="Given the wrong fuel"
            choices={answers}
            value={f.wrongFuel}
            onChange={(wrongFuel) => change({ wrongFuel })}
          />
        </>
      )}
    </FactsForm>
  );
}
