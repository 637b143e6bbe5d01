import {
  amount,
  ask,
  computed,
  curve,
  lines,
  near,
  number,
  optional,
  type Picture,
  picture,
  practice,
  spaced,
  standard,
  words,
  worksheet,
} from '../../worksheet/index.js';
import { EngineError } from '../error.js';
import {
  crankingDrag,
  gradeLine,
  gradesFor,
  isoClassOf,
  leastHighShear,
  leastOfOldSae20,
  type OilGradeName,
  oilGrades,
  summerGrades,
  summerGradesOf,
  winterGrades,
} from '../oil-grades.js';
import { viscosityAt, viscosityLine } from '../viscosity.js';
import { viscosityIndex } from '../viscosity-index.js';
import { airSpan } from './fields.js';

const d341 = computed('ASTM D341: log log(ν + 0.7) = A − B log T, T = t + 273.15');
const at40 = (help: string, hint: string) =>
  ask.in('mm²/s', 'At 40 °C', help, { hint, within: ['2 mm²/s', '2000 mm²/s'] });
const at100 = (help: string) =>
  ask.in('mm²/s', 'At 100 °C', help, { hint: '10.5 mm²/s', within: ['1 mm²/s', '100 mm²/s'] });
const names = Object.keys(oilGrades) as OilGradeName[];
const grade = (label: string, taken: OilGradeName) =>
  ask.choice(label, `${taken} stands (common practice).`, names, taken);

const oilViscosity = worksheet({
  id: 'oil-viscosity',
  group: 'Fuel and oil',
  title: 'Oil viscosity at a temperature',
  question: 'How thick is this oil at another temperature?',
  purpose: 'Viscosity at any temperature from two points on the oil’s data sheet, and its viscosity index.',
  fields: {
    'at-forty': at40('From the data sheet.', '68 mm²/s'),
    'at-hundred': at100('From the data sheet.'),
    temperature: ask.in('°C', 'Temperature', 'Where it is wanted.', {
      hint: '-10 °C',
      within: ['-40 °C', '200 °C'],
    }),
  },
  compute: ({ 'at-forty': cold, 'at-hundred': hot, temperature: t }) => {
    const line = viscosityLine({ celsius: 40, mm2PerS: cold }, { celsius: 100, mm2PerS: hot });
    const { index, procedure } = viscosityIndex(cold, hot);
    const d2270 = computed(`ASTM D2270, procedure ${procedure}`);
    return [
      amount('viscosity', 'Viscosity', viscosityAt(line, t), 'mm²/s', d341, {
        note: t < 0 || t > 120 ? 'far outside the two points: an estimate' : undefined,
      }),
      number('index', 'Viscosity index', Math.round(index), 0, d2270),
    ];
  },
  names: { viscosity: 'at-forty', viscosity40: 'at-forty', viscosity100: 'at-hundred' },
  cautions: ['Oil thinned by gasoline or thickened by soot is not on its data sheet’s line.'],
  sources: ['ASTM D341', 'ASTM D2270'],
  examples: [
    {
      title: '32 at 40 °C and 5.4 at 100 °C: 8.5 at 80 °C',
      given: { 'at-forty': '32 mm²/s', 'at-hundred': '5.4 mm²/s', temperature: '80 °C' },
      expect: { viscosity: near(8.5, 0.05, 'mm²/s') },
      source: 'a public worked example of ASTM D341 (T = t + 273)',
      mark: 'seen',
    },
    {
      title: '73.30 and 8.86: index 92',
      given: { 'at-forty': '73.30 mm²/s', 'at-hundred': '8.86 mm²/s', temperature: '40 °C' },
      expect: { index: near(92, 0) },
      source: 'ASTM D2270, worked example 5.1.4',
      mark: 'seen',
    },
    {
      title: '22.83 and 5.05: index 156',
      given: { 'at-forty': '22.83 mm²/s', 'at-hundred': '5.05 mm²/s', temperature: '40 °C' },
      expect: { index: near(156, 0) },
      source: 'ASTM D2270, worked example 6.1.4',
      mark: 'seen',
    },
  ],
});

