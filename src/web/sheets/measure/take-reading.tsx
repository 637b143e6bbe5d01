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
import { useCatalog } from '../../data/answers.js';
import { useShop } from '../../data/queries.js';
import { FieldError, type FieldsOf, type Given } from '../../form/field.js';
import { Asked, FormBox } from '../../form/form.js';
import { type Form, useForm } from '../../form/use-form.js';
import { Button } from '../../parts/act.js';
import { Caution } from '../../parts/caution.js';
import { Dialog } from '../../parts/dialog.js';
import { handleOf } from '../components.js';
import { AskedAtReading } from './asked-at-reading.js';
import type { Chosen } from './choose.js';
import {
  CircumstanceFields,
  circumstances,
  QuickText,
  requireMeasurable,
  saidOrigin,
  unitBeside,
} from './reading-fields.js';
import { VerdictWord } from './verdict-word.js';

/** One reading: value, instrument, place, direction, and the limit it is held against with where that comes from. */
export function TakeReading(props: { job: Job; measurement: Chosen | undefined; onClose: () => void }) {
  const { measurement } = props;
  return (
    <Dialog
      title={measurement === 'own' ? 'A reading of your own' : (measurement?.name ?? '')}
      open={measurement !== undefined}
      onClose={props.onClose}
    >
      <ReadingForm
        job={props.job}
        measurement={measurement === 'own' ? undefined : measurement}
        onClose={props.onClose}
      />
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

type Reading = Body<'measurement'>;

const isValve = (measurement: Measurement | undefined) =>
  measurement?.reads === 'valve-stem' || measurement?.reads === 'valve-adjuster';

/** What a bound says as it would be typed. */
const boundsOf = (limit: Limit | undefined) => ({
  'limit.min': limit?.min?.written ?? '',
  'limit.max': limit?.max?.written ?? '',
  $from: limit?.origin.detail ?? '',
});

/** The limit as it stands on the maker's sheet for the place that is typed, and how the fields ask for another. */
function limitFields(
  kind: (given: Given) => Kind,
  sheet: (given: Given) => Limit | undefined,
): FieldsOf<Reading> {
  const bound = (name: 'limit.min' | 'limit.max', label: string) => ({
    as: 'quantity' as const,
    kind,
    unit: unitBeside(kind, 'value', 'limit.min', 'limit.max'),
    label,
    begin: (typed: Given) => boundsOf(sheet(typed))[name],
    sets: () => ({ $class: undefined }),
  });
  return {
    'limit.min': bound('limit.min', 'Not less than'),
    'limit.max': bound('limit.max', 'Not more than'),
    $from: {
      as: 'text',
      label: 'Where the limit comes from',
      hint: 'maker’s sheet, page 12',
      begin: (typed: Given) => boundsOf(sheet(typed)).$from,
      sets: () => ({ $class: undefined }),
    },
    $class: { as: 'drawn', label: 'Figure of the class' },
  };
}

function placeFields(measurement: Measurement | undefined): FieldsOf<Reading> {
  if (isValve(measurement))
    return {
      place: {
        as: 'choice',
        label: 'Which valve',
        need: 'Say which valve: intake or exhaust.',
        choices: [
          { id: 'intake', label: 'intake' },
          { id: 'exhaust', label: 'exhaust' },
        ],
      },
    };
  return {
    place: { as: 'text', label: 'Where', hint: 'which one, where on it' },
    direction: { as: 'text', label: 'Direction', hint: 'along, across' },
  };
}

function useReading(job: Job, measurement: Measurement | undefined, onDone: () => void) {
  const catalog = useCatalog();
  const shop = useShop();
  const kind = ({ $kind }: Given) => measurement?.kind ?? ($kind as Kind | undefined) ?? 'length';
  const sheet = ({ place }: Given) =>
    measurement && sheetLimit(job, catalog, measurement, String(place ?? ''));
  const own = () => !measurement;
  return useForm({
    job: job.id,
    kind: 'measurement',
    handle: measurement?.id,
    title: measurement?.name ?? 'A reading of your own',
    fields: {
      title: { as: 'text', label: 'What was measured', need: 'Say what was measured.', when: own },
      $kind: { as: 'choice', label: 'It is a', choices: ownKinds, begin: 'length', when: own },
      value: {
        as: 'quantity',
        kind,
        unit: unitBeside(kind, 'limit.min', 'limit.max'),
        label: 'Reading',
        hint: hintFor(measurement?.kind ?? 'length'),
        need: 'Write the reading with its unit, as the instrument shows it.',
      },
      ...placeFields(measurement),
      ...circumstances(shop, kind),
      ...limitFields(kind, sheet),
    },
    also: (said, given) => {
      requireMeasurable(said);
      const title = measurement?.name ?? said.title ?? '';
      const limit = limitSaid(said, given, sheet(given), measurement && classLimits(measurement, job.intake));
      return { measure: measurement?.id ?? handleOf(title), title, limit };
    },
    onDone,
  });
}

function limitSaid(
  { limit }: Partial<Reading>,
  given: Given,
  sheet: Limit | undefined,
  classes: ReturnType<typeof classLimits> | undefined,
): Limit | undefined {
  const ofClass = classes?.find((c) => c.label === given.$class);
  if (ofClass) return ofClass.limit;
  const asOnSheet = Object.entries(boundsOf(sheet)).every(([name, text]) => given[name] === text);
  if (sheet && asOnSheet) return sheet;
  if (!limit?.min && !limit?.max) return undefined;
  const from = String(given.$from).trim();
  if (from === '')
    throw new FieldError(
      '$from',
      'Say where the limit comes from: the maker’s page, a table, your own judgement.',
    );
  return { ...limit, origin: saidOrigin(from) };
}

/** For another reading of the same kind only the figure is new. */
const stays = [
  ...['title', '$kind', 'place', 'direction', 'instrument', 'phase', 'temperature', 'material'],
  ...['limit.min', 'limit.max', '$from', '$class'],
];

function ReadingForm(props: { job: Job; measurement: Measurement | undefined; onClose: () => void }) {
  const catalog = useCatalog();
  const shop = useShop();
  const { job, measurement, onClose } = props;
  const form = useReading(job, measurement, onClose);
  return (
    <FormBox
      form={form}
      keep="Keep the reading"
      more={
        <>
          <Button onClick={onClose}>Close</Button>
          <Button onClick={() => void form.keep({ stays })}>Keep, and another</Button>
        </>
      }
      before={
        <>
          <Caution
            lines={(measurement?.components ?? [])
              .flatMap((component) => cautionsFor(catalog, { component }))
              .slice(0, 2)
              .map((c) => c.words)}
          />
          {measurement?.note && <p className="soft">{measurement.note}</p>}
          {measurement && <AskedAtReading job={job} measure={measurement.id} />}
        </>
      }
    >
      {!measurement && <Asked form={form} names={['title', '$kind']} />}
      <Asked form={form} names={['value']} />
      {isValve(measurement) ? (
        <Asked form={form} names={['place']} />
      ) : (
        <div className="fields">
          <QuickText form={form} name="place" usual={measurement?.places ?? []} />
          <QuickText form={form} name="direction" usual={measurement?.directions ?? []} />
        </div>
      )}
      <CircumstanceFields form={form} />
      <LimitFields job={job} measurement={measurement} form={form} />
      <Preview shop={shop} body={form.body} />
    </FormBox>
  );
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

function LimitFields(props: { job: Job; measurement: Measurement | undefined; form: Form<Reading> }) {
  const { job, measurement, form } = props;
  const catalog = useCatalog();
  const sheet = measurement && sheetLimit(job, catalog, measurement, form.text('place'));
  const ofClass = measurement && !sheet ? classLimits(measurement, job.intake) : [];
  return (
    <>
      <Asked form={form} names={['limit.min', 'limit.max', '$from']} />
      {ofClass.length > 0 && (
        <fieldset className="field">
          <legend className="label">
            No line on the maker’s sheet. Figures of the class, not of this engine:
          </legend>
          <div className="choices">
            {ofClass.map(({ label, limit }) => (
              <Button
                key={label}
                aria-pressed={form.given.$class === label}
                onClick={() => form.change({ ...boundsOf(limit), $class: label })}
              >
                {label}
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
