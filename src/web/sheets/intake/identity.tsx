import { useState } from 'react';
import { type Catalog, readPlate } from '../../../catalog/index.js';
import { displacementCc } from '../../../engine/index.js';
import type { Body, From, Job } from '../../../job/index.js';
import { useCatalog } from '../../data/answers.js';
import { Asked, FormBox } from '../../form/form.js';
import { type Form, useFormOf } from '../../form/use-form.js';
import { PhotographPage } from '../../page/photograph-page.js';
import { Choices } from '../../parts/field.js';
import { Picture } from '../../parts/picture.js';

type How = Body<'identity'>['how'];

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

interface AskedHow {
  readonly job: Job;
  readonly onDone: () => void;
}
type Said<H extends How> = Extract<Body<'identity'>, { how: H }>;

function PlateForm({ job, onDone }: AskedHow) {
  const catalog = useCatalog();
  const places = placesFor(catalog, job);
  const readingsOf = (text: unknown) => (text ? readPlate(catalog, String(text)) : []);
  const form = useFormOf<'identity', Said<'plate'>>({
    job: job.id,
    kind: 'identity',
    handle: 'plate',
    title: 'A plate',
    fields: {
      written: {
        as: 'text',
        label: 'What stands on it',
        hint: 'letters and digits as stamped',
        need: 'Write what stands on it.',
      },
      where: { as: 'text', label: 'Where it sits', hint: places[0] ?? 'on the shroud' },
      scheme: { as: 'drawn', label: 'Plate scheme' },
      $seen: { as: 'drawn', label: 'The photographed plate' },
    },
    also: ({ written, where = 'place not noted', scheme }) => {
      const chosen = readingsOf(written).find((r) => r.scheme === scheme);
      return {
        how: 'plate',
        where,
        scheme: chosen?.scheme,
        reads: (chosen?.parts ?? []).map(({ part, value, meaning }) => ({ part, value, meaning })),
      };
    },
    onDone,
  });
  const text = form.text('written');
  const readings = readingsOf(text);
  return (
    <FormBox form={form} keep="Keep the plate" className="card stack tight">
      <PlatePhotograph job={job} form={form} />
      <Asked form={form} names={['written', 'where']} />
      <details>
        <summary>Where plates hide</summary>
        <ul>
          {places.map((p) => (
            <li key={p}>{p}</li>
          ))}
        </ul>
      </details>
      {text !== '' && readings.length === 0 && (
        <p className="soft">No plate scheme fits this. It is kept as written, and nothing is read into it.</p>
      )}
      <Schemes form={form} readings={readings} />
    </FormBox>
  );
}

/** Reads the plate out of its photograph; what was read stands in the form, to be compared with the plate laid straight. */
function PlatePhotograph({ job, form }: { job: Job; form: Form }) {
  return (
    <>
      <PhotographPage
        job={job}
        label="Photograph the plate"
        caption="plate, laid straight"
        onRead={({ picture, lines }) =>
          form.change({ $seen: picture.sha256, written: lines.map((each) => each.text).join(' ') })
        }
      />
      {typeof form.given.$seen === 'string' && (
        <Picture sha256={form.given.$seen} alt="the plate, laid straight" width={640} />
      )}
    </>
  );
}

/** What each scheme of the catalog reads out of it; the person says which one it is. */
function Schemes({ form, readings }: { form: Form; readings: ReturnType<typeof readPlate> }) {
  return readings.map((r) => (
    <label className="tick" key={r.scheme} style={{ alignItems: 'start' }}>
      <input
        type="radio"
        name="scheme"
        checked={form.given.scheme === r.scheme}
        onChange={() => form.set('scheme', r.scheme)}
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
  ));
}

const leavesOpen =
  'Maker, model and type stay open: parts are ordered by measured size and laid beside the old one.';
const bothNeeded = 'Bore and stroke are both needed.';

/** Bore, stroke and shaft say the displacement and the family, and leave the maker's variant open. */
function MeasuredForm({ job, onDone }: AskedHow) {
  const form = useFormOf<'identity', Said<'measured'>>({
    job: job.id,
    kind: 'identity',
    handle: 'measured',
    title: 'Its sizes',
    fields: {
      bore: { as: 'quantity', kind: 'length', label: 'Bore', hint: '2-5/16 in or 58.7 mm', need: bothNeeded },
      stroke: {
        as: 'quantity',
        kind: 'length',
        label: 'Stroke',
        hint: '44 mm, by a rod through the plug hole',
        need: bothNeeded,
      },
      shaft: { as: 'quantity', kind: 'length', label: 'Shaft diameter', hint: '3/4 in' },
    },
    also: (said) => ({ how: 'measured', leavesOpen: `${volumeOf(said)} by bore and stroke. ${leavesOpen}` }),
    onDone,
  });
  const volume = form.body && volumeOf(form.body);
  return (
    <FormBox form={form} keep="Keep the sizes" className="card stack tight">
      <Asked form={form} />
      {volume && (
        <p>
          Displacement <b>{volume}</b> <span className="soft">(π/4 · bore² · stroke)</span>
        </p>
      )}
      <p className="soft">{leavesOpen}</p>
    </FormBox>
  );
}

function volumeOf({ bore, stroke }: Partial<Said<'measured'>>): string {
  const cc = displacementCc({ boreMm: (bore?.si ?? 0) * 1000, strokeMm: (stroke?.si ?? 0) * 1000 });
  return `${cc.toFixed(0)} cc`;
}

function LookedForm({ job, onDone }: AskedHow) {
  const catalog = useCatalog();
  const form = useFormOf<'identity', Said<'not-found'>>({
    job: job.id,
    kind: 'identity',
    handle: 'not-found',
    title: 'No plate found',
    fields: {
      looked: {
        as: 'ticks',
        label: 'Looked here, found none',
        choices: placesFor(catalog, job).map((id) => ({ id, label: id })),
      },
    },
    also: ({ looked = [] }) => ({ how: 'not-found', looked }),
    onDone,
  });
  return <FormBox form={form} keep="Keep that" className="card stack tight" />;
}
