import { useState } from 'react';
import { type Body, type FaceMeasure, type FaceWay, faceHandle, type Job } from '../../../job/index.js';
import { useUnits } from '../../data/queries.js';
import { Button } from '../../parts/act.js';
import { Caution } from '../../parts/caution.js';
import { Dialog } from '../../parts/dialog.js';
import { Choices, TextField } from '../../parts/field.js';
import { type FaceGrid, gapGrid, heightGrid } from './face-grid.js';
import type { Typed } from './grid-entry.js';
import { KeepReadings, useReadings } from './keep-readings.js';
import { LengthText, lengthIn, lengthLine, readInUnit, UnitChoice } from './reading-fields.js';

export const faceNames: Readonly<Record<FaceMeasure, string>> = {
  'head-flatness': 'Head or block face',
  'carburetor-flange-flatness': 'Carburetor flange',
};

/** A face read place by place. One gap under a straightedge is a reading like any other: that form stays as it is. */
export function FaceForm(props: {
  job: Job;
  measure: FaceMeasure | undefined;
  onClose: () => void;
  onSingle: () => void;
}) {
  const { measure } = props;
  return (
    <Dialog
      title={measure ? `${faceNames[measure]}, place by place` : ''}
      open={measure !== undefined}
      onClose={props.onClose}
    >
      {measure && <Form {...props} measure={measure} />}
    </Dialog>
  );
}

function Form(props: { job: Job; measure: FaceMeasure; onClose: () => void; onSingle: () => void }) {
  const { job, measure, onClose } = props;
  const metric = useUnits() === 'metric';
  const readings = useReadings();
  const { unit, typed, setTyped } = readings;
  const [way, setWay] = useState<FaceWay>('gap');
  const [across, setAcross] = useState<'3' | '4' | '5'>('3');
  const [length, setLength] = useState(metric ? '100 mm' : '4 in');
  const [width, setWidth] = useState(metric ? '100 mm' : '4 in');
  const [most, setMost] = useState('');
  const [from, setFrom] = useState('');
  const grid = gridOf(way, millimeters(length, unit), millimeters(width, unit), Number(across));
  const asksLimit = measure === 'head-flatness' && !job.specs.get('head-flatness-limit')?.value;

  const lines = (about: Partial<Body<'measurement'>>) => {
    if (!grid) throw new Error('Write how long and how wide the face is.');
    return {
      measurements: readingsOf({ grid, typed, unit, way, measure, about }),
      specs: most.trim() ? [limitSpec(most, unit, from)] : [],
    };
  };

  return (
    <>
      <Caution
        lines={['Every trace of gasket and carbon off first, burrs around the bolt holes stoned away, cold.']}
      />
      <Choices
        label="How"
        value={way}
        onChange={(to) => {
          setWay(to);
          setTyped({});
        }}
        choices={[
          { id: 'gap', label: 'straightedge and feelers' },
          { id: 'height', label: 'plate and indicator' },
        ]}
      />
      <div className="row">
        <Button look="quiet" onClick={props.onSingle}>
          Only the largest gap
        </Button>
      </div>
      <div className="row">
        <UnitChoice value={unit} onChange={readings.setUnit} />
        {way === 'height' && (
          <Choices
            label="Places along"
            value={across}
            onChange={setAcross}
            choices={[
              { id: '3', label: '3' },
              { id: '4', label: '4' },
              { id: '5', label: '5' },
            ]}
          />
        )}
      </div>
      <div className="fields">
        <LengthText label="Face, left to right" value={length} onChange={setLength} unit={unit} />
        <LengthText label="Face, near to far" value={width} onChange={setWidth} unit={unit} />
      </div>
      <p className="soft">
        {way === 'gap'
          ? 'Eight lines, three places each: the thickest leaf that goes under with light drag, 0 where none does. The diagonals see twist.'
          : 'Face up on three jacks over the plate, level or not. Heights at each place; below zero with a minus.'}
      </p>
      {grid && way === 'gap' && (
        <div className="row">
          <Button onClick={() => setTyped(zeros(grid, typed))}>0 in every empty place</Button>
        </div>
      )}
      <KeepReadings job={job} readings={readings} grid={grid} lines={lines} onClose={onClose}>
        {asksLimit && (
          <div className="fields">
            <LengthText
              label={`Most allowed by the maker, ${unit} (may be left out)`}
              value={most}
              onChange={setMost}
              unit={unit}
              hint={unit === 'in' ? '0.003' : '0.08'}
            />
            {most.trim() && (
              <TextField
                label="Where that comes from"
                value={from}
                onChange={setFrom}
                placeholder="maker’s sheet, page 12"
              />
            )}
          </div>
        )}
      </KeepReadings>
    </>
  );
}

function gridOf(way: FaceWay, lengthMm: number | undefined, widthMm: number | undefined, across: number) {
  if (!lengthMm || !widthMm) return undefined;
  return way === 'gap' ? gapGrid(lengthMm, widthMm) : heightGrid(lengthMm, widthMm, across, 3);
}

function millimeters(text: string, unit: string): number | undefined {
  const si = readInUnit(text, unit).value?.si;
  return si !== undefined && si > 0 ? Number((si * 1000).toFixed(2)) : undefined;
}

function zeros({ spots }: FaceGrid, typed: Typed): Typed {
  return Object.fromEntries(spots.map(({ cell }) => [cell, typed[cell]?.trim() ? typed[cell]! : '0']));
}

function readingsOf(given: {
  grid: FaceGrid;
  typed: Typed;
  unit: string;
  way: FaceWay;
  measure: FaceMeasure;
  about: Partial<Body<'measurement'>>;
}): Body<'measurement'>[] {
  const { grid, typed, unit, way, measure, about } = given;
  const title = `${faceNames[measure]}, ${way === 'gap' ? 'gap under the straightedge' : 'height'}`;
  return grid.spots.map(({ cell, xMm, yMm, line }) => {
    const text = typed[cell] ?? '';
    if (!text.trim()) throw new Error(`${cell} is empty. Write 0 where no leaf goes under.`);
    const value = lengthIn(cell, text, unit);
    if (way === 'gap' && value.si < 0) throw new Error(`${cell}: a gap is not below zero.`);
    return {
      measure: faceHandle(measure, way),
      title,
      value,
      place: `${Math.round(xMm)}, ${Math.round(yMm)} mm`,
      spot: { xMm, yMm },
      ...(line && { direction: line }),
      ...about,
    };
  });
}

function limitSpec(text: string, unit: string, from: string): Body<'spec'> {
  if (!from.trim()) throw new Error('Say where the maker’s figure comes from: sheet and page.');
  return lengthLine('head-flatness-limit', 'Head flatness limit', text, unit, from);
}
