// The layering of ARCHITECTURE.md, enforced: a room imports only rooms that stand above it in this list.
// test/layering.test.ts plants forbidden imports and proves that this file refuses them.
const rooms = [
  'phrase',
  'quantity',
  'worksheet',
  'fasten',
  'gauge',
  'engine',
  'driven',
  'listen',
  'sight',
  'hear',
  'catalog',
  'infer',
  'diagnose',
  'worth',
  'plan',
  'supply',
  'job',
  'draw',
  'desk',
  'record',
  'store',
  'shopkeep',
  'server',
  'cli',
  'web',
];
const core = rooms.slice(0, rooms.indexOf('store'));
const inRoom = (names) => `(^|/)src/(${names.join('|')})/`;

const downward = rooms.slice(0, -1).map((room, i) => ({
  name: `${room}-imports-only-rooms-above-it`,
  severity: 'error',
  from: { path: inRoom([room]) },
  to: { path: inRoom(rooms.slice(i + 1)) },
}));

export default {
  forbidden: [
    ...downward,
    {
      name: 'core-has-no-file-network-clock',
      comment: 'Files, network and processes come in as arguments; only store, server and cli touch them.',
      severity: 'error',
      from: { path: inRoom(core) },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'the-page-knows-no-sql',
      severity: 'error',
      from: { path: inRoom(['web']) },
      to: { path: inRoom(['store', 'shopkeep', 'server', 'cli']) },
    },
    {
      name: 'only-serve-knows-the-server',
      comment: 'Every other command works with the store through shopkeep, and need not load a server.',
      severity: 'error',
      from: { path: inRoom(['cli']), pathNot: '(^|/)src/cli/commands/serve\\.ts$' },
      to: { path: inRoom(['server']) },
    },
    {
      name: 'a-room-is-entered-by-its-index',
      comment: 'index.ts is the whole public face of a room; desk gathers the worksheets of every room.',
      severity: 'error',
      from: { path: '(^|/)src/([^/]+)/', pathNot: '(^|/)src/desk/' },
      to: { path: '(^|/)src/([^/]+)/', pathNot: ['(^|/)src/$2/', '(^|/)src/[^/]+/index\\.ts$'] },
    },
    {
      name: 'no-cycles',
      severity: 'error',
      from: {},
      to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
    },
    {
      name: 'nothing-unresolved',
      severity: 'error',
      from: {},
      to: { couldNotResolve: true, pathNot: '[?]url$' },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      conditionNames: ['import', 'node', 'types', 'default'],
      exportsFields: ['exports'],
    },
  },
};
