/**
 * Of outcomes that may be seen together: which ones hide others. A hidden outcome that was not chosen is unknown, not
 * absent. What is not named here is cleared when it is not chosen. Trade judgement, no source.
 */
const hides: Readonly<Record<string, Readonly<Record<string, readonly string[]>>>> = {
  'tank-fuel-in-a-jar': {
    'dark-varnish': ['flat-smell'],
    'layers-or-rust': ['flat-smell'],
    'wrong-fuel': ['flat-smell', 'dark-varnish'],
  },
  'bowl-sample': { dry: ['water-beads', 'specks'], varnish: ['water-beads'] },
  'oil-smell-and-feel': { milky: ['black', 'thin'], thin: ['black'] },
  'oil-leak-map': {
    streaming: ['damp', 'wet-at-shaft', 'wet-at-joint', 'wet-at-cover'],
    'wet-at-cover': ['wet-at-joint'],
  },
  'air-cleaner-look': { missing: ['dusty', 'blocked', 'oil-soaked'], 'oil-soaked': ['dusty'] },
  'recoil-engages': { none: ['slips', 'slow-return'] },
  'control-sweep': {},
  'plug-tip': {
    'wet-with-fuel': ['black-dry', 'white-blistered'],
    'black-oily': ['black-dry', 'white-blistered', 'wet-with-fuel'],
    'black-dry': ['white-blistered'],
    'metal-specks': [],
  },
  'stop-wire-resistance': { short: ['high', 'open-at-stop'] },
  'diaphragm-flex': { torn: ['stiff', 'stretched'] },
  'spray-through-passages': { 'dead-after-soak': ['idle-weak-or-none', 'main-weak-or-none'] },
  'leak-down-listen': {},
  'valve-clearance': {},
  'camera-in-cylinder': {
    liquid: ['carbon', 'lines', 'scoring', 'rust'],
    carbon: ['lines'],
    rust: ['lines', 'scoring'],
  },
  smoke: {
    black: ['steady-blue', 'white'],
    'steady-blue': ['puff-at-start', 'white'],
    white: ['puff-at-start'],
  },
  'sounding-rod': { knock: ['tick'] },
  'fuel-leak-card': { stream: ['at-bowl', 'at-hose', 'from-air-horn'] },
};

export function hiddenBy(check: string, chosen: readonly string[]): ReadonlySet<string> {
  return new Set(chosen.flatMap((outcome) => hides[check]?.[outcome] ?? []));
}
