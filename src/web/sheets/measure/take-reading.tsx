import { useState } from 'react';
import { cautionsFor, type Figure, type Measurement } from '../../../catalog/index.js';
import type { Body, From, Job, Limit } from '../../../job/index.js';
import type { Kind } from '../../../quantity/index.js';
import { write } from '../../data/outbox.js';
import { useCatalog, useShop } from '../../data/queries.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { Caution } from '../../parts/caution.js';
import { Dialog } from '../../parts/dialog.js';
import { Choices, SelectField, TextField } from '../../parts/field.js';
import { readWritten, WrittenField } from '../../parts/written.js';
import { handleOf } from '../components.js';

/** One reading: value, instrument, place, direction, and the limit it is held against with where that comes from. */
export function TakeReading(props: {
  job: Job;
  measurement: Measurement | 'own' | undefined;
  onClose: () => void;
}) {
  const { measurement } = props;
  const title = measurement === 'own' ? 'A reading of your own' : (measurement?.name ?? '');
  return (
    <Dialog title={title} open={measurement !== undefined} onClose={props.onClose}>
      {measurement && (
        <Form
          key={title}
          job={props.job}
          measurement={measurement === 'own' ? undefined : measurement}
          onClose={props.onClose}
        />
      )}
    </Dialog>
  );
}

const ownKinds: readonly { id: Kind; label: string }[] = [
  { id: 'length', label: 'length' },
  { id: 'pressure', label: 'pressure' },
  { id: 'rotation', label: 'speed' },
  { id: 'ratio', label: 'percent' },
  { id: 'resistance', label: 'resistance' },
  { id: 'temperature', label: 'temperature' },
  { id: 'volume', label: 'volume' },
  { id: 'torque', label: 'torque' },
];

function Form({
  job,
  measurement,
  onClose,
}: {
  job: Job;
  measurement: Measurement | undefined;
  onClose: () => void;
}) {
  const shop = useShop();
  const [ownKind, setOwnKind] = useState<Kind>('length');
  const kind = measurement?.kind ?? ownKind;
  const [ownTitle, setOwnTitle] = useState('');
  const [value, setValue] = useState(readWritten('', kind));
  const [place, setPlace] = useState('');
  const [direction, setDirection] = useState('');
  const [instrument, setInstrument] = useState('');
  const [phase, setPhase] = useState<'as-found' | 'after'>('as-found');
  const sheetLimit = measurement && limitFromSheet(job, measurement);
  const [min, setMin] = useState(readWritten(sheetLimit?.min?.written ?? '', kind));
  const [max, setMax] = useState(readWritten(sheetLimit?.max?.written ?? '', kind));
  const [limitFrom, setLimitFrom] = useState(sheetLimit?.origin.detail ?? '');
  const { wrong, act } = useAct();

  const save = (again: boolean) =>
    act(async () => {
      if (!value.value) throw new Error('Write the reading with its unit, as the instrument shows it.');
      const title = measurement?.name ?? ownTitle.trim();
      if (!title) throw new Error('Say what was measured.');
      const body: Body<'measurement'> = {
        measure: measurement?.id ?? handleOf(title),
        title,
        value: value.value,
        phase,
        ...(instrument && { instrument }),
        ...(place.trim() && { place: place.trim() }),
        ...(direction.trim() && { direction: direction.trim() }),
        ...(limitOf(min.value, max.value, sheetLimit, limitFrom) ?? {}),
      };
      await write(job.id, 'measurement', body);
      if (again) setValue(readWritten('', kind));
      else onClose();
    });

  const catalog = useCatalog();
  return (
    <>
      <Caution
        lines={(measurement?.components ?? [])
          .flatMap((component) => cautionsFor(catalog, { component }))
          .slice(0, 2)
          .map((c) => c.words)}
      />
      {measurement ? (
        <ClassFigures measurement={measurement} />
      ) : (
        <>
          <TextField label="What was measured" value={ownTitle} onChange={setOwnTitle} />
          <Choices
            label="It is a"
            choices={ownKinds}
            value={ownKind}
            onChange={(k) => {
              setOwnKind(k);
              setValue(readWritten(value.text, k));
            }}
          />
        </>
      )}
      <div className="fields">
        <WrittenField label="Reading" kind={kind} state={value} onChange={setValue} hint={hintFor(kind)} />
        <SelectField
          label="Instrument"
          value={instrument}
          onChange={setInstrument}
          none="not from the shop’s list"
          choices={shop.instruments.map((i) => ({
            id: i.tool,
            label: `${i.name} (± ${i.uncertainty.written})`,
          }))}
          help={
            shop.instruments.length === 0
              ? 'List the shop’s instruments under Shop, and a reading near its limit can be judged.'
              : undefined
          }
        />
        <TextField
          label="Where"
          value={place}
          onChange={setPlace}
          placeholder={measurement?.places?.join(', ') ?? 'top, middle, bottom'}
        />
        <TextField
          label="Direction"
          value={direction}
          onChange={setDirection}
          placeholder={measurement?.directions?.join(', ') ?? 'along the pin, across'}
        />
      </div>
      <Choices
        label="When"
        value={phase}
        onChange={setPhase}
        choices={[
          { id: 'as-found', label: 'as found' },
          { id: 'after', label: 'after the work' },
        ]}
      />
      <div className="fields">
        <WrittenField label="Not less than" kind={kind} state={min} onChange={setMin} />
        <WrittenField label="Not more than" kind={kind} state={max} onChange={setMax} />
        <TextField
          label="Where the limit comes from"
          value={limitFrom}
          onChange={setLimitFrom}
          placeholder="maker’s sheet, page 12"
        />
      </div>
      <Wrong words={wrong} />
      <div className="row end">
        <Button onClick={onClose}>Close</Button>
        <Button onClick={() => void save(true)}>Keep, and another</Button>
        <Button look="go" onClick={() => void save(false)}>
          Keep the reading
        </Button>
      </div>
    </>
  );
}

