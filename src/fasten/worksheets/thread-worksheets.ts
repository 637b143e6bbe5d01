import { capital } from '../../phrase/index.js';
import {
  amount,
  ask,
  computed,
  lines,
  near,
  number,
  ruleOfThumb,
  standard,
  verdict,
  words,
  worksheet,
} from '../../worksheet/index.js';
import { tappedMetals } from '../aluminum.js';
import { leafPitchMm, nameThread } from '../name-thread.js';
import { commonPractice, sources } from '../sources.js';
import { tapDrill } from '../tap-drill.js';
import {
  minorExternalMm,
  minorInternalMm,
  pitchDiameterMm,
  stressAreaMm2,
  type ThreadForm,
} from '../thread-form.js';
import { type RepairOption, repairWays } from '../thread-repair.js';
import { findThread } from '../threads.js';
import {
  type InsertChoice,
  insertDrill,
  insertHoleDepthMm,
  insertSource,
  insertThroughMm,
} from '../wire-insert.js';
import { thread } from './fields.js';

const formSource = ({ system }: ThreadForm) => (system === 'inch' ? sources.unified : sources.isoThreads);

/** The bolt's minor diameter under each convention that is used for the system. */
function externalMinors(form: ThreadForm) {
  const inch = [
    ['minor-unr', 'Minor diameter of the bolt, rounded root', 'unr', 'd − 1.190785·P, ASME B1.1-2003 UNR'],
    ['minor-older', 'the same on older sheets', 'older', 'd − 1.226869·P, Unified sheets before B1.1-2003'],
  ] as const;
  const metric = [
    ['minor-d3', 'Minor diameter of the bolt, d3', 'iso-d3', 'd − 1.226869·P, ISO 898-1'],
  ] as const;
  const sharp = [
    [
      'minor-sharp-root',
      'Root diameter, for stress',
      'sharp-root',
      `d − 1.299038·P, ${sources.machineDesign}, Table 8-2`,
    ],
  ] as const;
  return [...(form.system === 'inch' ? inch : metric), ...sharp].map(([id, label, which, how]) =>
    amount(id, label, minorExternalMm(form, which), 'mm', computed(how)),
  );
}

export const threadData = worksheet({
  id: 'thread-data',
  group: 'Threads',
  title: 'Data of a thread',
  question: 'What are the sizes of this thread?',
  purpose: 'Diameters, stress area, drill and wrench of a thread, each with the rule behind it.',
  fields: { thread },
  compute: ({ thread: form }) => {
    const listed = findThread(form);
    const basic = standard(formSource(form));
    return [
      amount('major', 'Major diameter', form.majorMm, 'mm', basic),
      amount('pitch', 'Pitch', form.pitchMm, 'mm', basic),
      amount('pitch-diameter', 'Pitch diameter', pitchDiameterMm(form), 'mm', computed('d − 0.649519·P')),
      amount(
        'minor-hole',
        'Minor diameter of the hole, D1',
        minorInternalMm(form),
        'mm',
        computed('d − 1.082532·P'),
      ),
      ...externalMinors(form),
      amount('area', 'Tensile stress area', stressAreaMm2(form), 'mm²', basic),
      ...(listed
        ? [
            words(
              'drill',
              'Usual tap drill',
              listed.usualDrill,
              ruleOfThumb("the trade's tap drill tables (from memory)"),
            ),
          ]
        : []),
      ...(listed?.wrench
        ? [words('wrench', 'Wrench', listed.wrench, standard('ASME B18.2.1, ISO 4014 (from memory)'))]
        : []),
      words(
        'series',
        'Series',
        listed?.series.join(', ') ?? 'not in the lists here; computed from its diameter and pitch',
        basic,
      ),
    ];
  },
  cautions: ['Three figures circulate as the minor diameter of a bolt; each is named here.'],
  sources: [sources.unified, sources.isoThreads, sources.isoStrength],
  examples: [
    {
      title: '1/4-20: area 0.0318 in², pitch diameter 0.2175, minor 0.1959, 0.1905 and 0.1887 in',
      given: { thread: '1/4-20' },
      expect: {
        area: near(0.0318, 0.00005, 'in²'),
        'pitch-diameter': near(0.2175, 0.00005, 'in'),
        'minor-hole': near(0.1959, 0.00006, 'in'),
        'minor-unr': near(0.1905, 0.00006, 'in'),
        'minor-older': near(0.1887, 0.00006, 'in'),
        drill: { text: '#7' },
      },
      source: sources.unified,
      mark: 'seen',
    },
    {
      title: 'M8: d2 7.188, D1 6.647, d3 6.466 mm, area 36.6 mm²',
      given: { thread: 'M8' },
      expect: {
        area: near(36.6, 0.05, 'mm²'),
        'pitch-diameter': near(7.188, 0.0006, 'mm'),
        'minor-hole': near(6.647, 0.0006, 'mm'),
        'minor-d3': near(6.466, 0.0006, 'mm'),
        drill: { text: '6.8 mm' },
      },
      source: `${sources.isoThreads}; ${sources.isoStrength}`,
      mark: 'memory, recomputed',
    },
  ],
});

