import { choked, type Look, lean, one, softSqueeze } from './mechanic.js';

type Has = Parameters<Look>[0]['has'];

/** An engine that is not up to its work, for whatever reason (common practice). */
const weak = (has: Has): boolean =>
  choked(has) ||
  softSqueeze(has) ||
  lean(has) ||
  has('main-jet-plugged', 'fuel-filter-blocked', 'plug-wrong');
const dull = (has: Has): boolean =>
  has(
    ...['blade-dull', 'deck-packed', 'tines-worn', 'chipper-knives-dull', 'chipper-anvil-gap-wide'],
    ...['hammers-or-screen-worn', 'chain-dull', 'depth-gauges-wrong', 'cutter-worn', 'tool-worn'],
    ...['blower-tube-blocked', 'impeller-broken'],
  );
const slips = (has: Has): boolean =>
  has(
    ...[
      'belt-glazed-or-loose',
      'belt-frayed-or-wrong',
      'pulley-out-of-line',
      'clutch-worn',
      'drive-shaft-worn',
    ],
    ...['shear-pin-broken', 'snow-gearbox-worn', 'tine-gears-worn', 'tool-drive-worn'],
  );
const packed = (has: Has): boolean => has('chipper-chute-blocked');
const governorOff = (has: Has): boolean =>
  has('governor-spring-off', 'governor-arm-mis-set', 'throttle-link-binding');

/** What a mechanic sees of the machine behind the engine; beside the sound outcome, which is said where nothing else is. */
export const machineLooks: Readonly<Record<string, Look>> = {
  'step-of-load': ({ has }) => one([has('fuel-filter-blocked'), 'dies'], [weak(has) || packed(has), 'bogs']),
  'speed-at-work': ({ has }) =>
    one([weak(has) || packed(has), 'engine-drops'], [slips(has), 'tool-slows'], [dull(has), 'works-poorly']),
  'handle-vibration': ({ has }) => [
    has(
      ...['crankshaft-bent', 'blade-loose', 'fan-blades-broken', 'engine-mount-loose', 'blade-unbalanced'],
      ...['spindle-bearing-worn', 'rotor-bearings-worn', 'knives-unequal', 'impeller-broken'],
    ) && 'strong',
  ],
  'coast-down': ({ has }) => one([has('stop-control-dead'), 'no-stop'], [has('blade-brake-weak'), 'slow']),
  'belt-by-hand': ({ has }) => [
    has('belt-glazed-or-loose') && 'glazed-or-slack',
    has('belt-frayed-or-wrong') && 'frayed-or-wrong',
    has('pulley-out-of-line') && 'pulley-off',
  ],
  'wheels-by-hand': ({ has }) => [has('wheel-drive-worn') && 'slips-or-sticks'],
  'mower-blade-look': ({ has }) => [
    has('blade-dull') && 'dull',
    has('blade-unbalanced', 'crankshaft-bent') && 'bent',
    has('deck-packed') && 'packed-or-holed',
  ],
  'blade-on-a-pin': ({ has }) => [has('blade-unbalanced') && 'one-end-falls'],
  'spindle-by-hand': ({ has }) => [has('spindle-bearing-worn') && 'rough-or-loose'],
  'brake-pad-and-cable': ({ has }) => [has('blade-brake-weak') && 'worn-or-short'],
  'tines-look': ({ has }) => [
    has('tines-worn') && 'worn-or-reversed',
    has('tine-shaft-wrapped') && 'wrapped',
  ],
  'gearbox-level': ({ has }) => [
    has('tine-gearbox-leaking') && 'low-or-dripping',
    has('tine-gears-worn') && 'metal',
  ],
  'tines-turned-by-hand': ({ has }) => [has('tine-gears-worn') && 'free-play'],
  'knives-look': ({ has }) => [has('chipper-knives-dull') && 'dull', has('knives-unequal') && 'unequal'],
  'anvil-gap': ({ has }) => [has('chipper-anvil-gap-wide') && 'wide'],
  'hammers-look': ({ has }) => [has('hammers-or-screen-worn') && 'round-or-clogged'],
  'rotor-by-hand': ({ has }) =>
    one([has('rotor-jammed'), 'will-not-turn'], [has('rotor-bearings-worn'), 'play-or-noise']),
  'chute-and-interlock': ({ has }) => [
    has('chipper-chute-blocked') && 'packed',
    has('chute-interlock-open') && 'interlock-open',
  ],
  'chain-look': ({ has }) => [
    has('chain-dull') && 'dull',
    has('depth-gauges-wrong') && 'gauges-wrong',
    has('chain-stretched') && 'slack',
  ],
  'bar-and-sprocket-look': ({ has }) => [
    has('bar-worn') && 'rails-worn',
    has('sprocket-worn') && 'sprocket-grooved',
  ],
  'oil-off-the-tip': ({ has }) => [has('chain-oiler-blocked') && 'none'],
  'chain-brake-tried': ({ has }) => [has('chain-brake-weak') && 'slips-or-stays'],
  'catcher-look': ({ has }) => [has('chain-catcher-missing') && 'missing'],
  'creeps-at-idle': ({ has }) =>
    one([has('clutch-drags'), 'runs-with-it'], [has('idle-above-clutch'), 'creeps']),
  'idle-turned-down': ({ has }) =>
    one([has('clutch-drags'), 'still-turns'], [has('idle-above-clutch'), 'stands-now']),
  'clutch-look': ({ has }) => [
    has('clutch-drags') && 'spring-or-bearing',
    has('clutch-worn') && 'shoes-worn',
  ],
  'cutter-look': ({ has }) => [
    has('cutter-worn') && 'worn',
    has('cutter-guard-missing', 'guard-missing') && 'guard-missing',
  ],
  'shaft-turned-by-hand': ({ has }) => [
    has('drive-shaft-worn') && 'turns-alone',
    has('trimmer-gearbox-dry') && 'gear-head-rough',
  ],
  'impeller-look': ({ has }) => [has('impeller-broken') && 'cracked-or-packed'],
  'screen-and-tube-look': ({ has }) => [has('blower-tube-blocked') && 'blocked'],
  'shear-pins-look': ({ has }) => [
    has('shear-pin-broken') && 'sheared-or-rusted',
    has('snow-gearbox-worn') && 'shaft-turns-alone',
  ],
  'chute-and-levers': ({ has }) => [
    has('snow-chute-jammed') && 'chute-fast',
    has('snow-lever-stays') && 'lever-stays',
  ],
  'tool-by-hand': ({ has }) => [
    has('tool-worn') && 'worn-or-blocked',
    has('tool-drive-worn') && 'drive-slack',
  ],
  'generator-output': ({ has }) =>
    one(
      [governorOff(has) || lean(has), 'off-both'],
      [has('field-lost', 'brushes-worn'), 'no-volts'],
      [has('regulator-failed', 'alternator-shorted'), 'volts-only-off'],
      [weak(has), 'sags-with-load'],
    ),
  'each-outlet': ({ has }) => [
    has('outlet-or-breaker-dead') && 'one-dead',
    has('frame-ground-open') && 'ground-open',
  ],
  'windings-by-meter': ({ has }) => [has('alternator-shorted') && 'short-or-open'],
  'brushes-look': ({ has }) => [has('brushes-worn') && 'short-or-stuck'],
  'field-fed-from-battery': ({ has }) =>
    one(
      [has('alternator-shorted', 'brushes-worn'), 'nothing'],
      [has('regulator-failed'), 'comes-only-while-fed'],
      [has('field-lost'), 'comes-and-stays'],
    ),
  ...waterLooks(),
  ...hydraulicLooks(),
};

