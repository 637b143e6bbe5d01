import { byId, type Measurement, type Spec } from '../../../catalog/index.js';
import { type Body, type FaceWay, faceHandle, type Job } from '../../../job/index.js';
import { useCatalog } from '../../data/answers.js';
import { useUnits } from '../../data/queries.js';
import { FieldError, type Given, quantityIn } from '../../form/field.js';
import { Asked } from '../../form/form.js';
import { Button } from '../../parts/act.js';
import { Caution } from '../../parts/caution.js';
import { Dialog } from '../../parts/dialog.js';
import { type FaceGrid, gapGrid, heightGrid } from './face-grid.js';
import type { Typed } from './grid-entry.js';
import { KeepReadings, useReadings } from './keep-readings.js';
import { lengthField, lengthIn, lengthLine, lengthOf, unitOf } from './reading-fields.js';

/** What is read, as a heading. */
export const faceName = ({ surface, name }: Measurement): string => surface ?? name;

/** A face read place by place. One gap under a straightedge is a reading like any other: that form stays as it is. */
export function FaceForm(props: {
  job: Job;
  measure: Measurement | undefined;
  onClose: () => void;
  onSingle: () => void;
}) {
  const { measure } = props;
  return (
    <Dialog
      title={measure ? `${faceName(measure)}, place by place` : ''}
      open={measure !== undefined}
      onClose={props.onClose}
    >
      {measure && <Form {...props} measure={measure} />}
    </Dialog>
  );
}

const byHeight = ({ $way }: Given) => $way === 'height';

interface FaceProps {
  readonly job: Job;
  readonly measure: Measurement;
  readonly onClose: () => void;
  readonly onSingle: () => void;
}

function useFace({ job, measure, onClose }: FaceProps) {
  const size = useUnits() === 'metric' ? '100 mm' : '4 in';
  const limit = byId(useCatalog().specs).get(measure.rejectSpec ?? '');
  const asksLimit = limit !== undefined && !job.specs.get(limit.id)?.value;
  return useReadings({
    job,
    handle: `${measure.id} place by place`,
    title: faceName(measure),
    fields: {
      $way: {
        as: 'choice',
        label: 'How',
        begin: 'gap',
        choices: [
          { id: 'gap', label: 'straightedge and feelers' },
          { id: 'height', label: 'plate and indicator' },
        ],
        sets: () => ({ $typed: {} }),
      },
      $across: {
        as: 'choice',
        label: 'Places along',
        begin: '3',
        choices: ['3', '4', '5'].map((id) => ({ id, label: id })),
        when: byHeight,
      },
      $length: lengthField('Face, left to right', { begin: size }),
      $width: lengthField('Face, near to far', { begin: size }),
      $most: lengthField('Most allowed by the maker (may be left out)', {
        hint: size === '4 in' ? '0.003' : '0.08',
        when: () => asksLimit,
      }),
      $from: {
        as: 'text',
        label: 'Where that comes from',
        hint: 'maker’s sheet, page 12',
        when: ({ $most }) => asksLimit && $most !== '',
        need: 'Say where the maker’s figure comes from: sheet and page.',
      },
    },
    lines: (about, given) => {
      const grid = gridOf(given);
      if (!grid) throw new FieldError('$length', 'Write how long and how wide the face is.');
      return {
        measurements: readingsOf(grid, given, measure, about),
        specs: limit ? limitSpecs(given, limit) : [],
      };
    },
    onDone: onClose,
  });
}

function Form(props: FaceProps) {
  const readings = useFace(props);
  const { form, typed } = readings;
  const grid = gridOf(form.given);
  const gaps = !byHeight(form.given);
  return (
    <KeepReadings
      readings={readings}
      grid={grid}
      onClose={props.onClose}
      before={
        <>
          <Caution
            lines={[
              'Every trace of gasket and carbon off first, burrs around the bolt holes stoned away, cold.',
            ]}
          />
          <Asked form={form} names={['$way']} />
          <div className="row">
            <Button look="quiet" onClick={props.onSingle}>
              Only the largest gap
            </Button>
          </div>
          <div className="row">
            <Asked form={form} names={gaps ? ['$unit'] : ['$unit', '$across']} />
          </div>
          <Asked form={form} names={['$length', '$width']} />
          <p className="soft">
            {gaps
              ? 'Eight lines, three places each: the thickest leaf that goes under with light drag, 0 where none does. The diagonals see twist.'
              : 'Face up on three jacks over the plate, level or not. Heights at each place; below zero with a minus.'}
          </p>
          {grid && gaps && (
            <div className="row">
              <Button onClick={() => form.set('$typed', zeros(grid, typed))}>0 in every empty place</Button>
            </div>
          )}
        </>
      }
    >
      <Asked form={form} names={['$most', '$from']} />
    </KeepReadings>
  );
}

function gridOf(given: Given): FaceGrid | undefined {
  const lengthMm = millimeters(String(given.$length), unitOf(given));
  const widthMm = millimeters(String(given.$width), unitOf(given));
  if (!lengthMm || !widthMm) return undefined;
  return byHeight(given)
    ? heightGrid(lengthMm, widthMm, Number(given.$across), 3)
    : gapGrid(lengthMm, widthMm);
}

function millimeters(text: string, unit: string): number | undefined {
  const si = lengthOf(text, unit)?.si;
  return si !== undefined && si > 0 ? Number((si * 1000).toFixed(2)) : undefined;
}

function zeros({ spots }: FaceGrid, typed: Typed): Typed {
  return Object.fromEntries(spots.map(({ cell }) => [cell, typed[cell]?.trim() ? typed[cell]! : '0']));
}

function readingsOf(
  grid: FaceGrid,
  given: Given,
  measure: Measurement,
  about: Partial<Body<'measurement'>>,
): Body<'measurement'>[] {
  const way = given.$way as FaceWay;
  const title = `${faceName(measure)}, ${way === 'gap' ? 'gap under the straightedge' : 'height'}`;
  return grid.spots.map(({ cell, xMm, yMm, line }) => {
    const text = (given.$typed as Typed)[cell] ?? '';
    if (!text.trim()) throw new Error(`${cell} is empty. Write 0 where no leaf goes under.`);
    const value = lengthIn(cell, text, unitOf(given));
    if (way === 'gap' && value.si < 0) throw new Error(`${cell}: a gap is not below zero.`);
    return {
      measure: faceHandle(measure.id, way),
      title,
      value,
      place: `${Math.round(xMm)}, ${Math.round(yMm)} mm`,
      spot: { xMm, yMm },
      ...(line && { direction: line }),
      ...about,
    };
  });
}

function limitSpecs(given: Given, { id, name }: Spec): Body<'spec'>[] {
  const most = String(given.$most);
  if (most.trim() === '') return [];
  const value = quantityIn(most, 'length', unitOf(given));
  return [lengthLine(id, name, value, String(given.$from))];
}
