import type { Told } from './mechanic.js';

const mower = {
  architecture: 'side-valve',
  ignition: 'solid-state',
  fuelSystem: 'float-bowl',
  shaft: 'vertical',
  governor: 'air-vane',
  starter: 'rope',
  use: 'mower',
};
const oldMower = { ...mower, ignition: 'points', storedMonths: 72 };
const tiller = { ...mower, shaft: 'horizontal', governor: 'flyweight', use: 'tiller' };
const ohvMower = { ...mower, architecture: 'overhead-valve', governor: 'flyweight' };
const generator = {
  architecture: 'overhead-valve',
  ignition: 'solid-state',
  fuelSystem: 'float-bowl',
  shaft: 'horizontal',
  governor: 'flyweight',
  starter: 'rope',
  use: 'generator',
};
const pump = { ...generator, use: 'pump' };
const splitter = { ...generator, use: 'splitter' };
const washer = { ...generator, use: 'washer' };
const chipper = { ...generator, use: 'chipper' };
const trimmer = {
  architecture: 'two-stroke',
  ignition: 'solid-state',
  fuelSystem: 'diaphragm',
  shaft: 'horizontal',
  governor: 'none',
  starter: 'rope',
  use: 'trimmer',
};
const saw = { ...trimmer, use: 'saw' };
const blower = { ...trimmer, use: 'blower' };

export interface TestCase extends Told {
  readonly name: string;
}

const of = (
  name: string,
  facts: Told['facts'],
  complaints: string[],
  faults: string[],
  runs?: 'yes' | 'no',
): TestCase => ({
  name,
  facts,
  complaints,
  faults,
  ...(runs && { runs }),
});

/** Invented. The first thirty were written before the links were set, the last ten held back until the end. */
export const cases: readonly TestCase[] = [
  of(
    'carburetor floods into the oil',
    mower,
    ['fuel-pours-out'],
    ['inlet-needle-leaking', 'oil-thinned-by-fuel'],
  ),
  of(
    'black oil and a broken rod',
    mower,
    ['rope-pulls-free'],
    ['connecting-rod-loose-or-broken', 'oil-low-or-black'],
  ),
  of('coil dead', mower, ['cranks-never-fires'], ['coil-dead']),
  of(
    'stop wire chafed through under a nest',
    mower,
    ['cranks-never-fires'],
    ['stop-wire-grounded', 'fins-packed'],
  ),
  of(
    'cylinder rusted solid',
    { ...mower, storedMonths: 60 },
    ['locked-solid'],
    ['engine-locked', 'stale-fuel'],
  ),
  of('will not stop', mower, ['will-not-stop'], ['stop-control-dead'], 'yes'),
  of(
    'low oil keeps the generator dead',
    generator,
    ['cranks-never-fires'],
    ['low-oil-cut-out-active', 'oil-low-or-black'],
  ),
  of('plug black from oil', tiller, ['blue-smoke'], ['rings-and-bore-worn', 'plug-fouled-or-cracked'], 'yes'),
  of(
    'mower struck a stump',
    { ...mower, struck: 'yes' },
    ['cranks-never-fires'],
    ['flywheel-key-part-sheared'],
    'no',
  ),
  of('trimmer with a scored bore', trimmer, ['no-power'], ['bore-scored'], 'yes'),
  of('points engine, condenser gone', oldMower, ['cranks-never-fires'], ['condenser-failed'], 'no'),
  of('points burnt after years', oldMower, ['cranks-never-fires'], ['points-dirty-or-closed', 'stale-fuel']),
  of(
    'old fuel, jet varnished',
    { ...mower, storedMonths: 20, fuelLeftIn: 'yes' },
    ['fires-then-dies'],
    ['stale-fuel', 'main-jet-plugged'],
  ),
  of(
    'generator hunts',
    { ...generator, storedMonths: 30 },
    ['hunts-at-no-load'],
    ['idle-passages-plugged'],
    'yes',
  ),
  of('tank cap does not breathe', tiller, ['dies-after-minutes'], ['tank-cap-vent-blocked'], 'yes'),
  of(
    'oil-soaked cleaner after tipping',
    { ...mower, tipped: 'yes' },
    ['blue-smoke'],
    ['oil-in-cylinder', 'air-cleaner-choked'],
    'yes',
  ),
  of('clearance gone on the side-valve', tiller, ['no-restart-hot'], ['valve-clearance-too-small'], 'yes'),
  of('push rod off', ohvMower, ['spins-like-empty'], ['push-rod-off'], 'no'),
  of(
    'head gasket and a dirty carburetor',
    mower,
    ['no-power'],
    ['head-gasket-blown', 'main-jet-plugged'],
    'yes',
  ),
  of('exhaust valve stuck', ohvMower, ['spins-like-empty'], ['exhaust-valve-stuck-open'], 'no'),
  of(
    'saw with a stiff diaphragm and a cracked line',
    saw,
    ['fires-then-dies'],
    ['diaphragm-stiff-or-torn', 'fuel-hose-perished'],
    'no',
  ),
  of('blower with a leaking crank seal', blower, ['runs-only-on-choke'], ['crank-seal-leaking-air'], 'yes'),
  of('trimmer with a clogged screen', trimmer, ['no-power'], ['spark-arrestor-blocked'], 'yes'),
  of('governor spring off', generator, ['races'], ['governor-spring-off'], 'yes'),
  of('rope broken', mower, ['rope-pulls-free'], ['recoil-rope-or-spring-broken'], 'no'),
  of('brake drags', mower, ['rope-hard-to-pull'], ['flywheel-brake-dragging']),
  of('chipper rotor jammed', chipper, ['locked-solid'], ['rotor-jammed']),
  of('muffler packed by a wasp nest', splitter, ['bogs-under-load'], ['muffler-blocked'], 'yes'),
  of(
    'filter blocked by a rusty tank',
    pump,
    ['bogs-under-load'],
    ['fuel-filter-blocked', 'tank-rusty-or-dirty'],
    'yes',
  ),
  of(
    'choke does not close',
    tiller,
    ['many-pulls-cold'],
    ['choke-not-closing', 'plug-fouled-or-cracked'],
    'yes',
  ),
  of('washer with water in the fuel', washer, ['cranks-never-fires'], ['water-in-fuel'], 'no'),
  of(
    'saw filled without oil',
    { ...saw, wrongFuel: 'yes' },
    ['no-power'],
    ['wrong-fuel', 'bore-scored'],
    'yes',
  ),
  of('mouse nest, overheats', { ...ohvMower, storedMonths: 24 }, ['overheats'], ['fins-packed'], 'yes'),
  of(
    'bent shaft after a curb',
    { ...mower, struck: 'yes' },
    ['knock-or-shaking'],
    ['crankshaft-bent', 'blade-loose'],
    'yes',
  ),
  of('coil fails when hot', generator, ['no-restart-hot'], ['coil-fails-hot'], 'yes'),
  of('intake gasket torn', ohvMower, ['hunts-at-no-load'], ['intake-air-leak'], 'yes'),
  of(
    'shroud gone, fuel hose cracked',
    tiller,
    ['overheats'],
    ['shroud-missing', 'fuel-hose-perished'],
    'yes',
  ),
  of(
    'breather stuck, seals weep',
    splitter,
    ['oil-leaks'],
    ['breather-faulty', 'crank-seal-leaking-oil'],
    'yes',
  ),
  of('needle gummed shut', pump, ['cranks-never-fires'], ['inlet-needle-stuck-shut', 'stale-fuel'], 'no'),
  of('blower exhaust port closed by carbon', blower, ['bogs-under-load'], ['exhaust-port-carboned'], 'yes'),
];
