import { byId, measurementAs, roleOf } from '../../../catalog/index.js';
import { clearanceForRatio, ratioAfterMilling } from '../../../engine/index.js';
import {
  classFigures,
  decideSpread,
  decidingU,
  type FacePoint,
  type Flatness,
  flatness,
  straightedgeSurvey,
} from '../../../gauge/index.js';
import { type Origin, to } from '../../../quantity/index.js';
import { type From, quantityOf } from '../../job.js';
import { attempt, type Known, type WorkedFigure } from './bore.js';
import { figureLimit, lengthLine, originOf } from './figure-limit.js';
import { amountOf, inUnit, type ReadingGroup } from './readings.js';
import { settledWith } from './settled-by.js';

/** How a face was read: heights under an indicator over a plate, or gaps under a straightedge. */
export type FaceWay = 'height' | 'gap';
export const faceHandle = (measure: string, way: FaceWay) => `${measure}.${way}`;

export interface FaceAnswer {
  /** that its flatness is a decision about */
  readonly measure: string;
  readonly way: FaceWay;
  readonly phase: 'as-found' | 'after';
  readonly unit: string;
  readonly instruments: readonly From<'instrument'>[];
  readonly asRead: boolean;
  readonly groups: readonly ReadingGroup[];
  /** heights as read, or worked out from the gaps */
  readonly points: readonly FacePoint[];
  /** absent with the reason in `cannot` */
  readonly face?: Flatness;
  readonly figure?: WorkedFigure;
  /** whether the placements of the straightedge agree with each other */
  readonly agree?: string;
  readonly cannot?: string;
}

/** Every face read point by point, as found and after the work. */
export function faceAnswers(known: Known): FaceAnswer[] {
  const groups = known.standingGroups.filter(
    ({ last }) => last.spot !== undefined && last.value.kind === 'length',
  );
  const faces = known.catalog.measurements.filter(({ reads }) => reads === 'face');
  return faces.flatMap(({ id: measure }) =>
    (['height', 'gap'] as const).flatMap((way) =>
      (['as-found', 'after'] as const).flatMap((phase) => {
        const of = groups.filter(
          ({ last }) =>
            last.measure === faceHandle(measure, way) && (last.phase === 'after') === (phase === 'after'),
        );
        return of.length === 0 ? [] : [faceAnswer({ measure, way, phase }, of, known)];
      }),
    ),
  );
}

function faceAnswer(
  which: Pick<FaceAnswer, 'measure' | 'way' | 'phase'>,
  groups: readonly ReadingGroup[],
  known: Known,
): FaceAnswer {
  const unit = groups[0]!.last.value.unit;
  const asRead = groups.some((g) => g.instrument === undefined);
  const instruments = [...new Set(groups.flatMap((g) => g.instrument ?? []))];
  const base = { ...which, unit, groups, asRead, instruments, points: [] };
  const u = asRead ? 0 : Math.max(...groups.map((g) => inUnit(g, unit).u));
  const rejectSpec = byId(known.catalog.measurements).get(which.measure)?.rejectSpec;
  const limit = figureLimit(known.job, rejectSpec, classFigures.faceFlatness, unit);
  const read = which.way === 'height' ? byHeights : byGaps;
  const found = attempt(() => read(groups, unit, u, limit.max));
  if (typeof found === 'string') return { ...base, cannot: found };
  return { ...base, ...found, figure: figureOf(which, found.face, { u, unit, limit, groups, known }) };
}

type Found = Pick<FaceAnswer, 'points' | 'agree'> & { readonly face: Flatness };

function byHeights(groups: readonly ReadingGroup[], unit: string, u: number, max: number): Found {
  const points = groups.map((g) => ({
    x: g.last.spot!.xMm,
    y: g.last.spot!.yMm,
    z: inUnit(g, unit).value,
  }));
  return { points, face: flatness({ points, u, max, unit }) };
}

/** Each line of the straightedge is named by the direction written beside its gaps. */
function byGaps(groups: readonly ReadingGroup[], unit: string, u: number, max: number): Found {
  const places: { x: number; y: number }[] = [];
  const indexOf = ({ xMm, yMm }: { xMm: number; yMm: number }) => {
    const at = places.findIndex((p) => p.x === xMm && p.y === yMm);
    return at >= 0 ? at : places.push({ x: xMm, y: yMm }) - 1;
  };
  const lines = new Map<string, { point: number; gap: number }[]>();
  for (const g of groups) {
    const name = g.last.direction ?? 'straightedge';
    const gap = { point: indexOf(g.last.spot!), gap: inUnit(g, unit).value };
    lines.set(name, [...(lines.get(name) ?? []), gap]);
  }
  const placements = [...lines].map(([name, gaps]) => ({ name, gaps }));
  const survey = straightedgeSurvey({ places, placements, u, max, unit });
  return { points: survey.points, face: survey.flatness, agree: survey.words };
}

