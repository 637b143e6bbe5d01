import { EngineError, requireNotNegative, requirePositive, requireWithin } from '../error.js';
import { type CrankGeometry, pistonTravelMm } from '../slider-crank.js';

/** One valve of a four-stroke; angles are crank degrees after firing top, 0 to 720. */
export interface ValveEvent {
  readonly opensDeg: number;
  readonly closesDeg: number;
  /** effective flow area at full lift: the valve's curtain or throat, whichever is less, times its flow coefficient */
  readonly areaMm2: number;
  /** the area rises and falls as a squared sine; `instant` is full area from opening to closing, for checks */
  readonly opening?: 'instant';
}

export interface FourStroke {
  readonly cycle: 'four-stroke';
  readonly intake: ValveEvent;
  readonly exhaust: ValveEvent;
}

/** Ports uncovered by the piston, the same angle either side of bottom. */
export interface TwoStroke {
  readonly cycle: 'two-stroke';
  /** after top */
  readonly exhaustOpensDeg: number;
  readonly transferOpensDeg: number;
  /** effective flow areas, fully uncovered */
  readonly exhaustAreaMm2: number;
  readonly transferAreaMm2: number;
}

export type Exchange = FourStroke | TwoStroke;

/** The openings to the air over one cycle, ready for the integrator. */
export interface Openings {
  readonly cycleDeg: number;
  /** where a pull begins: a four-stroke at the top between exhaust and intake, a two-stroke at the bottom */
  readonly startDeg: number;
  /** degrees before firing top from which valves or ports are shut */
  readonly closedDeg: number;
  /** angles within the cycle where an area changes its law */
  readonly breaksDeg: readonly number[];
  /** effective area of the intake side (two-stroke: transfer ports), m² */
  readonly intakeM2: (cycleAngleDeg: number) => number;
  readonly exhaustM2: (cycleAngleDeg: number) => number;
}

/**
 * Valve angles as a cam card gives them, in degrees before or after the dead centers, as events from firing top.
 * Example: intake opens 15° before top and closes 50° after bottom: 345° and 590°.
 */
export function valveTiming(card: {
  readonly intakeOpensBeforeTop: number;
  readonly intakeClosesAfterBottom: number;
  readonly exhaustOpensBeforeBottom: number;
  readonly exhaustClosesAfterTop: number;
  readonly intakeAreaMm2: number;
  readonly exhaustAreaMm2: number;
}): FourStroke {
  const angle = (field: keyof typeof card) => requireWithin(card[field], -60, 100, field, '°');
  return {
    cycle: 'four-stroke',
    intake: {
      opensDeg: 360 - angle('intakeOpensBeforeTop'),
      closesDeg: 540 + angle('intakeClosesAfterBottom'),
      areaMm2: card.intakeAreaMm2,
    },
    exhaust: {
      opensDeg: 180 - angle('exhaustOpensBeforeBottom'),
      closesDeg: 360 + angle('exhaustClosesAfterTop'),
      areaMm2: card.exhaustAreaMm2,
    },
  };
}

/**
 * Effective flow area of a poppet valve fully open, mm²: 0.6 of the lesser of curtain (π·d·lift) and throat (85 % of
 * d). Source: *Internal Combustion Engine Fundamentals* 1988, §6.3, coefficient from memory. Within about 15 %, which
 * changes a cranking reading by well under 1 %: at pull speed the valve is never what holds the air back.
 * Example: 25 mm, lift 5 mm: 213 mm².
 */
export function valveAreaMm2(diameterMm: number, liftMm: number): number {
  requirePositive(diameterMm, 'diameter');
  requireNotNegative(liftMm, 'lift');
  const throat = (Math.PI / 4) * (0.85 * diameterMm) ** 2;
  return 0.6 * Math.min(Math.PI * diameterMm * liftMm, throat);
}

export function openingsOf(exchange: Exchange, crank: CrankGeometry): Openings {
  return exchange.cycle === 'four-stroke' ? valves(exchange) : ports(exchange, crank);
}

function valves({ intake, exhaust }: FourStroke): Openings {
  checkValve(intake, 'intake');
  checkValve(exhaust, 'exhaust');
  return {
    cycleDeg: 720,
    startDeg: 360,
    closedDeg: 720 - intake.closesDeg,
    breaksDeg: [intake.opensDeg, intake.closesDeg, exhaust.opensDeg, exhaust.closesDeg],
    intakeM2: valveArea(intake),
    exhaustM2: valveArea(exhaust),
  };
}

function checkValve({ opensDeg, closesDeg, areaMm2 }: ValveEvent, field: string): void {
  requireWithin(opensDeg, 0, 720, field, '°');
  requireWithin(closesDeg, opensDeg, 720, field, '°');
  requireNotNegative(areaMm2, field);
}

function valveArea({ opensDeg, closesDeg, areaMm2, opening }: ValveEvent): (angleDeg: number) => number {
  const full = areaMm2 * 1e-6;
  const perDegree = Math.PI / (closesDeg - opensDeg);
  return (angle) => {
    if (angle <= opensDeg || angle >= closesDeg) return 0;
    if (opening === 'instant') return full;
    const s = Math.sin((angle - opensDeg) * perDegree);
    return full * s * s;
  };
}

function ports(exchange: TwoStroke, crank: CrankGeometry): Openings {
  const { exhaustOpensDeg, transferOpensDeg } = exchange;
  requireWithin(exhaustOpensDeg, 60, 179, 'exhaustOpens', '°');
  if (transferOpensDeg < exhaustOpensDeg)
    throw new EngineError(
      `transfer ports open after the exhaust port (${exhaustOpensDeg}°); got ${transferOpensDeg}°.`,
      'transferOpens',
      transferOpensDeg,
    );
  requireWithin(transferOpensDeg, 60, 179, 'transferOpens', '°');
  return {
    cycleDeg: 360,
    startDeg: 180,
    closedDeg: exhaustOpensDeg,
    breaksDeg: [exhaustOpensDeg, 360 - exhaustOpensDeg, transferOpensDeg, 360 - transferOpensDeg],
    intakeM2: portArea(crank, transferOpensDeg, exchange.transferAreaMm2),
    exhaustM2: portArea(crank, exhaustOpensDeg, exchange.exhaustAreaMm2),
  };
}

/** Uncovered height over full height. */
function portArea(crank: CrankGeometry, opensDeg: number, areaMm2: number): (angleDeg: number) => number {
  const edge = pistonTravelMm(crank, opensDeg);
  const perMm = (requireNotNegative(areaMm2, 'portArea') * 1e-6) / (crank.strokeMm - edge);
  return (angle) => Math.max(0, pistonTravelMm(crank, angle) - edge) * perMm;
}