export const tapDrillSheet = worksheet({
  id: 'tap-drill',
  group: 'Threads',
  title: 'Tap drill',
  question: 'Which drill for this tap?',
  purpose: 'The hole for a percentage of thread, the nearest drills, and what each really leaves.',
  fields: {
    thread,
    percent: ask.number(
      'Percentage of thread',
      '75 stands when empty (common practice). Soft metal up to 80, steel 60 to 70.',
      { standard: '75', within: [30, 100] },
    ),
  },
  compute: ({ thread: form, percent }) => {
    const { holeMm, inch, metric } = tapDrill(form, percent);
    const rule = computed('percent-of-thread rule, d − 1.299038·P·percent/100');
    const usual = findThread(form)?.usualDrill;
    return [
      amount('hole', 'Hole', holeMm, 'mm', rule),
      words('inch-drill', 'Nearest inch drill', inch.drill.name, rule),
      number('inch-percent', 'it leaves, percent', inch.percent, 0, rule),
      words('metric-drill', 'Nearest metric drill', metric.drill.name, rule),
      number('metric-percent', 'it leaves, percent', metric.percent, 0, rule),
      ...(usual
        ? [
            words(
              'usual',
              'Usual in tables',
              usual,
              ruleOfThumb("the trade's tap drill tables (from memory)"),
            ),
          ]
        : []),
    ];
  },
  cautions: ['Chips and oil out before tapping a blind hole; back off each half turn.'],
  sources: [
    "percent-of-thread rule of the tap makers' tables",
    'ASME B94.11M twist drill sizes (from memory)',
  ],
  examples: (
    [
      ['#8-32', '#29'],
      ['#10-24', '#25'],
      ['#10-32', '#21'],
      ['1/4-20', '#7'],
      ['1/4-28', '#3'],
      ['5/16-18', 'F'],
      ['5/16-24', 'I'],
      ['3/8-16', '5/16 in'],
      ['3/8-24', 'Q'],
      ['7/16-14', 'U'],
      ['1/2-13', '27/64 in'],
    ] as const
  ).map(([thread, drill]) => ({
    title: `${thread}: drill ${drill}`,
    given: { thread },
    expect: { 'inch-drill': { text: drill } },
    source: "the trade's tap drill tables",
    mark: 'memory, recomputed' as const,
  })),
});

export const nameThreadSheet = worksheet({
  id: 'name-thread',
  group: 'Threads',
  title: 'Name a thread',
  question: 'What thread is this?',
  purpose: 'A thread named from caliper and pitch gauge, with its near misses.',
  fields: {
    diameter: ask.in(
      'mm',
      'Diameter',
      'Across the outside of the bolt, or across the bore of the tapped hole.',
      { hint: '0.309 in', within: ['1 mm', '60 mm'] },
    ),
    where: ask.choice(
      'Measured on',
      'A bolt measures a little under its name; a hole is known by its bore.',
      { bolt: 'bolt', hole: 'tapped hole' },
      'bolt',
    ),
    tpi: ask.number('Threads per inch', 'Mark on the inch leaf that fits.', {
      hint: '18',
      optional: true,
      within: [4, 100],
    }),
    pitch: ask.in('mm', 'Pitch', 'Mark on the metric leaf that fits.', {
      hint: '1.25 mm',
      optional: true,
      within: ['0.2 mm', '6 mm'],
    }),
  },
  compute: ({ diameter, where, tpi, pitch }) => {
    const found = nameThread({
      diameterMm: diameter,
      where,
      pitchMm: tpi === undefined ? pitch : leafPitchMm(tpi),
    });
    const how = computed('limits of class 2A and 2B, ASME B1.1, and of 6g and 6H, ISO 965-1 (from memory)');
    const fitting = found.candidates.filter(({ fits }) => fits);
    return [
      verdict(
        'verdict',
        'Verdict',
        ({ one: 'pass', ambiguous: 'cannot-decide', none: 'fail' } as const)[found.verdict],
        found.words,
        how,
      ),
      words('thread', 'Thread', fitting.map(({ thread }) => thread.name).join(' or ') || 'none', how),
      lines(
        'candidates',
        'Looked at',
        found.candidates.map(({ thread, fits, why }) => `${thread.name}: ${fits ? 'fits' : 'near'}, ${why}`),
        how,
      ),
    ];
  },
  oneOf: [{ ids: ['tpi', 'pitch'], wanted: false }],
  cautions: ['Never force a bolt to find out: an inch bolt starts in a metric hole and strips it.'],
  sources: [sources.unified, 'ISO 965-1 (from memory)'],
  examples: [
    {
      title: 'a bolt of 0.309 in with the 18 leaf is 5/16-18',
      given: { diameter: '0.309 in', tpi: '18' },
      expect: { thread: { text: '5/16-18' } },
      source: 'ASME B1.1, 5/16-18 class 2A: 0.3026 to 0.3113 in',
      mark: 'memory, recomputed',
    },
    {
      title: 'a bolt of 7.87 mm without a leaf is 5/16-18, 5/16-24, M8×1.25 or M8×1',
      given: { diameter: '7.87 mm' },
      expect: { thread: { text: 'M8×1.25 or 5/16-18 or M8×1 or 5/16-24' } },
      source: 'limits of class 2A and 6g overlap',
      mark: 'calculated',
    },
  ],
});

