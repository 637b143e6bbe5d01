import { useState } from 'react';
import { type Catalog, readPlate } from '../../../catalog/index.js';
import type { Body, From, Job } from '../../../job/index.js';
import { write } from '../../data/outbox.js';
import { useCatalog } from '../../data/queries.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { Choices, ManyChoices, TextField } from '../../parts/field.js';
import { readWritten, WrittenField } from '../../parts/written.js';

type How = 'plate' | 'measured' | 'not-found';

/** What the engine is: read from its plate, or measured when there is none, or looked for in vain. */
export function Identity({ job }: { job: Job }) {
  const [how, setHow] = useState<How>();
  const close = () => setHow(undefined);
  return (
    <section className="section stack tight">
      <h2>Identity</h2>
      {job.identities.map((i) => (
        <Known key={i.entry} identity={i} />
      ))}
      <Choices<How>
        label={job.identities.length === 0 ? 'How is it known?' : 'Say more'}
        value={how}
        onChange={setHow}
        choices={[
          { id: 'plate', label: 'Read a plate' },
          { id: 'measured', label: 'Measure it' },
          { id: 'not-found', label: 'No plate found' },
        ]}
        help="The machine’s plate is not the engine’s plate: write down both, and where each one sits."
      />
      {how === 'plate' && <PlateForm job={job} onDone={close} />}
      {how === 'measured' && <MeasuredForm job={job} onDone={close} />}
      {how === 'not-found' && <LookedForm job={job} onDone={close} />}
    </section>
  );
}

function Known({ identity: i }: { identity: From<'identity'> }) {
  if (i.how === 'not-found') return <p>No plate found; looked {i.looked.join(', ')}.</p>;
  if (i.how === 'measured') {
    return (
      <p>
        Measured{' '}
        <b>
          {i.bore.written} × {i.stroke.written}
        </b>
        {i.shaft && `, shaft ${i.shaft.written}`}. <span className="soft">{i.leavesOpen}</span>
      </p>
    );
  }
  return (
    <div className="card">
      <b>{i.written}</b> <span className="soft">{i.where}</span>
      <ul className="plain">
        {i.reads.map((r) => (
          <li key={r.part}>
            {r.part} <b>{r.value}</b>: {r.meaning}
          </li>
        ))}
      </ul>
    </div>
  );
}

function placesFor({ platePlaces }: Catalog, job: Job): readonly string[] {
  const { architecture } = job.intake;
  return platePlaces
    .filter((p) => !architecture || architecture === 'unknown' || p.architectures.includes(architecture))
    .map((p) => p.where);
}

function PlateForm({ job, onDone }: { job: Job; onDone: () => void }) {
  const catalog = useCatalog();
  const [text, setText] = useState('');
  const [where, setWhere] = useState('');
  const [scheme, setScheme] = useState<string>();
  const { wrong, act } = useAct();
  const readings = text.trim() === '' ? [] : readPlate(catalog, text);
  const chosen = readings.find((r) => r.scheme === scheme);
  const save = () =>
    act(async () => {
      await write(job.id, 'identity', {
        how: 'plate',
        where: where.trim() || 'place not noted',
        written: text.trim(),
        ...(chosen && { scheme: chosen.scheme }),
        reads: (chosen?.parts ?? []).map(({ part, value, meaning }) => ({ part, value, meaning })),
      });
      onDone();
    });
  return (
    <div className="card stack tight">
      <div className="fields">
        <TextField
          label="What stands on it"
          value={text}
          onChange={setText}
          placeholder="letters and digits as stamped"
        />
        <TextField
          label="Where it sits"
          value={where}
          onChange={setWhere}
          placeholder={placesFor(catalog, job)[0] ?? 'on the shroud'}
        />
      </div>
      <details>
        <summary>Where plates hide</summary>
        <ul>
          {placesFor(catalog, job).map((p) => (
            <li key={p}>{p}</li>
          ))}
        </ul>
      </details>
      {text.trim() !== '' && readings.length === 0 && (
        <p className="soft">No plate scheme fits this. It is kept as written, and nothing is read into it.</p>
      )}
      {readings.map((r) => (
        <label className="tick" key={r.scheme} style={{ alignItems: 'start' }}>
          <input
            type="radio"
            name="scheme"
            checked={scheme === r.scheme}
            onChange={() => setScheme(r.scheme)}
          />
          <span>
            <b>{r.name}</b>
            {r.parts.map((p) => (
              <span key={p.part} style={{ display: 'block' }}>
                {p.part} <b>{p.value}</b>: {p.meaning}
              </span>
            ))}
          </span>
        </label>
      ))}
      <Wrong words={wrong} />
      <Button look="go" disabled={text.trim() === ''} onClick={() => void save()}>
        Keep the plate
      </Button>
    </div>
  );
}

/** Bore, stroke and shaft say the displacement and the family, and leave the maker's variant open. */
function MeasuredForm({ job, onDone }: { job: Job; onDone: () => void }) {
  const [bore, setBore] = useState(readWritten('', 'length'));
  const [stroke, setStroke] = useState(readWritten('', 'length'));
  const [shaft, setShaft] = useState(readWritten('', 'length'));
  const { wrong, act } = useAct();
  const volumeCc =
    bore.value && stroke.value ? (Math.PI / 4) * bore.value.si ** 2 * stroke.value.si * 1e6 : undefined;
  const leavesOpen =
    'Maker, model and type stay open: parts are ordered by measured size and laid beside the old one.';
  const save = () =>
    act(async () => {
      if (!bore.value || !stroke.value) throw new Error('Bore and stroke are both needed.');
      const body: Body<'identity'> = {
        how: 'measured',
        bore: bore.value,
        stroke: stroke.value,
        ...(shaft.value && { shaft: shaft.value }),
        leavesOpen: `${volumeCc!.toFixed(0)} cc by bore and stroke. ${leavesOpen}`,
      };
      await write(job.id, 'identity', body);
      onDone();
    });
  return (
    <div className="card stack tight">
      <div className="fields">
        <WrittenField
          label="Bore"
          kind="length"
          state={bore}
          onChange={setBore}
          hint="2-5/16 in or 58.7 mm"
        />
        <WrittenField
          label="Stroke"
          kind="length"
          state={stroke}
          onChange={setStroke}
          hint="44 mm, by a rod through the plug hole"
        />
        <WrittenField label="Shaft diameter" kind="length" state={shaft} onChange={setShaft} hint="3/4 in" />
      </div>
      {volumeCc !== undefined && (
        <p>
          Displacement <b>{volumeCc.toFixed(0)} cc</b> <span className="soft">(π/4 · bore² · stroke)</span>
        </p>
      )}
      <p className="soft">{leavesOpen}</p>
      <Wrong words={wrong} />
      <Button look="go" onClick={() => void save()}>
        Keep the sizes
      </Button>
    </div>
  );
}

function LookedForm({ job, onDone }: { job: Job; onDone: () => void }) {
  const catalog = useCatalog();
  const [looked, setLooked] = useState<readonly string[]>([]);
  const { act } = useAct();
  const save = () =>
    act(async () => {
      await write(job.id, 'identity', { how: 'not-found', looked: [...looked] });
      onDone();
    });
  return (
    <div className="card stack tight">
      <ManyChoices
        stacked
        label="Looked here, found none"
        choices={placesFor(catalog, job).map((id) => ({ id, label: id }))}
        value={looked}
        onChange={setLooked}
      />
      <Button look="go" onClick={() => void save()}>
        Keep that
      </Button>
    </div>
  );
}
