import { machineLooks } from './machine-looks.js';

/**
 * A mechanic who looks at a machine of which everything is known and says what he sees. What he sees follows from what is
 * wrong, by the trade's knowledge (common practice), written down here without regard to the catalog's links: a dead coil
 * gives no spark, a plugged jet a dry plug, a stuck valve no squeeze.
 */
export interface Told {
  readonly facts: Readonly<Record<string, unknown>>;
  readonly complaints?: readonly string[];
  readonly runs?: 'yes' | 'no';
  readonly faults: readonly string[];
}

export interface Bench {
  readonly runs: boolean;
  readonly locked: boolean;
  readonly has: (...ids: readonly string[]) => boolean;
  readonly facts: Told['facts'];
}

export function benchOf({ faults, facts, runs }: Told): Bench {
  const has = (...ids: readonly string[]): boolean => ids.some((id) => faults.includes(id));
  const locked = has('engine-locked', 'rotor-jammed', 'pump-seized');
  const dead =
    locked ||
    noSpark(has) ||
    noSqueeze(has) ||
    noFuel(has) ||
    has(
      'flywheel-loose',
      'recoil-rope-or-spring-broken',
      'recoil-pawl-slipping',
      'connecting-rod-loose-or-broken',
    );
  return { runs: runs === undefined ? !dead : runs === 'yes', locked, has, facts };
}

type Has = Bench['has'];
const noSpark = (has: Has): boolean =>
  has('coil-dead', 'stop-wire-grounded', 'low-oil-cut-out-active', 'points-dirty-or-closed');
const weakSpark = (has: Has): boolean =>
  has('condenser-failed', 'coil-gap-wrong', 'magnet-weak-or-loose', 'points-plunger-worn');
const noSqueeze = (has: Has): boolean =>
  has('exhaust-valve-stuck-open', 'intake-valve-stuck', 'push-rod-off', 'valve-seat-loose', 'piston-holed');
const ringLeak = (has: Has): boolean =>
  has('rings-stuck', 'rings-and-bore-worn', 'bore-scored', 'piston-holed');
const valveLeak = (has: Has): boolean =>
  has('valve-not-sealing', 'head-gasket-blown', 'head-warped-or-slack', 'valve-clearance-too-small');
export const softSqueeze = (has: Has): boolean => ringLeak(has) || valveLeak(has);
const noFeed = (has: Has): boolean =>
  has('inlet-needle-stuck-shut', 'fuel-tap-or-solenoid-shut', 'fuel-pump-or-pulse-failed');
const noFuel = (has: Has): boolean => noFeed(has) || has('main-jet-plugged', 'diaphragm-stiff-or-torn');
export const lean = (has: Has): boolean =>
  has('idle-passages-plugged', 'intake-air-leak', 'crank-seal-leaking-air', 'carburetor-not-matched');
const floods = (has: Has): boolean => has('inlet-needle-leaking', 'float-faulty');
const rich = (has: Has): boolean => floods(has) || has('choke-stuck-shut', 'air-cleaner-choked');
export const choked = (has: Has): boolean =>
  has('muffler-blocked', 'exhaust-port-carboned', 'spark-arrestor-blocked');

export type Look = (b: Bench) => readonly (string | false | undefined)[];
export const one = (...pairs: readonly (readonly [boolean, string])[]): string[] => {
  const found = pairs.find(([holds]) => holds);
  return found ? [found[1]] : [];
};