const possibleWords = (possible: boolean | undefined) =>
  possible === undefined ? 'depends on what was not measured' : possible ? 'possible' : 'not possible';

const wayLines = ({ possible, why, steps }: RepairOption) => [`${possibleWords(possible)}: ${why}`, ...steps];

export const threadRepair = worksheet({
  id: 'thread-repair',
  group: 'Threads',
  title: 'Stripped thread',
  question: 'The thread is stripped: what can be done?',
  purpose:
    'Chase, longer bolt, wire insert or next size: drill, tap and steps for each, and whether there is room.',
  fields: {
    thread,
    metal: ask.choice('Metal', 'What the hole is in.', tappedMetals),
    depth: ask.in('mm', 'Depth to drill', 'How deep the hole may go. Leave empty if not measured.', {
      hint: '1 in',
      optional: true,
      within: ['0 mm', '300 mm'],
    }),
    'good-thread': ask.in('mm', 'Good thread left', 'Below the damage. Leave empty if not measured.', {
      hint: '1/4 in',
      optional: true,
      within: ['0 mm', '300 mm'],
    }),
    boss: ask.in(
      'mm',
      'Boss',
      'Metal round the hole, across its thinnest place. Leave empty if not measured.',
      { hint: '3/4 in', optional: true, within: ['1 mm', '300 mm'] },
    ),
  },
  compute: ({ thread: form, metal, depth, 'good-thread': goodThreadMm, boss }) => {
    const ways = repairWays({ form, metal, depthMm: depth, goodThreadMm, bossMm: boss });
    return [
      ...ways.map((option) =>
        lines(
          option.way.replace(' ', '-'),
          capital(option.way),
          wayLines(option),
          ruleOfThumb(option.source),
        ),
      ),
      ...ways.flatMap(({ insert }) => (insert ? insertAnswers(form, insert) : [])),
    ];
  },
  cautions: [
    'Eye protection; chips out of the engine: grease on the tap, vacuum, wash.',
    'A crack from the hole rules all of this out.',
  ],
  sources: [sources.inchInserts, sources.metricInserts, sources.fastenerStandards, commonPractice],
  examples: [
    {
      title: 'insert M8×1.25 × 12 with a plug tap: hole 23.5 mm deep',
      given: { thread: 'M8×1.25', metal: 'iron' },
      expect: {
        'insert-length': near(12, 0.05, 'mm'),
        'insert-depth-plug': near(23.5, 0.05, 'mm'),
      },
      source: sources.metricInserts,
      mark: 'seen',
    },
    {
      title: '1/4-20 in aluminum: insert drill 17/64 in, two diameters long',
      given: { thread: '1/4-20', metal: 'aluminum' },
      expect: {
        'insert-drill': { text: '17/64 in' },
        'insert-length': near(0.5, 0.0005, 'in'),
      },
      source: "the insert kits' drill tables",
      mark: 'memory',
    },
  ],
});

function insertAnswers(form: ThreadForm, { lengthMm, drillDepthMm }: InsertChoice) {
  const depths = computed('length, tap chamfer, clearance and set-down in pitches, ASME B18.29.2M');
  return [
    words(
      'insert-drill',
      'Insert drill',
      insertDrill(form)?.name ?? 'above the drill sets',
      computed(insertSource(form)),
      { note: 'the drill in the kit goes first' },
    ),
    amount('insert-length', 'Insert length', lengthMm, 'mm', standard(insertSource(form))),
    amount('insert-depth-bottoming', 'Hole depth with a bottoming tap', drillDepthMm, 'mm', depths),
    amount(
      'insert-depth-plug',
      'Hole depth with a plug tap',
      insertHoleDepthMm(form, lengthMm, 'plug'),
      'mm',
      depths,
    ),
    amount(
      'insert-through',
      'Least metal of a through hole',
      insertThroughMm(form, lengthMm),
      'mm',
      computed('length and one pitch, ASME B18.29.2M'),
    ),
  ];
}
