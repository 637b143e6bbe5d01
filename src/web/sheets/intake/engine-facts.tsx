import type { IntakeFacts, Job } from '../../../job/index.js';
import { useCatalog } from '../../data/queries.js';
import { Choices } from '../../parts/field.js';
import { FactsForm } from './facts-form.js';

const unknown = { id: 'unknown', label: 'Not known yet' } as const;

/** What kind of engine it is. "Not known yet" is an answer; everything computed says what it leaves open. */
export function EngineFacts({ job }: { job: Job }) {
  return (
    <FactsForm
      job={job}
      title="What kind of engine"
      keys={['architecture', 'ignition', 'fuelSystem', 'shaft', 'governor', 'starter', 'variants']}
    >
      {(f, change) => (
        <>
          <Choices
            label="Valves"
            value={f.architecture}
            onChange={(architecture) => change({ architecture })}
            choices={[
              { id: 'side-valve', label: 'Side valve' },
              { id: 'overhead-valve', label: 'Overhead valve' },
              { id: 'two-stroke', label: 'Two-stroke' },
              unknown,
            ]}
            help="Side valve: a flat finned head with only the plug in it. Overhead valve: a cover over rockers on the head. Two-stroke: oil in the fuel, no oil filler."
          />
          <Choices
            label="Ignition"
            value={f.ignition}
            onChange={(ignition) => change({ ignition })}
            choices={[
              { id: 'solid-state', label: 'Solid state' },
              { id: 'points', label: 'Points' },
              unknown,
            ]}
          />
          <Choices
            label="Carburetor"
            value={f.fuelSystem}
            onChange={(fuelSystem) => change({ fuelSystem })}
            choices={[
              { id: 'float-bowl', label: 'Float bowl' },
              { id: 'diaphragm', label: 'Diaphragm' },
              unknown,
            ]}
          />
          <Choices
            label="Crankshaft"
            value={f.shaft}
            onChange={(shaft) => change({ shaft })}
            choices={[
              { id: 'horizontal', label: 'Horizontal' },
              { id: 'vertical', label: 'Vertical' },
              unknown,
            ]}
          />
          <Choices
            label="Governor"
            value={f.governor}
            onChange={(governor) => change({ governor })}
            choices={[
              { id: 'flyweight', label: 'Flyweights' },
              { id: 'air-vane', label: 'Air vane' },
              { id: 'none', label: 'None' },
              unknown,
            ]}
          />
          <Choices
            label="Starter"
            value={f.starter}
            onChange={(starter) => change({ starter })}
            choices={[{ id: 'rope', label: 'Rope' }, { id: 'electric', label: 'Electric' }, unknown]}
          />
          <Variants job={job} facts={f} onChange={(variants) => change({ variants })} />
        </>
      )}
    </FactsForm>
  );
}

/** How this engine differs from others of its kind, asked once the kind is known. */
function Variants(props: {
  job: Job;
  facts: Partial<IntakeFacts>;
  onChange: (v: Record<string, boolean>) => void;
}) {
  const { facts } = props;
  const { variants } = useCatalog();
  const { architecture } = facts;
  if (architecture === undefined || architecture === 'unknown') return null;
  const asked = variants.filter((v) => v.architectures.includes(architecture));
  const set = (id: string, answer: 'yes' | 'no') =>
    props.onChange({ ...facts.variants, [id]: answer === 'yes' });
  const said = (id: string) =>
    facts.variants?.[id] === undefined ? undefined : facts.variants[id] ? 'yes' : 'no';
  return (
    <details>
      <summary>How this one is built ({Object.keys(facts.variants ?? {}).length} answered)</summary>
      <div className="stack tight">
        {asked.map((v) => (
          <Choices
            key={v.id}
            label={v.asks}
            value={said(v.id)}
            onChange={(a) => set(v.id, a)}
            choices={[
              { id: 'yes', label: 'Yes' },
              { id: 'no', label: 'No' },
            ]}
            help={[v.words, `Taken as ${v.usual ? 'yes' : 'no'} until someone looks.`]
              .filter(Boolean)
              .join(' ')}
          />
        ))}
      </div>
    </details>
  );
}
