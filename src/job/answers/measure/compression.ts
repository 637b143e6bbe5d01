import { type Facts, measurementAs, roleOf } from '../../../catalog/index.js';
import {
  type ClassifiedCompression,
  type CompressionGeometry,
  classifyCompression,
  type ExpectedCompression,
  expectedCompression,
} from '../../../engine/index.js';
import { of, to } from '../../../quantity/index.js';
import type { From } from '../../job.js';
import { quantityOf } from '../../job.js';
import type { Answers } from '../answers.js';
import { lengthLine } from './figure-limit.js';

/** What a sound engine of this geometry should show on the gauge, and what the reading taken says against it. */
export interface CompressionAnswer {
  readonly expected: ExpectedCompression;
  /** the latest reading, with how strongly it speaks for each outcome of the dry compression check */
  readonly reading?: { readonly measurement: From<'measurement'>; readonly says: ClassifiedCompression };
}

/** What the cranking cycle is asked: plain data, which a worker can be sent. */
export interface CompressionQuestion {
  readonly geometry: CompressionGeometry;
  readonly by: 'rope' | 'starter';
}

/** Undefined while architecture, bore or stroke is not known: then only figures of the class are at hand. */
export function compressionQuestion(
  known: Pick<Answers, 'job' | 'catalog' | 'engine'>,
): CompressionQuestion | undefined {
  const geometry = geometryOf(known);
  return geometry && { geometry, by: known.job.intake.starter === 'electric' ? 'starter' : 'rope' };
}

/** Undefined where `compressionQuestion` is. */
export function compressionOf({
  job,
  catalog,
  compressionQuestion: question,
}: Answers): CompressionAnswer | undefined {
  if (!question) return undefined;
  const expected = expectedFor(question);
  const measurement = job.measurements.findLast((m) => m.measure === roleOf(catalog, 'compression'));
  if (measurement?.value.kind !== 'pressure') return { expected };
  const says = classifyCompression({ pa: measurement.value.si }, expected);
  return { expected, reading: { measurement, says } };
}

function geometryOf({
  job,
  catalog,
  engine,
}: Pick<Answers, 'job' | 'catalog' | 'engine'>): CompressionGeometry | undefined {
  const { architecture } = job.intake;
  const measured = job.identities.findLast((identity) => identity.how === 'measured');
  const boreSpec = measurementAs(catalog, 'bore')?.nominalSpec ?? '';
  const boreMm = mm(lengthLine(job, boreSpec)?.value ?? measured?.bore);
  const strokeMm = mm(lengthLine(job, roleOf(catalog, 'stroke'))?.value ?? measured?.stroke);
  if (!architecture || architecture === 'unknown' || boreMm === undefined || strokeMm === undefined)
    return undefined;
  const compressionRatio = job.specs.get(roleOf(catalog, 'compression-ratio'))?.value?.si;
  return {
    architecture,
    boreMm,
    strokeMm,
    release: releaseOf(engine.facts, roleOf(catalog, 'compression-release')),
    ...(compressionRatio !== undefined && { compressionRatio }),
  };
}

const mm = (w: Parameters<typeof quantityOf>[0] | undefined) => w && to(quantityOf(w), 'mm');

function releaseOf(facts: Facts, variant: string): 'none' | 'fitted' | 'unknown' {
  const seen = facts.variants?.[variant];
  if (seen !== undefined) return seen ? 'fitted' : 'none';
  return facts.architecture === 'two-stroke' ? 'none' : 'unknown';
}

/** Some twenty runs of the cranking cycle for each engine: kept, because the answers are asked again at every tap. */
const known = new Map<string, ExpectedCompression>();

function expectedFor({ geometry, by }: CompressionQuestion): ExpectedCompression {
  const key = JSON.stringify([geometry, by]);
  const found = known.get(key) ?? expectedCompression(geometry, { by });
  if (known.size > 200) known.clear();
  known.set(key, found);
  return found;
}

/** "97 to 210 psi, likely 157" */
export function bandWords({ lowPa, likelyPa, highPa }: ExpectedCompression): string {
  const psi = (pa: number) => Math.round(pa / of(1, 'psi').si);
  return `${psi(lowPa)} to ${psi(highPa)} psi, likely ${psi(likelyPa)}`;
}
