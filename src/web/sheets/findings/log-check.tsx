import { type ComponentProps, useState } from 'react';
import { type Catalog, type Check, cautionsFor } from '../../../catalog/index.js';
import type { Job } from '../../../job/index.js';
import { write } from '../../data/outbox.js';
import { useCatalog } from '../../data/queries.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { Caution } from '../../parts/caution.js';
import { Dialog } from '../../parts/dialog.js';
import { ManyChoices, TextField } from '../../parts/field.js';
import { TakePicture } from '../../parts/picture.js';
import { spoiledBy } from './spoils.js';

/** One check: its cautions and what it would destroy come before its outcomes. */
export function LogCheck({
  job,
  check,
  onClose,
}: {
  job: Job;
  check: Check | 'own' | undefined;
  onClose: () => void;
}) {
  return (
    <Dialog
      title={check === 'own' ? 'Something seen' : (check?.title ?? '')}
      open={check !== undefined}
      onClose={onClose}
    >
      {check && (
        <LogForm
          key={check === 'own' ? 'own' : check.id}
          job={job}
          check={check === 'own' ? undefined : check}
          onClose={onClose}
        />
      )}
    </Dialog>
  );
}

function LogForm({ job, check, onClose }: { job: Job; check: Check | undefined; onClose: () => void }) {
  const [title, setTitle] = useState('');
  const [outcomes, setOutcomes] = useState<string[]>([]);
  const [words, setWords] = useState('');
  const [conditions, setConditions] = useState('');
  const [doubtful, setDoubtful] = useState(false);
  const { wrong, act } = useAct();
  const save = (chosen: readonly string[]) =>
    act(async () => {
      const said = check?.title ?? title.trim();
      if (!said) throw new Error('Say what you looked at.');
      await write(job.id, 'observation', {
        check: check?.id,
        title: said,
        outcomes: [...chosen],
        words: words.trim() || undefined,
        conditions: conditions.trim() || undefined,
        doubtful: doubtful || undefined,
      });
      onClose();
    });
  const oneTap = check !== undefined && !check.several;
  return (
    <>
      <Caution lines={before(useCatalog(), job, check)} />
      {!check && (
        <TextField label="What" value={title} onChange={setTitle} placeholder="exhaust side of the shroud" />
      )}
      {check?.note && <p className="soft">{check.note}</p>}
      <TextField
        label="Conditions"
        value={conditions}
        onChange={setConditions}
        placeholder="cold, choke closed, six pulls"
        help="A result without its conditions cannot be compared later."
      />
      <TextField label="In your words" value={words} onChange={setWords} />
      <label className="tick">
        <input type="checkbox" checked={doubtful} onChange={(e) => setDoubtful(e.target.checked)} />
        Doubtful: I would want to see it again
      </label>
      {check?.several && (
        <ManyChoices
          label="What was seen"
          choices={check.outcomes.map((o) => ({ id: o.words, label: o.words }))}
          value={outcomes}
          onChange={setOutcomes}
        />
      )}
      {oneTap && (
        <div className="stack tight">
          <h3>Tap what was seen</h3>
          <div className="row">
            {check.outcomes.map((o) => (
              <Button key={o.id} onClick={() => void save([o.words])}>
                {o.words}
              </Button>
            ))}
          </div>
        </div>
      )}
      <TakePicture
        job={job.id}
        stage="findings"
        when="before"
        caption={check?.title ?? title}
        label="Photograph it"
      />
      <Wrong words={wrong} />
      <div className="row end">
        <Button onClick={onClose}>Close</Button>
        {!oneTap && (
          <Button look="go" onClick={() => void save(outcomes)}>
            Log it
          </Button>
        )}
      </div>
    </>
  );
}

/** Cautions of the check, and what it spoils for checks not made yet. */
function before(
  catalog: Catalog,
  job: Job,
  check: Check | undefined,
): ComponentProps<typeof Caution>['lines'] {
  if (!check) return [];
  const spoils = spoiledBy(catalog, job, check).map((c) => c.title);
  return [
    ...cautionsFor(catalog, { check: check.id }),
    ...(spoils.length > 0 ? [`Look first at what this spoils: ${spoils.join('; ')}.`] : []),
  ];
}
