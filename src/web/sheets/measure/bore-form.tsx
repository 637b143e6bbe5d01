import { type Catalog, measurementAs } from '../../../catalog/index.js';
import { type Body, type Job, skirtMeasure } from '../../../job/index.js';
import { useCatalog } from '../../data/answers.js';
import { FieldError, type Given, quantityIn } from '../../form/field.js';
import { Asked } from '../../form/form.js';
import { Dialog } from '../../parts/dialog.js';
import { type Cell, cellKey, type Typed } from './grid-entry.js';
import { KeepReadings, useReadings } from './keep-readings.js';
import { lengthField, lengthIn, lengthLine, lengthOf, unitOf } from './reading-fields.js';

const across = ['along the crankshaft', 'across the crankshaft', 'at 45°', 'at 135°'] as const;
const heights = ['top of ring travel', 'middle', 'bottom'] as const;

/** The bore at three heights and two to four directions in one go. Each reading becomes a line of the log. */
export function BoreForm(props: { job: Job; open: boolean; onClose: () => void }) {
  return (
    <Dialog title="Bore" open={props.open} onClose={props.onClose}>
      <Form job={props.job} onClose={props.onClose} />
    </Dialog>
  );
}

/** Lines of the maker's sheet that a bore is held against. */
function sheetLines(catalog: Catalog) {
  const bore = measurementAs(catalog, 'bore');
  const taper = measurementAs(catalog, 'bore-taper');
  const round = measurementAs(catalog, 'bore-out-of-round');
  const lines = [
    { spec: bore?.nominalSpec, label: 'Standard bore', hint: '2.5625' },
    { spec: bore?.rejectSpec, label: 'Reject above', hint: '2.5655' },
    { spec: taper?.rejectSpec, label: 'Taper, most', hint: '0.002' },
    { spec: round?.rejectSpec, label: 'Out of round, most', hint: '0.0015' },
  ];
  return lines.flatMap(({ spec, ...line }) => (spec === undefined ? [] : [{ spec, ...line }]));
}

const specName = (spec: string) => `$spec ${spec}` as const;
/** Examples are in inches: where the gauge shows millimeters they would mislead. */
const inchHint = (hint: string) => (given: Given) => (unitOf(given) === 'in' ? hint : undefined);
const cellsOf = ({ $count }: Given): Cell[] =>
  heights.flatMap((row) => across.slice(0, Number($count)).map((column) => ({ row, column })));

function useBore(job: Job, onClose: () => void) {
  const catalog = useCatalog();
  const lines = sheetLines(catalog);
  const missing = lines.filter(({ spec }) => !job.specs.get(spec)?.value);
  const readings = useReadings({
    job,
    handle: 'bore',
    title: 'Bore',
    fields: {
      $count: {
        as: 'choice',
        label: 'Directions',
        begin: '2',
        choices: ['2', '3', '4'].map((id) => ({ id, label: id })),
      },
      $skirt: lengthField('Piston skirt, across the pin (may be left out)', {
        hint: inchHint('2.5585'),
      }),
      ...Object.fromEntries(
        missing.map(({ spec, label, hint }) => [
          specName(spec),
          lengthField(label, { hint: inchHint(hint) }),
        ]),
      ),
      $from: { as: 'text', label: 'Where these come from', hint: 'maker’s sheet, page 12' },
    },
    lines: (about, given) => ({
      specs: specsOf(catalog, given),
      measurements: [...readingsOf(catalog, given, about), ...skirtOf(given, about)],
    }),
    onDone: onClose,
  });
  return { readings, missing, noneSaid: missing.length === lines.length };
}

function Form({ job, onClose }: { job: Job; onClose: () => void }) {
  const { readings, missing, noneSaid } = useBore(job, onClose);
  const { form, typed, unit } = readings;
  const columns = across.slice(0, Number(form.given.$count));
  return (
    <KeepReadings
      readings={readings}
      grid={{ rows: heights, columns }}
      doubt={(key) => farFromOthers(key, typed, unit)}
      onClose={onClose}
      before={
        <>
          <p className="soft">
            Clean and cold. Rock the gauge: the smallest size it shows is the diameter. Enter moves on.
          </p>
          <div className="row">
            <Asked form={form} names={['$unit', '$count']} />
          </div>
        </>
      }
    >
      {missing.length > 0 && (
        <details open={noneSaid}>
          <summary>What the maker allows</summary>
          <div className="stack tight">
            <Asked form={form} names={[...missing.map(({ spec }) => specName(spec)), '$from']} />
            <p className="soft">
              Left empty, figures of the class stand in and are marked so: they are not this engine’s.
            </p>
          </div>
        </details>
      )}
      <Asked form={form} names={['$skirt']} />
    </KeepReadings>
  );
}

/** A slip of the pen shows against the middle of the others; a bore that is 5 % off is another engine or another unit. */
function farFromOthers(key: string, typed: Typed, unit: string): string | undefined {
  const si = (text: string | undefined) => (text ? lengthOf(text, unit)?.si : undefined);
  const mine = si(typed[key]);
  const others = Object.entries(typed)
    .filter(([other]) => other !== key)
    .flatMap(([, text]) => si(text) ?? [])
    .sort((a, b) => a - b);
  const middle = others[Math.floor(others.length / 2)];
  if (mine === undefined || middle === undefined) return undefined;
  return Math.abs(mine / middle - 1) > 0.02
    ? 'more than 2 % off the other readings: check unit and figure'
    : undefined;
}

function readingsOf(
  catalog: Catalog,
  given: Given,
  about: Partial<Body<'measurement'>>,
): Body<'measurement'>[] {
  const typed = given.$typed as Typed;
  const unit = unitOf(given);
  const { id: measure, name } = measurementAs(catalog, 'bore')!;
  const bodies = cellsOf(given).flatMap((cell) => {
    const key = cellKey(cell);
    const text = typed[key] ?? '';
    if (text.trim() === '') return [];
    const value = lengthIn(key, text, unit);
    const doubt = farFromOthers(key, typed, unit);
    if (doubt) throw new Error(`${key}: ${doubt}`);
    return [{ measure, title: name, value, place: cell.row, direction: cell.column, ...about }];
  });
  if (bodies.length === 0) throw new Error('Write at least one reading.');
  return bodies;
}

function skirtOf(given: Given, about: Partial<Body<'measurement'>>): Body<'measurement'>[] {
  const text = String(given.$skirt);
  if (text.trim() === '') return [];
  const value = quantityIn(text, 'length', unitOf(given));
  return [
    {
      measure: skirtMeasure,
      title: 'Piston skirt diameter',
      value,
      direction: 'across the pin',
      ...about,
    },
  ];
}

function specsOf(catalog: Catalog, given: Given): Body<'spec'>[] {
  const from = String(given.$from).trim();
  const said = sheetLines(catalog).flatMap(({ spec }) => {
    const text = String(given[specName(spec)] ?? '').trim();
    return text === '' ? [] : [{ spec, value: quantityIn(text, 'length', unitOf(given)) }];
  });
  if (said.length > 0 && !from)
    throw new FieldError('$from', 'Say where the maker’s figures come from: sheet and page.');
  return said.map(({ spec, value }) =>
    lengthLine(spec, catalog.specs.find(({ id }) => id === spec)?.name ?? spec, value, from),
  );
}
