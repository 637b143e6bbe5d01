import { useState } from 'react';
import { cautionsFor, type Figure, type Measurement } from '../../../catalog/index.js';
import {
  type Body,
  classLimits,
  type Job,
  type Limit,
  limitAnswer,
  poolReadings,
  type Shop,
  sheetLimit,
} from '../../../job/index.js';
import type { Kind } from '../../../quantity/index.js';
import { write } from '../../data/outbox.js';
import { useCatalog, useShop } from '../../data/queries.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { Caution } from '../../parts/caution.js';
import { Dialog } from '../../parts/dialog.js';
import { Choices, TextField } from '../../parts/field.js';
import { readWritten, WrittenField, type WrittenState } from '../../parts/written.js';
import { handleOf } from '../components.js';
import type { Chosen } from './choose.js';
import { atFirst, CircumstanceFields, circumstancesOf, QuickText, saidOrigin } from './reading-fields.js';
import { VerdictWord } from './verdict-word.js';

/** One reading: value, instrument, place, direction, and the limit it is held against with where that comes from. */
export function TakeReading(props: { job: Job; measurement: Chosen | undefined; onClose: () => void }) {
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

interface Bounds {
  readonly min: WrittenState;
  readonly max: WrittenState;
  readonly from: string;
  /** the limit as it stands on the maker's sheet or among the class figures, while it is not changed by hand */
  readonly taken: Limit | undefined;
}

function boundsFrom(limit: Limit | undefined, kind: Kind): Bounds {
  return {
    min: readWritten(limit?.min?.written ?? '', kind),
    max: readWritten(limit?.max?.written ?? '', kind),
    from: limit?.origin.detail ?? '',
    taken: limit,
  };
}

function Form(props: { job: Job; measurement: Measurement | undefined; onClose: () => void }) {
  const catalog = useCatalog();
  const { job, measurement, onClose } = props;
  const shop = useShop();
  const [ownKind, setOwnKind] = useState<Kind>('length');
  const kind = measurement?.kind ?? ownKind;
  const [ownTitle, setOwnTitle] = useState('');
  const [value, setValue] = useState(readWritten('', kind));
  const [place, setPlace] = useState('');
  const [direction, setDirection] = useState('');
  const [about, setAbout] = useState(atFirst);
  const [byHand, setByHand] = useState<Bounds>();
  const sheet = measurement && sheetLimit(job, catalog, measurement, place);
  const bounds = byHand ?? boundsFrom(sheet, kind);
  const { wrong, act } = useAct();
  const valve = measurement?.id.startsWith('valve-clearance') ?? false;

  const bodyNow = (): Body<'measurement'> => {
    if (!value.value) throw new Error('Write the reading with its unit, as the instrument shows it.');
    const title = measurement?.name ?? ownTitle.trim();
    if (!title) throw new Error('Say what was measured.');
    if (valve && !/\b(in|ex)/i.test(place)) throw new Error('Say which valve: intake or exhaust.');
    return {
      measure: measurement?.id ?? handleOf(title),
      title,
      value: value.value,
      ...circumstancesOf(about),
      ...(place.trim() && { place: place.trim() }),
      ...(direction.trim() && { direction: direction.trim() }),
      ...limitOf(bounds),
    };
  };
  const save = (again: boolean) =>
    act(async () => {
      await write(job.id, 'measurement', bodyNow());
      if (again) setValue(readWritten('', kind));
      else onClose();
    });

  return (
    <>
      <Caution
        lines={(measurement?.components ?? [])
          .flatMap((component) => cautionsFor(catalog, { component }))
          .slice(0, 2)
          .map((c) => c.words)}
      />
      {measurement?.note && <p className="soft">{measurement.note}</p>}
      {!measurement && (
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
      <WrittenField label="Reading" kind={kind} state={value} onChange={setValue} hint={hintFor(kind)} />
      {valve ? (
        <Choices
          label="Which valve"
          value={place === 'intake' || place === 'exhaust' ? place : undefined}
          onChange={setPlace}
          choices={[
            { id: 'intake', label: 'intake' },
            { id: 'exhaust', label: 'exhaust' },
          ]}
        />
      ) : (
        <div className="fields">
          <QuickText
            label="Where"
            value={place}
            onChange={setPlace}
            usual={measurement?.places ?? []}
            placeholder="which one, where on it"
          />
          <QuickText
            label="Direction"
            value={direction}
            onChange={setDirection}
            usual={measurement?.directions ?? []}
            placeholder="along, across"
          />
        </div>
      )}
      <CircumstanceFields shop={shop} kind={kind} value={about} onChange={setAbout} />
      <LimitFields
        job={job}
        measurement={measurement}
        kind={kind}
        bounds={bounds}
        fromSheet={sheet}
        onChange={setByHand}
      />
      <Preview shop={shop} body={attempt(bodyNow)} />
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

function attempt<T>(work: () => T): T | undefined {
  try {
    return work();
  } catch {
    return undefined; // what is missing is said when it is kept
  }
}

/** What the reading says while it stands in the form, before it is kept. */
function Preview({ shop, body }: { shop: Shop; body: Body<'measurement'> | undefined }) {
  const catalog = useCatalog();
  const answer =
    body &&
    limitAnswer(poolReadings([{ ...body, entry: '', at: '', by: '' }], shop), body.limit, catalog, shop);
  return (
    <div aria-live="polite">
      {answer?.decision && (
        <div className="card">
          <VerdictWord decision={answer.decision} />
          <div className="soft">{answer.decision.why}</div>
          {answer.settled && <div>{answer.settled.words}</div>}
        </div>
      )}
    </div>
  );
}

function LimitFields(props: {
  job: Job;
  measurement: Measurement | undefined;
  kind: Kind;
  bounds: Bounds;
  fromSheet: Limit | undefined;
  onChange: (bounds: Bounds | undefined) => void;
}) {
  const { job, measurement, kind, bounds, fromSheet, onChange } = props;
  const changed = (some: Partial<Bounds>) => onChange({ ...bounds, taken: undefined, ...some });
  const ofClass = measurement && !fromSheet ? classLimits(measurement, job.intake) : [];
  return (
    <>
      <div className="fields">
        <WrittenField
          label="Not less than"
          kind={kind}
          state={bounds.min}
          onChange={(min) => changed({ min })}
        />
        <WrittenField
          label="Not more than"
          kind={kind}
          state={bounds.max}
          onChange={(max) => changed({ max })}
        />
        <TextField
          label="Where the limit comes from"
          value={bounds.from}
          onChange={(from) => changed({ from })}
          placeholder="maker’s sheet, page 12"
        />
      </div>
      {ofClass.length > 0 && (
        <fieldset className="field">
          <legend className="label">
            No line on the maker’s sheet. Figures of the class, not of this engine:
          </legend>
          <div className="choices">
            {ofClass.map((c) => (
              <Button
                key={c.label}
                aria-pressed={bounds.taken === c.limit}
                onClick={() => onChange(boundsFrom(c.limit, kind))}
              >
                {c.label}
              </Button>
            ))}
          </div>
        </fieldset>
      )}
      {measurement && <WhatFollows measurement={measurement} />}
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
    capacitance: '0.2 µF',
    flow: '120 mL/min',
  })[kind as string] ?? '';

function limitOf({ min, max, from, taken }: Bounds): { limit: Limit } | undefined {
  if (taken) return { limit: taken };
  const wrong = min.wrong ?? max.wrong;
  if (wrong) throw new Error(wrong);
  if (!min.value && !max.value) return undefined;
  if (!from.trim())
    throw new Error('Say where the limit comes from: the maker’s page, a table, your own judgement.');
  return {
    limit: {
      ...(min.value && { min: min.value }),
      ...(max.value && { max: max.value }),
      origin: saidOrigin(from),
    },
  };
}

/** Typical of the class with its source, and what is done about a reading outside. */
function WhatFollows({ measurement: m }: { measurement: Measurement }) {
  const told = [
    [m.typicalNew, m.newWords, 'typical new'] as const,
    [m.typicalReject, m.rejectWords, 'typical reject'] as const,
  ].filter(([figures, words]) => figures.length > 0 || words);
  return (
    <details>
      <summary>What such engines have, and what follows</summary>
      <div className="soft stack tight">
        {told.map(([figures, words, name]) => (
          <p key={name}>
            {name}: {[...figures.map(figureWords), words].filter(Boolean).join('; ')}
          </p>
        ))}
        <p>These are figures of the class, not of this engine. The maker’s sheet comes first.</p>
        <p>Outside: {m.decision}.</p>
      </div>
    </details>
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
