import {
  carbonDioxide,
  dryAir,
  isooctane,
  mixed,
  molarMass,
  nitrogen,
  polynomialsMeetK,
  type Species,
  waterVapor,
} from '../species.js';

const universal = 8.314462618;
/** Internal energies count from here, as heating values do. */
const referenceK = 298.15;

/** A gas or mixture, by mass. */
export interface Gas {
  /** J/(kg·K) */
  readonly gasConstant: number;
  /** at constant volume, J/(kg·K) */
  heat(kelvin: number): number;
  /** internal energy over that at 298.15 K, J/kg */
  energy(kelvin: number): number;
}

/** From the heat capacity of a mole and the gas constant of a kilogram. Example: dry air at 300 K: cv 717 J/(kg·K). */
export function gasOf(species: Species, gasConstant: number): Gas {
  const integral = (a: readonly number[], t: number) =>
    t * (a[0]! - 1 + t * (a[1]! / 2 + t * (a[2]! / 3 + t * (a[3]! / 4 + (t * a[4]!) / 5))));
  const { cold, hot } = species;
  const coldFrom = integral(cold, referenceK);
  const hotFrom = integral(hot, polynomialsMeetK) - integral(cold, polynomialsMeetK) + coldFrom;
  return {
    gasConstant,
    heat(t) {
      const a = t < polynomialsMeetK ? cold : hot;
      return gasConstant * (a[0]! - 1 + t * (a[1]! + t * (a[2]! + t * (a[3]! + t * a[4]!))));
    },
    energy: (t) =>
      gasConstant * (t < polynomialsMeetK ? integral(cold, t) - coldFrom : integral(hot, t) - hotFrom),
  };
}

/** Moles of air to one of isooctane, C8H18 + 12.5 O2, with 3.773 of everything else to one of oxygen. */
const oxygenPerFuel = 12.5;
const restPerOxygen = 3.773;
const airPerFuel = oxygenPerFuel * (1 + restPerOxygen);

/** Air to fuel by mass, isooctane. *Internal Combustion Engine Fundamentals* 1988, eq. 3.6: 15.13. */
export const airFuelRatio = (airPerFuel * molarMass.air) / molarMass.isooctane;

function unburned(): Gas {
  const moles = 1 + airPerFuel;
  const mass = (molarMass.isooctane + airPerFuel * molarMass.air) / moles;
  const species = mixed([
    [isooctane, 1 / moles],
    [dryAir, airPerFuel / moles],
  ]);
  return gasOf(species, universal / mass);
}

function burned(): Gas {
  const [co2, h2o, rest] = [8, 9, oxygenPerFuel * restPerOxygen];
  const moles = co2 + h2o + rest;
  const mass = (co2 * molarMass.carbonDioxide + h2o * molarMass.waterVapor + rest * restMass) / moles;
  const species = mixed([
    [carbonDioxide, co2 / moles],
    [waterVapor, h2o / moles],
    [nitrogen, rest / moles],
  ]);
  return gasOf(species, universal / mass);
}

/** Nitrogen with its argon, kg/mol: what makes air of oxygen's 31.999 g and 3.773 of it. */
const restMass = (molarMass.air * (1 + restPerOxygen) - 0.0319988) / restPerOxygen;

/** What fills the cylinder before and after it burns. */
export interface WorkingGas {
  readonly unburned: Gas;
  readonly burned: Gas;
}

/**
 * Stoichiometric charge of isooctane and air, burned to carbon dioxide, water and nitrogen.
 *
 * Source: polynomials as `species.ts` has them, from memory. Without dissociation: over 2200 K real gas takes up more,
 * so that the hottest is some 100 K too hot; the released part (`classFiring`) stands for it.
 */
export const gasolineCharge: WorkingGas = { unburned: unburned(), burned: burned() };

/** Lower heating value of isooctane, J/kg. *Internal Combustion Engine Fundamentals* 1988, app. D, from memory. */
export const fuelHeatJPerKg = 44.3e6;