const hintFor = (kind: Kind) =>
  ({
    length: '2.6802 in',
    pressure: '85 psi',
    rotation: '3600 rpm',
    ratio: '46 %',
    resistance: '3.2 kΩ',
    temperature: '180 °C',
    volume: '120 mL',
    torque: '140 in-lb',
  })[kind as string] ?? '';

/** The limit of the maker's confirmed sheet, when it has a line for this measurement. */
function limitFromSheet(job: Job, m: Measurement): Limit | undefined {
  const reject = m.rejectSpec ? job.specs.get(m.rejectSpec) : undefined;
  const spec = m.spec ? job.specs.get(m.spec) : undefined;
  if (reject?.value) return { max: reject.value, origin: reject.origin };
  if (spec?.value && spec.upTo) return { min: spec.value, max: spec.upTo, origin: spec.origin };
  return undefined;
}

function limitOf(
  min: From<'measurement'>['value'] | undefined,
  max: From<'measurement'>['value'] | undefined,
  fromSheet: Limit | undefined,
  said: string,
): { limit: Limit } | undefined {
  if (!min && !max) return undefined;
  const asOnSheet = fromSheet && fromSheet.min?.si === min?.si && fromSheet.max?.si === max?.si;
  if (!asOnSheet && !said.trim())
    throw new Error('Say where the limit comes from: the maker’s page, a table, your own judgement.');
  const origin = asOnSheet
    ? fromSheet.origin
    : {
        from: /sheet|maker|manual|page/i.test(said) ? ("maker's sheet" as const) : ('rule of thumb' as const),
        detail: said.trim(),
      };
  return { limit: { ...(min && { min }), ...(max && { max }), origin } };
}

/** Typical of the class: an example of size, never this engine's specification. */
function ClassFigures({ measurement: m }: { measurement: Measurement }) {
  const told = [
    [m.typicalNew, m.newWords, 'typical new'] as const,
    [m.typicalReject, m.rejectWords, 'typical reject'] as const,
  ];
  return (
    <div className="soft">
      {told.map(([figures, words, name]) =>
        figures.length > 0 || words ? (
          <p key={name}>
            {name}: {[...figures.map(figureWords), words].filter(Boolean).join('; ')}
          </p>
        ) : null,
      )}
      <p>These are figures of the class, not of this engine. The maker’s sheet comes first.</p>
      <p>{m.decision}</p>
    </div>
  );
}

function figureWords(f: Figure): string {
  const span =
    f.from !== undefined && f.to !== undefined
      ? `${f.from} to ${f.to}`
      : f.to !== undefined
        ? `up to ${f.to}`
        : `from ${f.from}`;
  return `${span} ${f.unit}${f.of ? ` (${f.of})` : ''}, ${f.origin.detail}`;
}
