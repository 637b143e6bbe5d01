import { type ClassFigure, classLimit, classOrigin } from '../../../gauge/index.js';
import type { Origin } from '../../../quantity/index.js';
import { to } from '../../../quantity/index.js';
import type { From, Job } from '../../job.js';
import { quantityOf } from '../../job.js';

/** The most a worked-out figure may be, in the unit of its readings. */
export interface FigureLimit {
  readonly max: number;
  readonly min?: number;
  readonly origin: Origin;
  /** a figure of the class, not of this engine */
  readonly ofClass: boolean;
}

/** The maker's confirmed line; without one the figure of the class, marked so. */
export function figureLimit(
  job: Job,
  spec: string | undefined,
  figure: ClassFigure,
  unit: string,
): FigureLimit {
  const line = lengthLine(job, spec);
  if (line) return { max: to(quantityOf(line.value), unit), origin: originOf(line), ofClass: false };
  return classBound(figure, unit);
}

export function classBound(figure: ClassFigure, unit: string): FigureLimit {
  const { min, max } = classLimit(figure, unit);
  return {
    ...(min !== undefined && { min }),
    max: max ?? Number.POSITIVE_INFINITY,
    origin: classOrigin(figure),
    ofClass: true,
  };
}

type Line = From<'spec'> & { value: NonNullable<From<'spec'>['value']> };

/** A confirmed line of the maker's sheet that is a length. */
export function lengthLine(job: Job, spec: string | undefined): Line | undefined {
  const line = job.specs.get(spec ?? '');
  return line?.value?.kind === 'length' ? (line as Line) : undefined;
}

export function originOf({ origin }: Pick<From<'spec'>, 'origin'>): Origin {
  return { from: origin.from, ...(origin.detail !== undefined && { detail: origin.detail }) };
}