interface About {
  readonly u: number;
  readonly unit: string;
  readonly limit: ReturnType<typeof figureLimit>;
  readonly groups: readonly ReadingGroup[];
  readonly known: Known;
}

function figureOf(
  { measure, way }: Pick<FaceAnswer, 'measure' | 'way'>,
  face: Flatness,
  { u, unit, limit, groups, known }: About,
): WorkedFigure {
  const { decision } = face;
  const value = face.minimumZone.width;
  const base = {
    measure,
    title: 'Flatness',
    quantity: amountOf(value, unit, face.u),
    where: `${groups.length} ${way === 'height' ? 'heights' : 'gaps'}`,
    limit,
    ...(decision && { decision }),
  };
  if (decision?.verdict !== 'cannot-decide' || way === 'gap') return base;
  const at = (tool: number) =>
    decideSpread({ spread: value, u: tool, count: groups.length, max: limit.max, unit }).verdict;
  const catalogMeasure = byId(known.catalog.measurements).get(measure);
  const tools = { shop: known.shop, measure: catalogMeasure, kind: 'length' as const };
  return { ...base, settled: settledWith(decidingU(at, u), unit, tools) };
}

/** What taking stock off the head does: volume lost from the chamber, and the compression ratio before and after. */
export interface Milled {
  readonly removedMm: number;
  readonly lostCc: number;
  readonly ratio?: { readonly before: number; readonly after: number; readonly origin: Origin };
  readonly words: string;
}

/**
 * The compression ratio after `removedMm` come off the head face.
 *
 * Source: geometry; the chamber loses a slice as wide as the bore. Validity: a chamber with straight walls of about the
 * bore's outline (overhead valves); beside a side valve the chamber is wider than the bore and loses more.
 * Special cases: without bore and stroke nothing is known; without a ratio on the maker's sheet only the lost volume.
 * Example: 66 × 57 mm at 8.5 : 1 less 0.2 mm → 0.68 cc lost, 8.70 : 1.
 */
export function milled(known: Pick<Known, 'job' | 'catalog'>, removedMm: number): Milled | undefined {
  const size = sizeOf(known);
  if (!size || !(removedMm > 0)) return undefined;
  const recessMm2 = (Math.PI / 4) * size.boreMm ** 2;
  const lostCc = recessMm2 * removedMm * 1e-3;
  const line = known.job.specs.get(roleOf(known.catalog, 'compression-ratio'));
  const before = line?.value?.si;
  if (!line || before === undefined || before <= 1)
    return {
      removedMm,
      lostCc,
      words: `The chamber loses ${lostCc.toFixed(2)} cc. With the compression ratio from the maker’s sheet the new one is worked out.`,
    };
  const sweptCc = recessMm2 * size.strokeMm * 1e-3;
  const clearanceCc = clearanceForRatio(sweptCc, before);
  if (lostCc >= clearanceCc) return { removedMm, lostCc, words: 'That is more than the whole chamber.' };
  const after = ratioAfterMilling({ sweptCc, clearanceCc }, removedMm, recessMm2);
  return {
    removedMm,
    lostCc,
    ratio: { before, after, origin: originOf(line) },
    words: `Compression ratio ${before.toFixed(1)} to ${after.toFixed(2)}: the chamber loses ${lostCc.toFixed(2)} cc of ${clearanceCc.toFixed(1)}.`,
  };
}

/** Bore and stroke as measured for the identity, or by the maker's sheet. */
function sizeOf({
  job,
  catalog,
}: Pick<Known, 'job' | 'catalog'>): { boreMm: number; strokeMm: number } | undefined {
  const measured = job.identities.findLast((i) => i.how === 'measured');
  if (measured)
    return {
      boreMm: to(quantityOf(measured.bore), 'mm'),
      strokeMm: to(quantityOf(measured.stroke), 'mm'),
    };
  const bore = lengthLine(job, measurementAs(catalog, 'bore')?.nominalSpec);
  const stroke = lengthLine(job, roleOf(catalog, 'stroke'));
  if (!bore || !stroke) return undefined;
  return { boreMm: to(quantityOf(bore.value), 'mm'), strokeMm: to(quantityOf(stroke.value), 'mm') };
}
