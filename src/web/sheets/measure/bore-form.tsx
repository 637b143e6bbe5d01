import { useRef, useState } from 'react';
import type { Catalog } from '../../../catalog/index.js';
import { type Body, boreMeasure, type Job, skirtMeasure } from '../../../job/index.js';
import { write } from '../../data/outbox.js';
import { useCatalog, useShop, useUnits } from '../../data/queries.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { Dialog } from '../../parts/dialog.js';
import { Choices, TextField } from '../../parts/field.js';
import { type Cell, cellKey, GridEntry, type Typed } from './grid-entry.js';
import {
  atFirst,
  CircumstanceFields,
  circumstancesOf,
  readInUnit,
  saidOrigin,
  UnitChoice,
} from './reading-fields.js';

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
  const shop = useShop();
  const catalog = useCatalog();
  const metric = useUnits() === 'metric';
  const [unit, setUnit] = useState<'in' | 'mm'>(metric ? 'mm' : 'in');
  const [count, setCount] = useState<'2' | '3' | '4'>('2');
  const [typed, setTyped] = useState<Typed>({});
  const [about, setAbout] = useState(atFirst);
  const [lines, setLines] = useState<Readonly<Record<string, string>>>({});
  const [from, setFrom] = useState('');
  const [skirt, setSkirt] = useState('');
  const { wrong, busy, act } = useAct();
  const keep = useRef<HTMLDivElement>(null);
  const columns = across.slice(0, Number(count));
  const cells: Cell[] = heights.flatMap((row) => columns.map((column) => ({ row, column })));

  const save = () =>
    act(async () => {
      const bodies = readingsOf(catalog, cells, typed, unit, circumstancesOf(about));
      const specs = specsOf(catalog, lines, unit, from);
      for (const body of specs) await write(job.id, 'spec', body);
      for (const body of bodies) await write(job.id, 'measurement', body);
      if (skirt.trim()) await write(job.id, 'measurement', skirtOf(skirt, unit, circumstancesOf(about)));
      onClose();
    });

  const missing = sheetLines.filter(({ spec }) => !job.specs.get(spec)?.value);
  return (
    <>
      <p className="soft">
        Clean and cold. Rock the gauge: the smallest size it shows is the diameter. Enter moves on.
      </p>
      <div className="row">
        <UnitChoice value={unit} onChange={setUnit} />
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
      <GridEntry
        rows={heights}
        columns={columns}
        typed={typed}
        unit={unit}
        onChange={setTyped}
        doubt={(key) => farFromOthers(key, typed, unit)}
        onDone={() => keep.current?.querySelector<HTMLElement>('.go')?.focus()}
      />
      <CircumstanceFields shop={shop} kind="length" value={about} onChange={setAbout} />
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
                  value={lines[spec] ?? ''}
                  onChange={(text) => setLines({ ...lines, [spec]: text })}
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
      <Wrong words={wrong} />
      <div className="row end" ref={keep}>
        <Button onClick={onClose}>Close</Button>
        <Button look="go" disabled={busy} onClick={() => void save()}>
          Keep the readings
        </Button>
      </div>
    </>
  );
}

/** A length that takes the grid's unit when only a number is typed. */
export function LengthText(props: {
  label: string;
  value: string;
  onChange: (text: string) => void;
  unit: string;
  hint?: string;
}) {
  const { wrong } = readInUnit(props.value, props.unit);
  return (
    <TextField
      label={props.label}
      value={props.value}
      onChange={props.onChange}
      wrong={wrong}
      placeholder={props.hint ?? ''}
      inputMode="decimal"
    />
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
    const { value, wrong } = readInUnit(text, unit);
    const doubt = wrong ?? farFromOthers(key, typed, unit);
    if (!value || doubt) throw new Error(`${key}: ${doubt ?? 'not a length'}`);
    return [{ measure: boreMeasure, title: name, value, place: cell.row, direction: cell.column, ...about }];
  });
  if (bodies.length === 0) throw new Error('Write at least one reading.');
  return bodies;
}

function skirtOf(text: string, unit: string, about: Partial<Body<'measurement'>>): Body<'measurement'> {
  const { value, wrong } = readInUnit(text, unit);
  if (!value) throw new Error(`Piston skirt: ${wrong ?? 'not a length'}`);
  return {
    measure: skirtMeasure,
    title: 'Piston skirt diameter',
    value,
    direction: 'across the pin',
    ...about,
  };
}

function specsOf(
  catalog: Catalog,
  lines: Readonly<Record<string, string>>,
  unit: string,
  from: string,
): Body<'spec'>[] {
  const specs = catalog.specs;
  const written = Object.entries(lines).filter(([, text]) => text.trim() !== '');
  if (written.length > 0 && !from.trim())
    throw new Error('Say where the maker’s figures come from: sheet and page.');
  return written.map(([spec, text]) => {
    const { value, wrong } = readInUnit(text, unit);
    const label = specs.find(({ id }) => id === spec)?.name ?? spec;
    if (!value) throw new Error(`${label}: ${wrong ?? 'not a length'}`);
    return { spec, label, line: `${label} ${value.written}`, value, origin: saidOrigin(from) };
  });
}
