import { of, type Quantity, QuantityError, show, showBoth } from '../../quantity/index.js';
import {
  amount,
  ask,
  computed,
  near,
  number,
  optional,
  ruleOfThumb,
  verdict,
  words,
  worksheet,
} from '../../worksheet/index.js';
import { intoAluminum } from '../aluminum.js';
import { figure } from '../figure.js';
import { correctForLubricant } from '../lubricant.js';
import {
  boltUnderTorque,
  boltWords,
  isPlugThread,
  requirePlausibleTorque,
  torqueBounds,
} from '../plausible.js';
import { commonPractice, sources } from '../sources.js';
import { headMetals, type PlugSeat, plugTorque, smallEngine14mm } from '../spark-plug.js';
import type { ThreadForm } from '../thread-form.js';
import { findThread, threadWords } from '../threads.js';
import { chosenFactor, factorAnswers } from './factor.js';
import { conditionField, factorField, grade, thread, torqueField } from './fields.js';

export const lubricantCorrection = worksheet({
  id: 'lubricant-correction',
  group: 'How tight?',
  title: 'Torque given dry, threads oiled',
  question: 'The torque is given for dry threads and mine are oiled: what do I set?',
  purpose: 'The setting for the same clamp load, and what clamp the printed torque would give instead.',
  fields: {
    torque: torqueField('As printed.'),
    given: conditionField(
      'Printed for',
      'The condition the printed torque is meant for; dry if nothing is said (common practice).',
    ),
    now: conditionField('Threads now'),
    'k-given': factorField('Nut factor K printed for'),
    'k-now': factorField('Nut factor K now'),
  },
  compute: ({ torque: torqueNm, given, now: present, 'k-given': ownGiven, 'k-now': ownNow }) => {
    const [before, now] = [chosenFactor(given, ownGiven), chosenFactor(present, ownNow)];
    const { setNm, clampIfNotCorrected } = correctForLubricant({
      torqueNm,
      factorGiven: before.k,
      factorNow: now.k,
    });
    const how = computed(`same clamp load, T = K·d·F, ${sources.machineDesign}, Eq. 8-27`);
    return [
      amount('torque', 'Set', setNm, 'N·m', how, { note: changeWords(setNm / torqueNm) }),
      number(
        'clamp-if-not',
        'Clamp if not corrected, in parts of the one meant',
        clampIfNotCorrected,
        2,
        how,
      ),
      number('k-given', 'Nut factor K printed for', before.k, 3, computed(before.from)),
      ...factorAnswers(now, (k) => `set ${showBoth(of((torqueNm * k) / before.k, 'N·m'), 'inch')}`),
    ];
  },
  cautions: [
    'Many small-engine sheets give torque for clean, lightly oiled threads: read what the sheet says first.',
  ],
  sources: [`${sources.machineDesign}, Eq. 8-27 and Table 8-15`, sources.fastenerStandards],
  examples: [
    {
      title: '140 in-lb for bare dry threads, oiled threads 10 % less: 126 in-lb',
      given: { torque: '140 in-lb', given: 'bare-dry', now: 'oiled' },
      expect: {
        torque: near(126, 0.1, 'in-lb'),
        'clamp-if-not': near(1.11, 0.005),
      },
      source: `${sources.fastenerStandards}: less 10 % when oiled`,
      mark: 'seen',
    },
  ],
});

function changeWords(ratio: number): string {
  const change =
    ratio === 1
      ? 'as printed'
      : `${figure(Math.abs(ratio - 1) * 100)} % ${ratio < 1 ? 'less' : 'more'} than printed`;
  return `${change}; ±25 % scatter remains`;
}

const aluminumSource = `${sources.fastenerStandards}: 30 % or more off, two diameters of thread`;

