import { requireNotNegative, requirePositive, requireWithin } from './error.js';

/** A heating element as its plate names it. */
export interface Element {
  readonly watts: number;
  readonly volts: number;
}

/**
 * What an element draws at another voltage, W: P·(V/V₀)². Source: Ohm's law; its resistance counts as constant.
 * Bound: hot wire rises a few percent in resistance. Example: 4500 W for 240 V on 208 V: 3380 W.
 */
export function drawnPower({ watts, volts }: Element, at: number): number {
  return (
    requirePositive(watts, 'watts') *
    (requireNotNegative(at, 'volts') / requirePositive(volts, 'ratedVolts')) ** 2
  );
}

/** Single-phase power, W: V·A·power factor. Exact. Example: 120 V, 15 A, 1: 1800 W. */
export function realPower(volts: number, amperes: number, powerFactor: number): number {
  return (
    requirePositive(volts, 'volts') *
    requireNotNegative(amperes, 'amperes') *
    requireWithin(powerFactor, 0.1, 1, 'powerFactor')
  );
}

/** How far the voltage falls under load, as a part of the loaded one. Example: 125 to 118 V: 0.059. */
export function voltageRegulation(withoutLoad: number, loaded: number): number {
  return requirePositive(withoutLoad, 'noLoad') / requirePositive(loaded, 'loaded') - 1;
}

/** Voltages that utilities and appliances agree on, as parts of the nominal one: ANSI C84.1, range A, service. */
export const serviceRange = { least: 0.95, most: 1.05 } as const;
