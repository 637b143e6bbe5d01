import type { From, Job, Written } from '../job/index.js';
import { boltOf, quantityOf } from '../job/index.js';
import { to } from '../quantity/index.js';
import { type CsvValue, csv } from './csv.js';

/** CSV texts (RFC 4180), one row an entry that stands. Struck entries are left out, as everywhere in a job. */
export interface Tables {
  readonly measurements: string;
  readonly torques: string;
  readonly parts: string;
}

/**
 * A job's figures for a spreadsheet. Each number stands three times: as it was written, as a value in that unit,
 * and as a value in the SI unit of its kind.
 */
export function tables(job: Job): Tables {
  return {
    measurements: csv(
      measurementColumns,
      job.measurements.map((m) => measurementRow(job, m)),
    ),
    torques: csv(
      torqueColumns,
      job.torques.map((t) => torqueRow(job, t)),
    ),
    parts: csv(
      partColumns,
      [...job.parts.values()].map((p) => partRow(job, p)),
    ),
  };
}

const numberColumns = (name: string) => [`${name} written`, `${name}`, `${name} unit`, `${name} SI`];

function numberFields(value: Written | undefined): CsvValue[] {
  if (!value) return ['', '', '', ''];
  // the value as read off the scale: 0.03 in must not become 0.029999999999999999 in
  const read = Number(to(quantityOf(value), value.unit).toPrecision(12));
  return [value.written, read, value.unit, value.si];
}

const originColumns = ['origin', 'origin detail'];
const entryColumns = ['by', 'at', 'entry'];
const entryFields = ({ by, at, entry }: { by: string; at: string; entry: string }) => [by, at, entry];

const measurementColumns = [
  'tag',
  'measure',
  'title',
  'place',
  'direction',
  'phase',
  ...numberColumns('value'),
  ...numberColumns('temperature'),
  ...numberColumns('min'),
  ...numberColumns('max'),
  ...originColumns.map((name) => `limit ${name}`),
  'instrument',
  ...entryColumns,
];

function measurementRow(job: Job, m: From<'measurement'>): CsvValue[] {
  return [
    job.tag,
    m.measure,
    m.title,
    m.place,
    m.direction,
    m.phase,
    ...numberFields(m.value),
    ...numberFields(m.temperature),
    ...numberFields(m.limit?.min),
    ...numberFields(m.limit?.max),
    m.limit?.origin.from,
    m.limit?.origin.detail,
    m.instrument,
    ...entryFields(m),
  ];
}

const torqueColumns = [
  'tag',
  'joint',
  'name',
  'bolt',
  'pass',
  ...numberColumns('set'),
  ...numberColumns('target'),
  ...originColumns.map((name) => `target ${name}`),
  'wrench',
  'result',
  ...entryColumns,
];

function torqueRow(job: Job, t: From<'torque'>): CsvValue[] {
  const joint = job.joints.get(t.joint);
  return [
    job.tag,
    t.joint,
    joint?.name,
    boltOf(t),
    t.pass,
    ...numberFields(t.set),
    ...numberFields(joint?.target),
    joint?.targetOrigin.from,
    joint?.targetOrigin.detail,
    t.wrench ?? joint?.wrench,
    t.result,
    ...entryFields(t),
  ];
}

const partColumns = [
  'tag',
  'part',
  'name',
  'count',
  'state',
  'number',
  'supplier',
  'price',
  'currency',
  'due',
  'words',
  ...entryColumns,
];

function partRow(job: Job, p: From<'part'>): CsvValue[] {
  return [
    job.tag,
    p.part,
    p.name,
    p.count,
    p.state,
    p.number,
    p.supplier,
    p.price?.amount,
    p.price?.currency,
    p.due,
    p.words,
    ...entryFields(p),
  ];
}
