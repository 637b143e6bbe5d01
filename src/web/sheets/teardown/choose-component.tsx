import { useState } from 'react';
import { useLocation } from 'wouter';
import { applies, type Catalog, type Component, type Facts } from '../../../catalog/index.js';
import { freeHandle, type Job } from '../../../job/index.js';
import { useAnswers, useCatalog } from '../../data/answers.js';
import { write } from '../../data/outbox.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { Dialog } from '../../parts/dialog.js';
import { TextField } from '../../parts/field.js';
import { componentsOf, handleOf } from '../components.js';

/** Picks a piece outside the plan: those that can come off now first, each with what still holds it. */
export function ChooseComponent(props: {
  job: Job;
  /** components that lie on the bench */
  off: ReadonlySet<string>;
  open: boolean;
  onClose: () => void;
}) {
  const { job, open, onClose } = props;
  const [find, setFind] = useState('');
  const catalog = useCatalog();
  const { facts } = useAnswers().engine;
  const { wrong, act } = useAct();
  const [, go] = useLocation();
  const own = () =>
    act(async () => {
      const step = freeHandle(job, handleOf(find));
      await write(job.id, 'step', { step, stage: 'teardown', title: find.trim(), state: 'planned' });
      go(`/job/${job.id}/take-apart/${step}`);
    });
  return (
    <Dialog title="What comes off?" open={open} onClose={onClose}>
      <TextField label="Find or name a piece" value={find} onChange={setFind} placeholder="carburetor" />
      <Wrong words={wrong} />
      <ul className="lines">
        {(open ? choicesFor(catalog, job, facts, props.off, find) : []).map(({ component, holds }) => (
          <li key={component.id}>
            <div>
              <b>{component.name}</b>
              {holds.length > 0 && <div className="soft">first: {holds.join(', ')}</div>}
            </div>
            <Button
              look={holds.length === 0 ? 'plain' : 'quiet'}
              onClick={() => go(`/job/${job.id}/take-apart/${component.id}`)}
            >
              Choose
            </Button>
          </li>
        ))}
      </ul>
      {find.trim() !== '' && (
        <Button onClick={() => void own()}>Log “{find.trim()}” as a piece of its own</Button>
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

function choicesFor(
  catalog: Catalog,
  job: Job,
  facts: Facts,
  off: ReadonlySet<string>,
  find: string,
): ComponentChoice[] {
  const all = componentsOf(catalog, job).filter(
    (c) => facts.pieces?.[c.id] !== false && c.comesOffAs !== 'base',
  );
  const name = new Map(all.map((c) => [c.id, c.name]));
  return all
    .filter((c) => !off.has(c.id) && c.name.toLowerCase().includes(find.trim().toLowerCase()))
    .map((component) => ({
      component,
      holds: component.before
        .filter((b) => applies(b.when, facts) !== 'no' && name.has(b.component) && !off.has(b.component))
        .map((b) => name.get(b.component)!),
    }))
    .sort((a, b) => a.holds.length - b.holds.length);
}