export const intoAluminumSheet = worksheet({
  id: 'into-aluminum',
  group: 'How tight?',
  title: 'Bolt into aluminum',
  question: 'The torque is for steel and the hole is in aluminum: how much is too much?',
  purpose: 'An upper bound for the torque, and the length of thread that the bolt needs.',
  fields: {
    thread,
    torque: torqueField('For the same bolt in steel.'),
    engagement: ask.in(
      'mm',
      'Engaged thread',
      'How far the bolt goes into good thread. Leave empty if not measured.',
      { hint: '5/8 in', optional: true, within: ['0 mm', '200 mm'] },
    ),
  },
  compute: ({ thread: { majorMm }, torque, engagement }) => {
    const found = intoAluminum({ steelTorqueNm: torque, majorMm, engagementMm: engagement });
    const how = ruleOfThumb(aluminumSource);
    return [
      amount('most', 'Not more than', found.mostNm, 'N·m', how, { note: 'an upper bound, not a target' }),
      amount('needed', 'Engaged thread needed', found.neededMm, 'mm', how),
      verdict(
        'engagement',
        'Engagement',
        engagementVerdict(found.engagedEnough),
        engagementWords(found),
        how,
      ),
    ];
  },
  cautions: [
    "The engine's own figure goes first: it is already meant for its aluminum.",
    'Clean, undamaged thread only.',
  ],
  sources: [aluminumSource],
  examples: [
    {
      title: '5/16-18 at 209 in-lb in steel: not above 146 in-lb, 5/8 in of thread',
      given: { thread: '5/16-18', torque: '209 in-lb', engagement: '0.5 in' },
      expect: {
        most: near(146.3, 0.1, 'in-lb'),
        needed: near(0.625, 0.0005, 'in'),
      },
      source: aluminumSource,
      mark: 'calculated',
    },
  ],
});

const engagementVerdict = (enough: boolean | undefined) =>
  enough === undefined ? 'cannot-decide' : enough ? 'pass' : 'fail';

function engagementWords(found: {
  readonly engagedEnough?: boolean;
  readonly engagedDiameters?: number;
}): string {
  if (found.engagedDiameters === undefined) return 'not measured';
  const engaged = `${figure(found.engagedDiameters, 2)} diameters engaged`;
  return found.engagedEnough
    ? `${engaged}, 2 needed`
    : `${engaged}, 2 needed: a longer bolt or an insert, or a lower torque than this bound`;
}

export const torquePlausible = worksheet({
  id: 'torque-plausible',
  group: 'How tight?',
  title: 'Can this torque be meant?',
  question: 'Can this torque be meant for this thread?',
  purpose: 'Catches inch-pounds read as foot-pounds before a bolt breaks.',
  fields: {
    torque: ask.quantity('torque', 'Torque', 'Just as it is written.', '140 in-lb'),
    thread,
    grade: {
      ...optional(grade),
      help: `${grade.help} Left empty, what is usual: SAE 5, class 8.8 (common practice).`,
    },
  },
  compute: ({ torque, thread: form, grade: marked }) => {
    const { lowNm, highNm, because } = torqueBounds(form);
    const how = computed(
      'from a quarter of the softest to the whole of the strongest bolt, or the printed range of a plug',
    );
    const [decided, text] = believed(torque, form, marked, because);
    return [
      verdict('verdict', 'Verdict', decided, text, how),
      amount('low', 'Least for this thread', lowNm, 'N·m', how),
      amount('high', 'Most for this thread', highNm, 'N·m', how),
    ];
  },
  cautions: [
    'A torque inside the range can still be the wrong one.',
    'A stretched bolt clamps less than a loose one: when it turned without getting tighter, renew it.',
  ],
  sources: [
    sources.saeGrades,
    sources.isoStrength,
    `${sources.machineDesign}, Table 8-15`,
    sources.plugChart,
  ],
  examples: [
    {
      title: 'the whole proof load of 5/16-18 SAE 8 at K 0.30 is the bound: 590 in-lb',
      given: { torque: '140 in-lb', thread: '5/16-18' },
      expect: {
        high: near(590, 2, 'in-lb'),
        low: near(16.2, 0.1, 'in-lb'),
      },
      source: 'T = K·d·F with SAE J429 proof stresses',
      mark: 'calculated',
    },
    {
      title: '140 ft-lb on 5/16-18 cannot be meant; 140 in-lb can',
      given: { torque: '140 ft-lb', thread: '5/16-18' },
      expect: { verdict: { text: 'fail' } },
      source: 'a public chart prints small-engine head bolts as 140 to 250 ft-lb, in-lb being meant',
      mark: 'seen',
    },
  ],
});

type Believed = readonly ['pass' | 'fail' | 'cannot-decide', string];