const none = 'none: it lies outside or between them';

function saeAnswer(mm2PerS: number) {
  const grades = summerGradesOf(mm2PerS);
  const shear = grades.map((each) => leastHighShear(each)).join(' or ');
  const old = mm2PerS >= leastOfOldSae20 && mm2PerS < summerGrades['20'].least100;
  const note = [
    ...(shear ? [`alone at least ${shear} mPa·s at 150 °C under shear`] : []),
    ...(old ? ['before 2013 an SAE 20'] : []),
  ].join('; ');
  const said = grades.map((each) => `SAE ${each}`).join(' or ') || none;
  return words('sae', 'SAE grade', said, standard('SAE J300, 2015'), { note: note || undefined });
}

function isoAnswer(mm2PerS: number) {
  const iso = isoClassOf(mm2PerS);
  const rule = standard('ISO 3448: midpoint ± 10 % at 40 °C');
  // the thin classes are named by their midpoint without decimals: 4.6 is VG 5
  return words('iso', 'ISO class', iso ? `VG ${Math.round(iso)}` : none, rule);
}

const oilGradeName = worksheet({
  id: 'oil-grade',
  group: 'Fuel and oil',
  title: 'Which grade is it',
  question: 'Which SAE grade or ISO class is this oil?',
  purpose: 'The grades whose limits hold a measured viscosity.',
  fields: {
    'at-hundred': optional(at100('For the SAE grade.')),
    'at-forty': optional(at40('For the ISO class.', '46 mm²/s')),
  },
  compute: ({ 'at-hundred': hot, 'at-forty': cold }) => {
    if (hot === undefined && cold === undefined)
      throw new EngineError('one of the two viscosities is wanted.', 'at-hundred');
    return [...(hot === undefined ? [] : [saeAnswer(hot)]), ...(cold === undefined ? [] : [isoAnswer(cold)])];
  },
  names: { viscosity100: 'at-hundred', viscosity40: 'at-forty' },
  cautions: ['A winter grade (W) cannot be told from these: it is a cranking test in the cold.'],
  sources: ['SAE J300', 'ISO 3448'],
  examples: [
    {
      title: '9.3 mm²/s at 100 °C is the least of an SAE 30; 31 at 40 °C is VG 32',
      given: { 'at-hundred': '9.3 mm²/s', 'at-forty': '31 mm²/s' },
      expect: { sae: { text: 'SAE 30' }, iso: { text: 'VG 32' } },
      source: 'SAE J300 table of 2015; ISO 3448 from memory',
      mark: 'seen',
    },
  ],
});

const oilDrag = worksheet({
  id: 'oil-drag',
  group: 'Fuel and oil',
  title: 'Cranking drag of two oils',
  question: 'How much harder does it crank on the other oil in the cold?',
  purpose: 'Viscosity of two grades at the coldest start and how much harder the second turns.',
  fields: {
    first: grade('Oil', '10W-30'),
    second: grade('Against', 'SAE 30'),
    temperature: ask.in('°C', 'Coldest start', 'Of the engine itself after a night.', {
      hint: '-5 °C',
      within: ['-35 °C', '60 °C'],
    }),
  },
  compute: ({ first, second, temperature: t }) => {
    const drag = crankingDrag(first, second, t);
    const rule = computed('ratio of viscosities: ASTM D341 lines of ordinary oils of the grades');
    return [
      number('ratio', `${second} turns harder by a factor of`, drag.ratio, 2, rule, {
        picture: gradesPicture(first, second, t),
        note:
          t < -10 ? 'below about −10 °C a multigrade does better than this: it thins under shear' : undefined,
      }),
      amount('first', first, drag.firstMPaS, 'mPa·s', rule),
      amount('second', second, drag.secondMPaS, 'mPa·s', rule),
      ...winterLimit(first, 'first-limit'),
      ...winterLimit(second, 'second-limit'),
    ];
  },
  cautions: [
    'If it will hardly turn, warm the engine: a rope pulled hard on thick oil strips pawls and keys.',
  ],
  sources: [
    'ASTM D341',
    'SAE J300',
    'trade judgement, no source: viscosities of ordinary oils of the grades',
  ],
  examples: [
    {
      title: 'An oil against itself turns alike',
      given: { first: 'SAE 30', second: 'SAE 30', temperature: '5 °C' },
      expect: { ratio: near(1, 1e-12) },
      source: 'by definition',
      mark: 'calculated',
    },
    {
      title: 'A 10W oil resists cranking with at most 7000 mPa·s at −25 °C',
      given: { first: '10W-30', second: 'SAE 30', temperature: '-10 °C' },
      expect: { 'first-limit': { text: 'at most 7000 mPa·s at −25 °C' } },
      source: 'SAE J300, table of 2015',
      mark: 'seen',
    },
  ],
});