function waterLooks(): Record<string, Look> {
  const starved = (has: Has): boolean => has('pump-suction-leak', 'strainer-blocked', 'washer-starved');
  return {
    'pump-primes': ({ has }) =>
      one(
        [has('pump-seized'), 'no'],
        [starved(has) || has('pump-impeller-worn', 'washer-valves-worn'), 'slow'],
      ),
    'bubbles-at-the-outlet': ({ has }) =>
      one(
        [has('pump-suction-leak'), 'bubbles-that-stop'],
        [has('strainer-blocked', 'pump-impeller-worn'), 'no-bubbles-thin-stream'],
      ),
    'hose-and-strainer-look': ({ has }) => [
      has('pump-suction-leak') && 'cracked-or-no-washer',
      has('strainer-blocked') && 'blocked-or-flat',
    ],
    'drips-behind-the-pump': ({ has }) => [has('pump-seal-leaking') && 'drips'],
    'keeps-its-prime': ({ has }) => [has('check-valve-leaking') && 'runs-back'],
    'pump-shut-off-head': ({ has }) =>
      one([has('pump-suction-leak'), 'needle-swings'], [has('pump-impeller-worn'), 'low-steady']),
    'impeller-gap-look': ({ has }) => [has('pump-impeller-worn') && 'worn-or-clogged'],
    'water-at-the-inlet': ({ has }) => [has('washer-starved') && 'too-little'],
    'flow-without-nozzle': ({ has }) => [
      (has('washer-valves-worn', 'washer-packings-worn') || starved(has)) && 'low',
    ],
    'pressure-with-known-nozzle': ({ has }) =>
      one(
        [has('washer-valves-worn') || starved(has), 'low-pulsing'],
        [has('unloader-stuck', 'washer-packings-worn'), 'low-steady'],
        [has('nozzle-worn-or-blocked'), 'right-with-new'],
      ),
    'unloader-by-hand': ({ has }) => [has('unloader-stuck') && 'stuck-or-worn'],
    'washer-valves-look': ({ has }) => [has('washer-valves-worn') && 'worn-or-gritty'],
    'water-at-the-plungers': ({ has }) => [has('washer-packings-worn') && 'runs'],
    'pressure-hose-look': ({ has }) => [has('pressure-hose-damaged') && 'damaged'],
  };
}

function hydraulicLooks(): Record<string, Look> {
  return {
    'fluid-look': ({ has }) => [has('hydraulic-fluid-low') && 'low-or-foaming'],
    'hoses-by-card': ({ has }) => [has('hydraulic-hose-leaking') && 'wet-or-worn'],
    'ram-timed': ({ has }) =>
      one(
        [has('pump-coupling-worn'), 'does-not-move'],
        [has('hydraulic-fluid-low', 'hydraulic-strainer-blocked'), 'slow-jerky'],
        [has('hydraulic-pump-worn'), 'slow-even'],
      ),
    'ram-against-its-end': ({ has }) =>
      one(
        [has('relief-weak', 'hydraulic-pump-worn', 'cylinder-passes'), 'low-engine-easy'],
        [weak(has), 'engine-dies'],
      ),
    'ram-sinks-back': ({ has }) =>
      one([has('cylinder-passes'), 'sinks'], [has('relief-weak'), 'hot-at-the-valve']),
    'pump-case-warmth': ({ has }) => [has('hydraulic-pump-worn') && 'pump-hot'],
    'coupling-look': ({ has }) => [has('pump-coupling-worn') && 'worn-or-loose'],
    'strainer-out': ({ has }) => [has('hydraulic-strainer-blocked') && 'clogged'],
    'valve-lets-go': ({ has }) => [has('valve-stays-in-work') && 'stays'],
  };
}
