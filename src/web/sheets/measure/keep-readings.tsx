import { type ReactNode, useRef, useState } from 'react';
import type { Body, Job } from '../../../job/index.js';
import { write } from '../../data/outbox.js';
import { useShop, useUnits } from '../../data/queries.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { GridEntry, type Typed } from './grid-entry.js';
import { atFirst, CircumstanceFields, circumstancesOf, type GaugeUnit } from './reading-fields.js';

/** What a form of many readings becomes in the log; a line of the maker's sheet comes before what is held against it. */
export interface KeptLines {
  readonly specs: readonly Body<'spec'>[];
  readonly measurements: readonly Body<'measurement'>[];
}

/** What a form of many readings holds while it is filled in. */
export function useReadings() {
  const metric = useUnits() === 'metric';
  const [unit, setUnit] = useState<GaugeUnit>(metric ? 'mm' : 'in');
  const [typed, setTyped] = useState<Typed>({});
  const [about, setAbout] = useState(atFirst);
  return { unit, setUnit, typed, setTyped, about, setAbout };
}

/**
 * Many readings in one go, what is the same for all of them, what else is asked, and the button that keeps it all.
 * Every line is made before the first is written, so that a wrong one leaves nothing half kept.
 */
export function KeepReadings(props: {
  job: Job;
  readings: ReturnType<typeof useReadings>;
  grid: { readonly rows: readonly string[]; readonly columns: readonly string[] } | undefined;
  doubt?: (key: string) => string | undefined;
  /** throws an Error in words for what cannot be kept */
  lines: (about: Partial<Body<'measurement'>>) => KeptLines;
  onClose: () => void;
  children?: ReactNode;
}) {
  const { job, readings, grid, onClose } = props;
  const shop = useShop();
  const { wrong, busy, act } = useAct();
  const buttons = useRef<HTMLDivElement>(null);
  const keep = () =>
    act(async () => {
      const { specs, measurements } = props.lines(circumstancesOf(readings.about));
      for (const body of specs) await write(job.id, 'spec', body);
      for (const body of measurements) await write(job.id, 'measurement', body);
      onClose();
    });
  return (
    <>
      {grid && (
        <GridEntry
          rows={grid.rows}
          columns={grid.columns}
          typed={readings.typed}
          unit={readings.unit}
          onChange={readings.setTyped}
          {...(props.doubt && { doubt: props.doubt })}
          onDone={() => buttons.current?.querySelector<HTMLElement>('.go')?.focus()}
        />
      )}
      <CircumstanceFields shop={shop} kind="length" value={readings.about} onChange={readings.setAbout} />
      {props.children}
      <Wrong words={wrong} />
      <div className="row end" ref={buttons}>
        <Button onClick={onClose}>Close</Button>
        <Button look="go" disabled={busy} onClick={() => void keep()}>
          Keep the readings
        </Button>
      </div>
    </>
  );
}
