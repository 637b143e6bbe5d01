import { type CrankGeometry, displacementCc } from '../slider-crank.js';
import {
  classChamberMm2,
  classEngines,
  classExchange,
  classRodMm,
  type EngineArchitecture,
} from './class-engine.js';
import type { Exchange } from './exchange.js';

/** What is known about an engine; what is left out is taken from its class, and the answer says so. */
export interface KnownGeometry {
  readonly architecture: EngineArchitecture;
  readonly boreMm: number;
  readonly strokeMm: number;
  readonly rodMm?: number | undefined;
  readonly compressionRatio?: number | undefined;
  readonly exchange?: Exchange;
}

/** The engine with what is not known of it taken from its class. */
export function likelyEngine(known: KnownGeometry): CrankGeometry & {
  readonly compressionRatio: number;
  readonly chamberMm2: number;
  readonly exchange: Exchange;
} {
  const { architecture, boreMm, strokeMm } = known;
  const crank = { boreMm, strokeMm, rodMm: known.rodMm ?? classRodMm(strokeMm) };
  const compressionRatio = known.compressionRatio ?? classEngines[architecture].compressionRatio;
  const clearanceCc = displacementCc(crank) / (compressionRatio - 1);
  return {
    ...{ ...crank, compressionRatio, chamberMm2: classChamberMm2(architecture, boreMm, clearanceCc) },
    exchange: known.exchange ?? classExchange(architecture, crank),
  };
}

/** Standard uncertainty of a ratio that was measured or taken from the maker's sheet (trade judgement, no source). */
const givenRatioSpread = 0.15;

export const ratioSpread = ({ architecture, compressionRatio }: KnownGeometry): number =>
  compressionRatio === undefined ? classEngines[architecture].ratioSpread : givenRatioSpread;