function believed(torque: Quantity, form: ThreadForm, marked: string | undefined, because: string): Believed {
  try {
    requirePlausibleTorque(torque, form);
  } catch (refusal) {
    if (refusal instanceof QuantityError && refusal.code === 'implausible') return ['fail', refusal.message];
    throw refusal;
  }
  return underTorque(torque, form, marked) ?? ['pass', `within what ${because} can take`];
}

/** What the bolt makes of a torque that can be meant; nothing when it bears it. */
function underTorque(torque: Quantity, form: ThreadForm, marked: string | undefined): Believed | undefined {
  if (isPlugThread(form)) return undefined;
  const bolt = boltUnderTorque(form, marked);
  if (torque.si <= bolt.stretchesNm) return undefined;
  const said = (nm: number) => show(of(nm, 'N·m'), undefined, { unit: torque.unit });
  const limits = `${boltWords(bolt.grade)} stretches for good near ${said(bolt.stretchesNm)} and breaks near ${said(bolt.breaksNm)} (K 0.20)`;
  if (marked !== undefined && torque.si > bolt.breaksNm) return ['fail', limits];
  return [
    'cannot-decide',
    marked === undefined ? `only for a stronger bolt than is usual: ${limits}` : limits,
  ];
}

const seatOf = {
  'new-gasket': 'new gasket',
  'used-gasket': 'used gasket',
  conical: 'conical',
} as const satisfies Record<string, PlugSeat>;

export const plugTorqueSheet = worksheet({
  id: 'plug-torque',
  group: 'How tight?',
  title: 'Spark plug tightness',
  question: 'How tight does the spark plug go?',
  purpose: 'The turn past finger tight, which needs no wrench scale, and the printed torque.',
  fields: {
    thread: { ...thread, hint: 'M14×1.25' },
    seat: ask.choice('Seat', 'A gasket that was crushed once turns less.', seatOf),
    head: ask.choice('Cylinder head', 'What the plug hole is cut in.', headMetals),
  },
  compute: ({ thread: form, seat, head }) => {
    const found = plugTorque(form, seatOf[seat], head);
    const printed = { from: 'rule of thumb', detail: found.source } as const;
    const usual = findThread(form)?.name === 'M14×1.25';
    return [
      words(
        'turn',
        'By turn',
        found.turns.words,
        ruleOfThumb("plug makers' and engine makers' fitting notes"),
      ),
      amount('low', 'By wrench, from', found.lowNm, 'N·m', printed),
      amount('high', 'to', found.highNm, 'N·m', printed),
      ...(usual
        ? [
            amount(
              'small-engine',
              'Often printed for small engines',
              smallEngine14mm.usualNm,
              'N·m',
              ruleOfThumb("small-engine makers' manuals"),
              { note: 'manuals range from 95 to 264 in-lb' },
            ),
          ]
        : []),
      words(
        'note',
        'How',
        `start ${threadWords(form)} by hand, dry and clean, head cold; a plug that binds is crossed: back it out`,
        ruleOfThumb(commonPractice),
      ),
    ];
  },
  cautions: [
    "The engine's own figure goes first.",
    'Anti-seize on plug threads raises the clamp at the same torque.',
  ],
  sources: [
    sources.plugChart,
    "small-engine makers' manuals",
    'SAE J548 and ISO 2704 plug threads (from memory)',
  ],
  examples: [
    {
      title: '14 mm gasket plug into aluminum: 18.0 to 21.6 lbf·ft',
      given: { thread: 'M14×1.25', seat: 'new-gasket', head: 'aluminum' },
      expect: {
        low: near(18, 0.6, 'ft-lb'),
        high: near(21.6, 0.6, 'ft-lb'),
        'small-engine': near(180, 0.5, 'in-lb'),
        turn: { text: '½ turn past finger tight' },
      },
      source: sources.plugChart,
      mark: 'seen',
    },
    {
      title: '12 mm gasket plug into aluminum: 10.8 to 14.5 lbf·ft',
      given: { thread: 'M12×1.25', seat: 'used-gasket', head: 'aluminum' },
      expect: {
        low: near(10.8, 0.4, 'ft-lb'),
        high: near(14.5, 0.4, 'ft-lb'),
        turn: { text: '⅛ to ¼ turn past finger tight' },
      },
      source: sources.plugChart,
      mark: 'seen',
    },
  ],
});
