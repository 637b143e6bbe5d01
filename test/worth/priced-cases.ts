import type { Architecture, Facts } from '../../src/catalog/index.js';

/**
 * What a mechanic who does this every week would write on the ticket. All of it from memory: the minutes are flat-rate
 * habits (everything at the bench for the repair, a pull or two and a minute of running at the end in them; looking,
 * cleaning the outside and talking to the owner not), parts are middling counter prices of 2026 in US dollars. Written
 * down before the program was asked about any of them, and not changed since. Those marked `held` were not looked at
 * while minutes and prices were mended.
 */
export interface PricedCase {
  readonly name: string;
  readonly facts: Facts & { readonly architecture: Architecture };
  /** what was found and is to be repaired */
  readonly repairs: readonly string[];
  /** on the ticket */
  readonly minutes: number;
  readonly parts: number;
  readonly held?: true;
}

export const ratePerHour = 70;

const mower = { architecture: 'side-valve', use: 'mower', shaft: 'vertical' } as const;
const tiller = { architecture: 'side-valve', use: 'tiller', shaft: 'horizontal' } as const;
const generator = { architecture: 'overhead-valve', use: 'generator', shaft: 'horizontal' } as const;
const washer = { architecture: 'overhead-valve', use: 'pump' } as const;
const trimmer = { architecture: 'two-stroke', fuelSystem: 'diaphragm', use: 'trimmer' } as const;
const saw = { architecture: 'two-stroke', fuelSystem: 'diaphragm', use: 'saw' } as const;
const bowl = { fuelSystem: 'float-bowl' } as const;

