import type { IntakeFacts, Job } from '../../../job/index.js';
import { useCatalog, useShop } from '../../data/queries.js';
import { AmountField } from '../../parts/amount.js';
import { ManyChoices, SelectField, TextField } from '../../parts/field.js';
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

/** The machine, the owner, the complaint in the owner's words and in the trade's, consent and the limit. */
export function Owner({ job }: { job: Job }) {
  const shop = useShop();
  const currency = job.intake.stopLimit?.currency ?? shop.settings.currency ?? '$';
  const complaints = useCatalog().complaints.map((c) => ({ id: c.id, label: c.name }));
  return (
    <>
      <FactsForm job={job} title="Machine and owner" keys={['machine', 'use', 'owner', 'contact', 'missing']}>
        {(f, change) => (
          <div className="fields">
            <TextField
              label="Machine"
              value={f.machine ?? ''}
              onChange={(machine) => change({ machine })}
              placeholder="water pump on a frame"
            />
            <SelectField
              label="Used as"
              choices={uses}
              value={f.use ?? ''}
              onChange={(use) => use && change({ use })}
            />
            <TextField label="Owner" value={f.owner ?? ''} onChange={(owner) => change({ owner })} />
            <TextField
              label="Reached at"
              value={f.contact ?? ''}
              onChange={(contact) => change({ contact })}
            />
            <TextField
              label="Missing or damaged already"
              value={f.missing ?? ''}
              onChange={(missing) => change({ missing })}
              placeholder="air cleaner cover gone, guard bent"
            />
          </div>
        )}
      </FactsForm>
      <FactsForm job={job} title="The complaint" keys={['complaint', 'complaints', 'tried']}>
        {(f, change) => (
          <>
            <TextField
              label="In the owner’s words"
              value={f.complaint ?? ''}
              onChange={(complaint) => change({ complaint })}
              long
              placeholder="ran fine when I parked it"
            />
            <details>
              <summary>
                In the trade’s words{(f.complaints ?? []).length > 0 && ` (${(f.complaints ?? []).length})`}
              </summary>
              <ManyChoices
                label="What it does"
                choices={complaints}
                value={f.complaints ?? []}
                onChange={(list) => change({ complaints: list })}
              />
            </details>
            <TextField
              label="Already tried"
              value={f.tried ?? ''}
              onChange={(tried) => change({ tried })}
              placeholder="new plug, starting spray"
            />
          </>
        )}
      </FactsForm>
      <FactsForm job={job} title="Consent and limit" keys={['consent', 'stopLimit', 'worthRunning']}>
        {(f, change) => (
          <div className="fields">
            <TextField
              label="Consent given by"
              value={f.consent?.by ?? ''}
              onChange={(by) =>
                change({ consent: { given: by.trim() !== '', by, how: f.consent?.how ?? 'in person' } })
              }
              help="Who agreed to the work. Your own machine: your own name."
            />
            <TextField
              label="How"
              value={f.consent?.how ?? ''}
              onChange={(how) =>
                change({
                  consent: { given: (f.consent?.by ?? '').trim() !== '', by: f.consent?.by ?? '', how },
                })
              }
              placeholder="in person, signed sheet, telephone"
            />
            <AmountField
              label={`Call above (${currency})`}
              value={f.stopLimit?.amount}
              kept={job.intake.stopLimit?.amount}
              currency={currency}
              onRead={(amount) =>
                change({ stopLimit: amount === undefined ? undefined : { amount, currency } })
              }
              help="Work stops here until the owner says go on."
            />
            <AmountField
              label={`Worth when it runs (${currency})`}
              value={f.worthRunning?.amount}
              kept={job.intake.worthRunning?.amount}
              currency={currency}
              onRead={(amount) =>
                change({ worthRunning: amount === undefined ? undefined : { amount, currency } })
              }
              help="What it would cost to have another as good, or what it is worth to the owner."
            />
          </div>
        )}
      </FactsForm>
    </>
  );
}