/** What is seen beside the sound outcome, which is said where nothing else is. */
const looks: Readonly<Record<string, Look>> = {
  ...machineLooks,
  'walk-round': ({ has }) => [
    has('shroud-missing') && 'shroud-missing',
    has('guard-missing') && 'guard-missing',
    has('fan-blades-broken') && 'fan-blades-broken',
    has('muffler-loose-or-rotten') && 'muffler-loose',
    has('engine-mount-loose') && 'mounts-loose',
    has('blade-loose') && 'blade-loose',
    has('fuel-hose-perished') && 'hose-cracked',
    has('fins-packed') && 'nest-seen',
  ],
  'tank-fuel-in-a-jar': ({ has }) => [
    has('stale-fuel') && 'dark-varnish',
    has('water-in-fuel') && 'layers-or-rust',
    has('wrong-fuel') && 'wrong-fuel',
  ],
  'tank-inside-and-outlet': ({ has }) => [
    has('tank-rusty-or-dirty') && 'rust-or-dirt',
    has('fuel-filter-blocked') && 'screen-clogged',
    has('water-in-fuel') && 'water-at-bottom',
  ],
  'bowl-sample': ({ has }) =>
    has('main-jet-plugged', 'idle-passages-plugged')
      ? ['varnish']
      : noFeed(has) || has('fuel-filter-blocked')
        ? ['dry']
        : [has('water-in-fuel') && 'water-beads'],
  'oil-level': ({ has }) =>
    one([has('oil-in-cylinder', 'oil-thinned-by-fuel'), 'over'], [has('oil-low-or-black'), 'low']),
  'oil-smell-and-feel': ({ has }) => [
    has('oil-thinned-by-fuel') && 'thin',
    has('water-in-oil') && 'milky',
    has('oil-low-or-black') && 'black',
  ],
  'oil-leak-map': ({ has }) => [
    has('crank-seal-leaking-oil') && 'wet-at-shaft',
    has('sump-joint-leaking') && 'wet-at-joint',
    has('valve-cover-leaking') && 'wet-at-cover',
    has('oil-in-cylinder') && 'wet-in-air-cleaner',
  ],
  'air-cleaner-look': ({ has }) => [
    has('air-cleaner-choked') && (has('oil-in-cylinder', 'breather-faulty') ? 'oil-soaked' : 'blocked'),
    has('air-cleaner-not-sealing') && 'missing',
    floods(has) && 'wet-with-fuel',
  ],
  'light-into-fins': ({ has }) => [has('fins-packed') && 'nest'],
  'muffler-outlet-look': ({ has }) => [has('muffler-blocked') && 'blocked'],
  'spark-arrestor-look': ({ has }) => [has('spark-arrestor-blocked') && 'clogged'],
  'slow-pull': ({ has, locked }) =>
    one(
      [locked, 'locked'],
      [
        has(
          'load-still-coupled',
          'flywheel-brake-dragging',
          'oil-in-cylinder',
          'compression-release-faulty',
          'gearbox-binding',
        ),
        'very-stiff',
      ],
      [noSqueeze(has), 'none'],
      [softSqueeze(has), 'soft'],
    ),
  'backward-rebound': ({ has }) =>
    one([noSqueeze(has) || has('head-gasket-blown'), 'none'], [softSqueeze(has), 'some']),
  kickback: ({ has }) =>
    one([has('flywheel-key-part-sheared'), 'every-pull'], [has('valve-clearance-too-large'), 'sometimes']),
  'recoil-engages': ({ has }) => [
    has('recoil-pawl-slipping') && 'slips',
    has('recoil-rope-or-spring-broken') && 'none',
  ],
  'gearbox-by-hand': ({ has }) => [has('gearbox-binding') && 'binds'],
  'turn-uncoupled': ({ has }) =>
    one(
      [has('rotor-jammed', 'pump-seized'), 'locked-when-coupled'],
      [has('load-still-coupled', 'gearbox-binding', 'flywheel-brake-dragging'), 'drags'],
    ),
  'shaft-play': ({ has }) =>
    one([has('connecting-rod-loose-or-broken'), 'knocks'], [has('crank-seal-leaking-oil'), 'clear']),
  'shaft-wobble': ({ has }) => [has('crankshaft-bent') && 'over-three-mm'],
  'shaft-end-runout': ({ has }) => [has('crankshaft-bent') && 'bent'],
  'control-sweep': ({ has }) => [
    has('choke-not-closing', 'control-cable-seized') && 'choke-short',
    has('stop-control-dead') && 'stop-not-reached',
  ],
  'choke-and-cables-by-hand': ({ has }) => [
    has('choke-not-closing') && 'choke-does-not-close',
    has('choke-stuck-shut') && 'choke-stays-shut',
    has('control-cable-seized') && 'cable-seized',
  ],
  'stop-control': ({ has }) => [has('stop-control-dead') && 'no'],
  'governor-springs-look': ({ has }) => [has('governor-spring-off') && 'off'],
  'throttle-opens-at-rest': ({ has }) =>
    one(
      [has('governor-spring-off', 'governor-arm-mis-set', 'air-vane-faulty'), 'not-open'],
      [has('throttle-link-binding'), 'stiff'],
    ),
  'governor-arm-and-vane-look': ({ has }) => [
    has('governor-arm-mis-set') && 'arm-off',
    has('air-vane-faulty') && 'vane-bad',
  ],
  'signs-of-earlier-work': ({ has }) => [
    has('cam-timing-out', 'carburetor-not-matched', 'diaphragm-stack-wrong') && 'odd-bolts',
  ],
  'spark-across-gap': ({ has }) =>
    one(
      [noSpark(has), 'none'],
      [weakSpark(has), 'weak'],
      [has('coil-not-grounded', 'plug-lead-leaking'), 'intermittent'],
    ),
  'spark-stop-wire-off': ({ has }) => [
    has('stop-wire-grounded', 'low-oil-cut-out-active') && !has('coil-dead') && 'returns',
  ],
  'spark-sensor-unplugged': ({ has }) => [has('low-oil-cut-out-active') && 'returns'],
  'known-good-coil': ({ has }) => [
    has('coil-dead', 'coil-gap-wrong', 'coil-not-grounded') && !has('stop-wire-grounded') && 'spark-returns',
  ],
  'spark-at-hot-failure': ({ has }) => [has('coil-fails-hot') && 'none'],
  'plug-tip': ({ has }) =>
    one(
      [has('plug-fouled-or-cracked') && (ringLeak(has) || has('oil-in-cylinder')), 'black-oily'],
      [has('bore-scored') && has('piston-holed'), 'metal-specks'],
      [floods(has) || has('choke-stuck-shut'), 'wet-with-fuel'],
      [noFuel(has) || has('fuel-filter-blocked'), 'dry-clean'],
      [has('oil-in-cylinder', 'rings-and-bore-worn'), 'black-oily'],
      [rich(has) || has('plug-fouled-or-cracked'), 'black-dry'],
      [has('crank-seal-leaking-air', 'intake-air-leak'), 'white-blistered'],
      [noSpark(has), 'wet-with-fuel'],
    ),
  'plug-gap-and-reach': ({ has }) => [
    has('plug-wrong') && 'gap-off',
    has('plug-fouled-or-cracked') && 'cracked',
  ],
  'known-good-plug': ({ has }) => [has('plug-fouled-or-cracked', 'plug-wrong') && 'better'],
  'coil-gap': ({ has }) => [has('coil-gap-wrong') && 'wide'],
  'coil-resistance': ({ has }) => [has('coil-dead') && 'open-or-short'],
  'coil-seat-look': ({ has }) => [has('coil-not-grounded') && 'no-ground'],
  'lead-and-cap': ({ has }) => [has('plug-lead-leaking') && 'open-or-tracking'],
  'stop-wire-resistance': ({ has }) => [
    has('stop-wire-grounded') && 'short',
    has('stop-control-dead') && 'open-at-stop',
  ],
  'key-look': ({ has }) =>
    one([has('flywheel-loose'), 'sheared'], [has('flywheel-key-part-sheared'), 'slight-step']),
  'spark-timing': ({ has }) => [has('flywheel-key-part-sheared', 'flywheel-loose') && 'late'],
  'points-look': ({ has }) => [
    has('points-dirty-or-closed') && 'pitted-or-shut',
    has('points-plunger-worn') && 'oil-in-the-box',
  ],
  'condenser-test': ({ has }) => [has('condenser-failed') && 'short-or-open'],
  'magnet-lift': ({ has }) => [has('magnet-weak-or-loose') && 'weak'],
  'fuel-flow': ({ has }) =>
    one(
      [has('fuel-tap-or-solenoid-shut', 'fuel-pump-or-pulse-failed'), 'none'],
      [has('fuel-filter-blocked', 'tank-cap-vent-blocked'), 'drips'],
      [has('fuel-hose-perished'), 'dribble'],
    ),
  'fuel-flow-cap-loosened': ({ has }) => [has('tank-cap-vent-blocked') && 'better'],
  'fuel-hose-look': ({ has }) => [has('fuel-hose-perished') && 'perished'],
  'tap-and-solenoid': ({ has }) => [has('fuel-tap-or-solenoid-shut') && 'stays-shut'],
  'fuel-pump-pulse': ({ has }) => [has('fuel-pump-or-pulse-failed') && 'does-not-pump'],
  'needle-by-hand': ({ has }) =>
    one(
      [has('inlet-needle-stuck-shut'), 'never-flows'],
      [has('inlet-needle-leaking'), 'weeps'],
      [has('float-faulty'), 'never-stops'],
    ),
  'needle-pressure-hold': ({ has }) => [has('inlet-needle-leaking') && 'slow-loss'],
  'does-it-start': (b) => [!b.runs && (noFuel(b.has) ? 'fires-and-dies' : 'does-not-fire')],
  'fuel-down-the-throat': (b) =>
    one(
      [b.runs, 'carries-on'],
      [noSpark(b.has) || noSqueeze(b.has) || b.has('flywheel-loose'), 'nothing'],
      [noFuel(b.has), 'fires-and-dies'],
      [b.has('flywheel-key-part-sheared'), 'one-pop'],
      [true, 'one-pop'],
    ),
  'choke-response': ({ has }) =>
    one(
      [has('main-jet-plugged', 'diaphragm-stiff-or-torn', 'crank-seal-leaking-air'), 'only-choked'],
      [lean(has), 'smoother-on-half'],
      [rich(has), 'worse'],
    ),
  'primer-press': ({ has }) =>
    one([has('primer-faulty'), 'soft'], [has('inlet-needle-stuck-shut'), 'air-only']),
  'spray-round-joints': ({ has }) => [
    has('intake-air-leak') && 'big-change',
    has('throttle-shaft-worn', 'crank-seal-leaking-air') && !has('intake-air-leak') && 'slight',
  ],
  'diaphragm-flex': ({ has }) => [
    has('diaphragm-stiff-or-torn') && 'stiff',
    has('diaphragm-stack-wrong') && 'wrong-stack',
  ],
  'float-shake': ({ has }) => [has('float-faulty') && 'liquid-inside'],
  'jet-sight-through': ({ has }) => [has('main-jet-plugged') && 'closed'],
  'spray-through-passages': ({ has }) =>
    has('carburetor-past-saving')
      ? ['dead-after-soak']
      : [has('idle-passages-plugged') && 'idle-weak-or-none', has('main-jet-plugged') && 'main-weak-or-none'],
  'mixture-screw-turns': ({ has }) => [has('mixture-screw-mis-set') && 'mis-set'],
  'carburetor-numbers': ({ has }) => [has('carburetor-not-matched') && 'not-matched'],
  'intake-joints-look': ({ has }) => [
    has('intake-air-leak') && 'joint-leaks',
    has('throttle-shaft-worn') && 'shaft-loose',
    has('carburetor-past-saving') && 'body-corroded',
    has('reed-valve-standing-open') && 'reed-stands-open',
  ],
  'idle-screw-response': ({ has }) => [lean(has) && 'none'],
  'tank-vent-pressure': ({ has }) => [has('tank-cap-vent-blocked') && 'holds'],
  'compression-dry': ({ has }) =>
    one([noSqueeze(has), 'near-zero'], [softSqueeze(has), 'down-forty-percent']),
  'compression-after-oil': ({ has }) => [ringLeak(has) && !noSqueeze(has) && 'large-rise'],
  'leak-down': ({ has }) => one([noSqueeze(has), 'will-not-hold'], [softSqueeze(has), 'high']),
  'leak-down-listen': ({ has }) => [
    ringLeak(has) && 'breather-or-filler',
    has('intake-valve-stuck') && 'carburetor',
    has('exhaust-valve-stuck-open', 'valve-not-sealing', 'valve-clearance-too-small') && 'exhaust',
    has('head-gasket-blown', 'head-warped-or-slack') && 'head-edge',
  ],
  'crankcase-vacuum': ({ has }) =>
    one([ringLeak(has), 'pressure'], [has('breather-faulty', 'crank-seal-leaking-oil'), 'zero']),
  'valve-clearance': ({ has }) => [
    has('valve-clearance-too-small') && 'nil',
    has('valve-clearance-too-large') && 'wide',
  ],
  'valves-move': ({ has }) =>
    one(
      [has('exhaust-valve-stuck-open'), 'exhaust-stuck'],
      [has('intake-valve-stuck'), 'intake-stuck'],
      [has('push-rod-off'), 'push-rod-off-its-seat'],
      [has('cam-timing-out'), 'change-over-off-top'],
      [has('cam-lobe-worn'), 'less-lift'],
    ),
  'head-bolts-tried': ({ has }) => [has('head-warped-or-slack') && 'slack'],
  'camera-in-cylinder': ({ has }) => [
    has('chamber-carbon') && 'carbon',
    has('bore-scored') && 'scoring',
    has('piston-holed') && 'hole',
    has('engine-locked') && 'rust',
    has('oil-in-cylinder') && 'liquid',
  ],
  'liquid-at-plug-hole': ({ has, locked }) =>
    one([has('oil-in-cylinder'), 'oil-comes-out'], [locked, 'still-locked']),
  'head-edge': ({ has }) => [has('head-gasket-blown', 'head-warped-or-slack') && 'blown'],
  'head-gasket-look': ({ has }) => [
    has('head-gasket-blown') && 'gasket-burnt',
    has('head-warped-or-slack') && 'head-not-flat',
    has('valve-not-sealing') && 'valve-burnt',
    has('valve-seat-loose') && 'seat-loose',
    has('chamber-carbon') && 'much-carbon',
  ],
  'inside-the-case-look': ({ has }) => [
    has('cam-timing-out') && 'marks-out',
    has('cam-lobe-worn') && 'lobe-worn',
    has('compression-release-faulty') && 'release-stuck',
    has('governor-gear-failed') && 'governor-gear-broken',
    has('oil-slinger-failed') && 'slinger-broken',
    has('connecting-rod-loose-or-broken') && 'rod-loose',
  ],
  'piston-and-bore-look': ({ has }) => [
    has('rings-stuck') && 'rings-stuck',
    has('rings-and-bore-worn') && 'worn',
    has('bore-scored') && 'scored',
    has('piston-holed') && 'holed',
  ],
  'piston-through-exhaust-port': ({ has }) => [
    has('bore-scored') && 'scored',
    has('rings-stuck') && 'rings-stuck',
    has('exhaust-port-carboned') && 'port-carboned',
    has('rings-and-bore-worn') && 'skirt-worn',
  ],
  'rod-on-piston': ({ has }) => [has('connecting-rod-loose-or-broken') && 'does-not-move'],
  'sealed-case-pressure': ({ has }) => [has('crank-seal-leaking-air', 'intake-air-leak') && 'fast'],
  'case-bubbles': ({ has }) => [
    has('crank-seal-leaking-air') && 'at-a-seal',
    has('intake-air-leak') && 'at-the-intake',
  ],
  'breather-blow': ({ has }) => [has('breather-faulty') && 'blocked'],
  'muffler-off-trial': ({ has }) => [choked(has) && 'better'],
  'head-temperature': ({ has }) => [has('fins-packed', 'shroud-missing') && 'thirty-degrees-hotter'],
  'listen-for-spit': ({ has }) => [
    has('intake-valve-stuck', 'reed-valve-standing-open', 'cam-timing-out') && 'spit-at-intake',
    has('flywheel-key-part-sheared', 'muffler-loose-or-rotten') && 'bang-in-exhaust',
    has('head-gasket-blown') && 'chirp-at-head',
  ],
  smoke: ({ has }) => [
    has('rings-and-bore-worn', 'rings-stuck', 'oil-in-cylinder', 'breather-faulty') && 'steady-blue',
    rich(has) && 'black',
  ],
  'governed-speed': ({ has }) =>
    one(
      [has('governor-gear-failed'), 'runaway'],
      [has('governor-spring-off', 'governor-arm-mis-set', 'air-vane-faulty'), 'high'],
      [has('control-cable-seized'), 'low'],
    ),
  'speed-steadiness': ({ has }) =>
    one(
      [has('governor-spring-off', 'governor-arm-mis-set'), 'violent'],
      [lean(has) || has('main-jet-plugged', 'throttle-link-binding'), 'constant-hunt'],
    ),
  'throttle-held-by-hand': ({ has }) => [(lean(has) || has('main-jet-plugged')) && 'still-surges'],
  'hot-restart': ({ has }) => [has('coil-fails-hot', 'valve-clearance-too-small') && 'none'],
  'throttle-snap': ({ has }) => [(lean(has) || has('mixture-screw-mis-set')) && 'stumbles'],
  'sounding-rod': ({ has }) => [
    has('connecting-rod-loose-or-broken') && 'knock',
    has('valve-clearance-too-large') && 'tick',
  ],
  'minutes-to-failure': ({ has }) =>
    one([has('tank-cap-vent-blocked'), 'cap-cures'], [has('coil-fails-hot'), 'cooling-cures']),
  'first-oil-look': ({ has }) =>
    one(
      [has('connecting-rod-loose-or-broken', 'governor-gear-failed'), 'chips'],
      [has('rings-and-bore-worn'), 'glitter'],
    ),
  'fuel-leak-card': ({ has }) => [
    has('bowl-seal-leaking') && 'at-bowl',
    has('fuel-hose-perished') && 'at-hose',
    floods(has) && 'from-air-horn',
  ],
  'electric-crank': ({ has, locked }) =>
    one(
      [has('starter-pinion-worn'), 'spins-free'],
      [has('electric-start-weak'), 'sags'],
      [locked, 'click-only'],
    ),
  'blade-and-brake-look': ({ has }) => [
    has('blade-loose') && 'blade-loose',
    has('flywheel-brake-dragging') && 'brake-drags',
  ],
};

/** Repeats whose sound outcome is "no change": what stays bad with the suspect out of the way. */
export function says(check: string, outcomes: readonly string[], bench: Bench): string[] {
  const look = looks[check];
  const seen = (look?.(bench) ?? []).filter((o): o is string => typeof o === 'string');
  const known = seen.filter((o) => outcomes.includes(o));
  if (known.length !== seen.length) throw new Error(`${check} has no outcome ${seen.join(', ')}`);
  return known.length > 0 ? known : [outcomes[0]!];
}

export const knows = (check: string): boolean => check in looks;