export const pricedCases: readonly PricedCase[] = [
  {
    name: 'mower that struck a root: new flywheel key',
    facts: { ...mower, struck: 'yes' },
    repairs: ['flywheel-key-part-sheared'],
    minutes: 60,
    parts: 4,
  },
  {
    name: 'side-valve mower: head gasket and a carburetor to clean',
    facts: { ...mower, ...bowl },
    repairs: ['head-gasket-blown', 'main-jet-plugged'],
    minutes: 165,
    parts: 40,
  },
  {
    name: '25 cc trimmer with a scored bore: piston and cylinder',
    facts: trimmer,
    repairs: ['bore-scored'],
    minutes: 100,
    parts: 65,
  },
  {
    name: 'side-valve mower: carburetor stripped and cleaned',
    facts: { ...mower, ...bowl },
    repairs: ['main-jet-plugged'],
    minutes: 55,
    parts: 8,
  },
  {
    name: 'generator that hunts: idle passages of the carburetor',
    facts: { ...generator, ...bowl },
    repairs: ['idle-passages-plugged'],
    minutes: 70,
    parts: 12,
  },
  {
    name: 'pump engine: carburetor past saving, a new one on',
    facts: { ...washer, ...bowl },
    repairs: ['carburetor-past-saving'],
    minutes: 40,
    parts: 45,
    held: true,
  },
  {
    name: 'chain saw: fuel hose and filter',
    facts: saw,
    repairs: ['fuel-hose-perished', 'fuel-filter-blocked'],
    minutes: 35,
    parts: 12,
  },
  {
    name: 'trimmer: diaphragm kit',
    facts: trimmer,
    repairs: ['diaphragm-stiff-or-torn'],
    minutes: 45,
    parts: 14,
  },
  {
    name: 'side-valve mower: dead coil',
    facts: mower,
    repairs: ['coil-dead'],
    minutes: 40,
    parts: 40,
  },
  {
    name: 'generator: dead coil',
    facts: generator,
    repairs: ['coil-dead'],
    minutes: 40,
    parts: 38,
    held: true,
  },
  {
    name: 'overhead-valve pump engine: valves set, cover gasket',
    facts: washer,
    repairs: ['valve-clearance-too-small'],
    minutes: 35,
    parts: 7,
  },
  {
    name: 'overhead-valve generator: head gasket',
    facts: generator,
    repairs: ['head-gasket-blown'],
    minutes: 120,
    parts: 25,
  },
  {
    name: 'side-valve tiller: exhaust valve stuck in its guide',
    facts: tiller,
    repairs: ['exhaust-valve-stuck-open'],
    minutes: 110,
    parts: 22,
  },
  {
    name: 'side-valve mower: valves ground in, carbon out',
    facts: mower,
    repairs: ['valve-not-sealing', 'chamber-carbon'],
    minutes: 180,
    parts: 40,
  },
  {
    name: 'side-valve mower: starter rope',
    facts: { ...mower, starter: 'rope' },
    repairs: ['recoil-rope-or-spring-broken'],
    minutes: 30,
    parts: 7,
  },
  {
    name: 'chain saw: crank seals',
    facts: saw,
    repairs: ['crank-seal-leaking-air'],
    minutes: 120,
    parts: 16,
    held: true,
  },
  {
    name: 'overhead-valve pump engine: bore honed, new rings',
    facts: washer,
    repairs: ['rings-and-bore-worn'],
    minutes: 330,
    parts: 85,
  },
  {
    name: 'side-valve tiller: broken connecting rod, crankpin good',
    facts: tiller,
    repairs: ['connecting-rod-loose-or-broken'],
    minutes: 280,
    parts: 85,
  },
  {
    name: 'old side-valve tiller: points and condenser',
    facts: { ...tiller, ignition: 'points' },
    repairs: ['points-dirty-or-closed'],
    minutes: 65,
    parts: 22,
  },
  {
    name: 'mower that struck a curb: flywheel key and blade adapter',
    facts: { ...mower, struck: 'yes' },
    repairs: ['flywheel-key-part-sheared', 'blade-loose'],
    minutes: 85,
    parts: 35,
  },
  {
    name: 'side-valve tiller: rusty tank, hose and filter',
    facts: { ...tiller, ...bowl },
    repairs: ['tank-rusty-or-dirty', 'fuel-hose-perished', 'fuel-filter-blocked'],
    minutes: 80,
    parts: 25,
    held: true,
  },
  {
    name: 'overhead-valve pump engine: nest in the muffler',
    facts: washer,
    repairs: ['muffler-blocked'],
    minutes: 30,
    parts: 35,
  },
  {
    name: 'mower three years in a shed: fuel, jets, hose, plug and air cleaner',
    facts: { ...mower, ...bowl, storedMonths: 36 },
    repairs: [
      'stale-fuel',
      'main-jet-plugged',
      'fuel-hose-perished',
      'plug-fouled-or-cracked',
      'air-cleaner-choked',
    ],
    minutes: 95,
    parts: 45,
  },
  {
    name: 'trimmer two years on a nail: fuel, hose, diaphragms and plug',
    facts: { ...trimmer, storedMonths: 24 },
    repairs: ['stale-fuel', 'fuel-hose-perished', 'diaphragm-stiff-or-torn', 'plug-fouled-or-cracked'],
    minutes: 70,
    parts: 32,
  },
  {
    name: 'generator: push rod off, valve set',
    facts: generator,
    repairs: ['push-rod-off', 'valve-clearance-too-large'],
    minutes: 55,
    parts: 18,
  },
  {
    name: 'blower: exhaust port and arrestor screen carboned up',
    facts: { architecture: 'two-stroke', fuelSystem: 'diaphragm', use: 'leaf-blower' },
    repairs: ['exhaust-port-carboned', 'spark-arrestor-blocked'],
    minutes: 45,
    parts: 10,
    held: true,
  },
  {
    name: 'side-valve mower: brake drags on the flywheel',
    facts: mower,
    repairs: ['flywheel-brake-dragging'],
    minutes: 40,
    parts: 18,
  },
  {
    name: 'overhead-valve generator: sump joint leaks',
    facts: generator,
    repairs: ['sump-joint-leaking'],
    minutes: 150,
    parts: 22,
  },
];
