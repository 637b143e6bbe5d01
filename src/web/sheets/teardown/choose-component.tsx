import { useState } from 'react';
import { applies, type Catalog, type Component } from '../../../catalog/index.js';
import { type From, factsOf, type Job } from '../../../job/index.js';
import { write } from '../../data/outbox.js';
import { useCatalog } from '../../data/queries.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { Dialog } from '../../parts/dialog.js';
import { TextField } from '../../parts/field.js';
import { componentsOf, handleOf } from '../components.js';

/** Picks the next piece: those that can come off now first, each with what still holds it. */
export function ChooseComponent(props: {
  job: Job;
  open: boolean;
  onClose: () => void;
  onChoose: (step: From<'step'>) => void;
}) {
  const { job, open, onClose } = props;
  const [find, setFind] = useState('');
  const { wrong, act } = useAct();
  const catalog = useCatalog();
  const waiting = open ? choicesFor(catalog, job, find) : [];

  const plan = async (title: string, component: Component | undefined) => {
    const body = {
      step: component?.id ?? handleOf(title),
      stage: 'teardown' as const,
      title,
      component: component?.id,
      state: 'planned' as const,
    };
    await act(async () => {
      const entry = await write(job.id, 'step', body);
      props.onChoose({ ...body, entry: entry.id, at: entry.at, by: entry.by } as From<'step'>);
    });
  };

  return (
    <Dialog title="What comes off?" open={open} onClose={onClose}>
      <TextField label="Find or name a piece" value={find} onChange={setFind} placeholder="carburetor" />
      <Wrong words={wrong} />
      <ul className="lines">
        {waiting.map(({ component, holds }) => (
          <li key={component.id}>
            <div>
              <b>{component.name}</b>
              {holds.length > 0 && <div className="soft">first: {holds.join(', ')}</div>}
            </div>
            <Button
              look={holds.length === 0 ? 'plain' : 'quiet'}
              onClick={() => void plan(component.name, component)}
            >
              Choose
            </Button>
          </li>
        ))}
      </ul>
      {find.trim() !== '' && (
        <Button onClick={() => void plan(find.trim(), undefined)}>
          Log “{find.trim()}” as a piece of its own
        </Button>
      )}
      <div className="row end">
        <Button onClick={onClose}>Nothing now</Button>
      </div>
    </Dialog>
  );
}

interface ComponentChoice {
  readonly component: Component;
  /** names of what must come off before and is not off yet */
  readonly holds: readonly string[];
}

function choicesFor(catalog: Catalog, job: Job, find: string): ComponentChoice[] {
  const all = componentsOf(catalog, job).filter(
    (c) => applies(c.onlyOn, factsOf(job)) !== 'no' && c.comesOffAs !== 'base',
  );
  const name = new Map(all.map((c) => [c.id, c.name]));
  const off = (id: string) => job.steps.get(id)?.state === 'done';
  return all
    .filter((c) => !job.steps.has(c.id) || job.steps.get(c.id)?.state === 'dropped')
    .filter((c) => c.name.toLowerCase().includes(find.trim().toLowerCase()))
    .map((component) => ({
      component,
      holds: component.before
        .filter((b) => applies(b.when, factsOf(job)) !== 'no' && name.has(b.component) && !off(b.component))
        .map((b) => name.get(b.component)!),
    }))
    .sort((a, b) => a.holds.length - b.holds.length);
}