function winterLimit(name: OilGradeName, id: string) {
  const found = oilGrades[name];
  if (!('winter' in found)) return [];
  const { crankMPaS, crankC } = winterGrades[found.winter];
  const said = `at most ${crankMPaS} mPa·s at ${minus(crankC)} °C`;
  return [words(id, `${name}, cranking limit`, said, standard('SAE J300, 2015'))];
}

const minus = (value: number) => String(value).replace('-', '−');

function gradesPicture(first: OilGradeName, second: OilGradeName, t: number): Picture {
  const temperatures = spaced(Math.min(-25, t), 100, 51);
  const shown = first === second ? [first] : [first, second];
  return picture({
    title: 'Viscosity over temperature',
    says: 'Both oils thin steeply as they warm; the multigrade is thinner in the cold and about as thick when hot.',
    x: { label: 'Temperature', unit: '°C' },
    y: { label: 'Kinematic viscosity', unit: 'mm²/s', logarithmic: true },
    curves: shown.map((name) => curve(name, temperatures, (c) => viscosityAt(gradeLine(name), c))),
    marks: shown.map((name) => ({ x: t, y: viscosityAt(gradeLine(name), t), label: name })),
  });
}

const oilForTemperature = worksheet({
  id: 'oil-for-temperature',
  group: 'Fuel and oil',
  title: 'Oil for a climate',
  question: 'Which oil suits the temperatures it will work in?',
  purpose: 'Grades whose usual range covers the coldest start and the hottest day.',
  fields: {
    coldest: ask.in('°C', 'Coldest start', 'Of the season the oil stays in.', {
      hint: '-5 °C',
      within: airSpan,
    }),
    hottest: ask.in('°C', 'Hottest day', '30 °C stands as a summer day (common practice).', {
      standard: '30 °C',
      within: airSpan,
    }),
  },
  compute: ({ coldest, hottest }) => {
    const fit = gradesFor(coldest, hottest);
    const covering = fit.join(', ') || 'none covers both: change the oil with the season';
    const remarks = fit.map((name) => `${name}: ${oilGrades[name].remark}`);
    return [
      words('grades', 'Grades that cover it', covering, practice),
      lines('remarks', 'Mind', remarks, practice),
    ];
  },
  cautions: ['The engine maker’s chart goes before this one. Never run without a look at the dipstick.'],
  sources: ['common practice'],
  examples: [
    {
      title: 'A summer mower: SAE 30 among them',
      given: { coldest: '10 °C', hottest: '32 °C' },
      expect: { grades: { text: '10W-30, SAE 30, 10W-40, 15W-40, 20W-50' } },
      source: 'common practice: SAE 30 from 40 °F up, 10W-30 from 0 °F up',
      mark: 'common practice',
    },
  ],
});

export const oilSheets = [oilForTemperature, oilDrag, oilViscosity, oilGradeName];
