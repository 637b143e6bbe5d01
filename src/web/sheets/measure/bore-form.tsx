import { useState } from 'react';
import type { Catalog } from '../../../catalog/index.js';
import { type Body, boreMeasure, type Job, skirtMeasure } from '../../../job/index.js';
import { useCatalog } from '../../data/queries.js';
import { Dialog } from '../../parts/dialog.js';
import { Choices, TextField } from '../../parts/field.js';
import { type Cell, cellKey, type Typed } from './grid-entry.js';
import { KeepReadings, useReadings } from './keep-readings.js';
import { LengthText, lengthIn, lengthLine, readInUnit, UnitChoice } from './reading-fields.js';

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
const sheetLines = [
  { spec: 'bore-standard', label: 'Standard bore', hint: '2.5625' },
  { spec: 'bore-reject', label: 'Reject above', hint: '2.5655' },
  { spec: 'bore-taper-limit', label: 'Taper, most', hint: '0.002' },
  { spec: 'bore-out-of-round-limit', label: 'Out of round, most', hint: '0.0015' },
] as const;

function Form({ job, onClose }: { job: Job; onClose: () => void }) {
  const catalog = useCatalog();
  const readings = useReadings();
  const { unit, typed } = readings;
  const [count, setCount] = useState<'2' | '3' | '4'>('2');
  const [sheet, setSheet] = useState<Readonly<Record<string, string>>>({});
  const [from, setFrom] = useState('');
  const [skirt, setSkirt] = useState('');
  const columns = across.slice(0, Number(count));
  const cells: Cell[] = heights.flatMap((row) => columns.map((column) => ({ row, column })));

  const lines = (about: Partial<Body<'measurement'>>) => {
    const bore = readingsOf(catalog, cells, typed, unit, about);
    return {
      specs: specsOf(catalog, sheet, unit, from),
      measurements: skirt.trim() ? [...bore, skirtOf(skirt, unit, about)] : bore,
    };
  };

  const missing = sheetLines.filter(({ spec }) => !job.specs.get(spec)?.value);
  return (
    <>
      <p className="soft">
        Clean and cold. Rock the gauge: the smallest size it shows is the diameter. Enter moves on.
      </p>
      <div className="row">
        <UnitChoice value={unit} onChange={readings.setUnit} />
        <Choices
          label="Directions"
          value={count}
          onChange={setCount}
          choices={[
            { id: '2', label: '2' },
            { id: '3', label: '3' },
            { id: '4', label: '4' },
          ]}
        />
      </div>
      <KeepReadings
        job={job}
        readings={readings}
        grid={{ rows: heights, columns }}
        doubt={(key) => farFromOthers(key, typed, unit)}
        lines={lines}
        onClose={onClose}
      >
        {missing.length > 0 && (
          <details open={missing.length === sheetLines.length}>
            <summary>What the maker allows</summary>
            <div className="stack tight">
              <div className="fields">
                {missing.map(({ spec, label, hint }) => (
                  <LengthText
                    key={spec}
                    label={`${label}, ${unit}`}
                    hint={unit === 'in' ? hint : ''}
                    unit={unit}
                    value={sheet[spec] ?? ''}
                    onChange={(text) => setSheet({ ...sheet, [spec]: text })}
                  />
                ))}
                <TextField
                  label="Where these come from"
                  value={from}
                  onChange={setFrom}
                  placeholder="maker’s sheet, page 12"
                />
              </div>
              <p className="soft">
                Left empty, figures of the class stand in and are marked so: they are not this engine’s.
              </p>
            </div>
          </details>
        )}
        <LengthText
          label={`Piston skirt, across the pin, ${unit} (may be left out)`}
          hint={unit === 'in' ? '2.5585' : ''}
          unit={unit}
          value={skirt}
          onChange={setSkirt}
        />
      </KeepReadings>
    </>
  );
}

/** A slip of the pen shows against the middle of the others; a bore that is 5 % off is another engine or another unit. */
function farFromOthers(key: string, typed: Typed, unit: string): string | undefined {
  const si = (text: string | undefined) => (text ? readInUnit(text, unit).value?.si : undefined);
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
  cells: readonly Cell[],
  typed: Typed,
  unit: string,
  about: Partial<Body<'measurement'>>,
): Body<'measurement'>[] {
  const name = catalog.measurements.find(({ id }) => id === boreMeasure)!.name;
  const bodies = cells.flatMap((cell) => {
    const key = cellKey(cell);
    const text = typed[key] ?? '';
    if (text.trim() === '') return [];
    const value = lengthIn(key, text, unit);
    const doubt = farFromOthers(key, typed, unit);
    if (doubt) throw new Error(`${key}: ${doubt}`);
    return [{ measure: boreMeasure, title: name, value, place: cell.row, direction: cell.column, ...about }];
  });
  if (bodies.length === 0) throw new Error('Write at least one reading.');
  return bodies;
}

function skirtOf(text: string, unit: string, about: Partial<Body<'measurement'>>): Body<'measurement'> {
  return {
    measure: skirtMeasure,
    title: 'Piston skirt diameter',
    value: lengthIn('Piston skirt', text, unit),
    direction: 'across the pin',
    ...about,
  };
}

function specsOf(
  catalog: Catalog,
  sheet: Readonly<Record<string, string>>,
  unit: string,
  from: string,
): Body<'spec'>[] {
  const written = Object.entries(sheet).filter(([, text]) => text.trim() !== '');
  if (written.length > 0 && !from.trim())
    throw new Error('Say where the maker’s figures come from: sheet and page.');
  return written.map(([spec, text]) =>
    lengthLine(spec, catalog.specs.find(({ id }) => id === spec)?.name ?? spec, text, unit, from),
  );
}
