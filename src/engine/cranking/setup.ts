import { requireNotNegative, requirePositive, requireWithin } from '../error.js';
import { type CrankGeometry, requireCrank } from '../slider-crank.js';
import type { Exchange } from './exchange.js';

/** Effective areas (hole × discharge coefficient), mm². A valve's leak counts only while the valve is down. */
export interface Leaks {
  readonly ringsMm2: number;
  readonly intakeValveMm2: number;
  readonly exhaustValveMm2: number;
  readonly headGasketMm2: number;
}

export const noLeaks: Leaks = { ringsMm2: 0, intakeValveMm2: 0, exhaustValveMm2: 0, headGasketMm2: 0 };

/** A valve held a little open over part of the compression stroke, so that the rope pulls easily. */
export interface Release {
  /** degrees before top */
  readonly opensBeforeTop: number;
  readonly closesBeforeTop: number;
  /** effective */
  readonly areaMm2: number;
  /** flung out of the way above this speed; left out, it always acts */
  readonly outAboveRpm?: number;
}

export interface CrankedEngine extends CrankGeometry {
  /** geometric: (swept + clearance) / clearance */
  readonly compressionRatio: number;
  readonly exchange: Exchange;
  readonly release?: Release;
  readonly leaks: Leaks;
  /** walls round the space over the piston at top, crown included; twice the bore's area when left out */
  readonly chamberMm2?: number;
  /** narrow spaces at wall temperature, round the top land and behind the rings; on top of the ratio; none when left out */
  readonly creviceMl?: number;
}

/** A gauge screwed into the plug hole, its check valve at the plug end. */
export interface CompressionGauge {
  /** hose and gauge beyond the check valve */
  readonly hoseMl: number;
  /** adapter before the check valve: it adds to the clearance volume */
  readonly adapterMl: number;
  /** effective area of the check valve */
  readonly valveMm2: number;
  /** what its spring takes */
  readonly opensAtPa: number;
}

/** What keeps the crank turning against the compression; without it the speed does not sag. */
export interface Sag {
  /** crank, flywheel and what is bolted to them */
  readonly inertiaKgM2: number;
  /** moment of hand or starter at the crank at standstill, less friction; it falls evenly to none at `idleRpm` */
  readonly stallNm: number;
  readonly idleRpm: number;
  /** however hard it goes, it is brought over top no slower than this */
  readonly slowestRpm: number;
}

export interface CrankingConditions {
  readonly ambientPa: number;
  readonly airK: number;
  readonly wallK: number;
  /** the speed of the pull before the compression holds it back, or the starter's */
  readonly rpm: number;
  /** a rope speeds up from a fifth of `rpm` over nearly one turn; a starter turns steadily */
  readonly by: 'rope' | 'starter';
  readonly pulls: number;
  readonly turnsPerPull: number;
  /** on the wall heat transfer: 1 as the correlation gives it, 0 for none */
  readonly heatFactor: number;
  readonly sags?: Sag;
}

/** Throws EngineError naming the field for what is no engine or no pull. */
export function requireCranking(
  engine: CrankedEngine,
  gauge: CompressionGauge,
  conditions: CrankingConditions,
): void {
  requireCrank(engine);
  requireWithin(engine.compressionRatio, 1.5, 20, 'compressionRatio');
  for (const [field, value] of Object.entries(engine.leaks)) requireNotNegative(value, field);
  if (engine.release) requireRelease(engine.release);
  requireNotNegative(engine.chamberMm2 ?? 0, 'chamber');
  requireNotNegative(engine.creviceMl ?? 0, 'crevice');
  requirePositive(gauge.hoseMl, 'hose');
  for (const field of ['adapterMl', 'valveMm2', 'opensAtPa'] as const)
    requireNotNegative(gauge[field], field);
  requireConditions(conditions);
}

function requireRelease({ opensBeforeTop, closesBeforeTop, areaMm2 }: Release): void {
  requireWithin(opensBeforeTop, 0, 180, 'releaseOpens', '° before top');
  requireWithin(closesBeforeTop, 0, opensBeforeTop, 'releaseCloses', '° before top');
  requireNotNegative(areaMm2, 'releaseArea');
}

function requireConditions({
  ambientPa,
  airK,
  wallK,
  rpm,
  pulls,
  turnsPerPull,
  heatFactor,
  sags,
}: CrankingConditions) {
  requireWithin(ambientPa, 40e3, 120e3, 'ambient', 'Pa');
  requireWithin(airK, 220, 340, 'air', 'K');
  requireWithin(wallK, 220, 550, 'wall', 'K');
  requireWithin(rpm, 20, 3000, 'rpm');
  requireWithin(pulls, 1, 100, 'pulls');
  requireWithin(turnsPerPull, 1, 200, 'turnsPerPull');
  requireWithin(heatFactor, 0, 20, 'heatFactor');
  if (!sags) return;
  requirePositive(sags.inertiaKgM2, 'inertia');
  requireNotNegative(sags.stallNm, 'stall');
  requirePositive(sags.idleRpm, 'idle');
  requirePositive(sags.slowestRpm, 'slowest');
}
