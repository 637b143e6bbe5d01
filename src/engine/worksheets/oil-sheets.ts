import {
  amount,
  oldAsk as ask,
  oldChoice as choice,
  computed,
  curve,
  lines,
  number,
  oldOptional as optional,
  type Picture,
  picture,
  practice,
  spaced,
  oldStanding as standing,
  type OldWorksheet as Worksheet,
  words,
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
  type Summer,
  summerGrades,
  summerGradesOf,
  winterGrades,
} from '../oil-grades.js';
import { viscosityAt, viscosityLine } from '../viscosity.js';
import { viscosityIndex } from '../viscosity-index.js';
import { refusing } from './answers.js';

const d341 = computed('ASTM D341: log log(ν + 0.7) = A − B log T, T = t + 273.15');
const viscosity = (id: string, label: string, help: string, hint: string) =>
  ask('kinematic-viscosity', id, label, help, hint);
const names = Object.keys(oilGrades) as OilGradeName[];
const grade = (id: string, label: string, standard: OilGradeName) =>
  choice(
    id,
    label,
    `${standard} stands (common practice).`,
    names.map((name) => [name, name] as const),
    standard,
  );

export const oilViscosity: Worksheet = {
  id: 'oil-viscosity',
  title: 'Oil viscosity at a temperature',
  question: 'How thick is this oil at another temperature?',
  purpose: 'Viscosity at any temperature from two points on the oil’s data sheet, and its viscosity index.',
  fields: [
    viscosity('at-forty', 'At 40 °C', 'From the data sheet.', '68 mm²/s'),
    viscosity('at-hundred', 'At 100 °C', 'From the data sheet.', '10.5 mm²/s'),
    ask('temperature', 'temperature', 'Temperature', 'Where it is wanted.', '-10 °C'),
  ],
  compute: refusing(
    { viscosity: 'at-forty', viscosity40: 'at-forty', viscosity100: 'at-hundred' },
    (given) => {
      const [at40, at100] = [given.in('at-forty', 'mm²/s'), given.in('at-hundred', 'mm²/s')];
      const line = viscosityLine({ celsius: 40, mm2PerS: at40 }, { celsius: 100, mm2PerS: at100 });
      const t = given.in('temperature', '°C');
      const { index, procedure } = viscosityIndex(at40, at100);
      return [
        amount('viscosity', 'Viscosity', viscosityAt(line, t), 'mm²/s', d341, {
          note: t < 0 || t > 120 ? 'far outside the two points: an estimate' : undefined,
        }),
        number(
          'index',
          'Viscosity index',
          Math.round(index),
          0,
          computed(`ASTM D2270, procedure ${procedure}`),
        ),
      ];
    },
  ),
  cautions: ['Oil thinned by gasoline or thickened by soot is not on its data sheet’s line.'],
  sources: ['ASTM D341', 'ASTM D2270'],
  examples: [
    {
      title: '32 at 40 °C and 5.4 at 100 °C: 8.5 at 80 °C',
      given: { 'at-forty': '32 mm²/s', 'at-hundred': '5.4 mm²/s', temperature: '80 °C' },
      expect: { viscosity: { value: 8.5, unit: 'mm²/s', tolerance: 0.05 } },
      source: 'a public worked example of ASTM D341 (T = t + 273)',
      mark: 'seen',
    },
    {
      title: '73.30 and 8.86: index 92',
      given: { 'at-forty': '73.30 mm²/s', 'at-hundred': '8.86 mm²/s', temperature: '40 °C' },
      expect: { index: { value: 92, tolerance: 0 } },
      source: 'ASTM D2270, worked example 5.1.4',
      mark: 'seen',
    },
    {
      title: '22.83 and 5.05: index 156',
      given: { 'at-forty': '22.83 mm²/s', 'at-hundred': '5.05 mm²/s', temperature: '40 °C' },
      expect: { index: { value: 156, tolerance: 0 } },
      source: 'ASTM D2270, worked example 6.1.4',
      mark: 'seen',
    },
  ],
};

/** What else the table says of an oil of this viscosity. */
function saeNote(grades: readonly Summer[], at100: number): string | undefined {
  const said = [
    ...(grades.length
      ? [
          `alone at least ${grades.map((each) => leastHighShear(each)).join(' or ')} mPa·s at 150 °C under shear`,
        ]
      : []),
    ...(at100 >= leastOfOldSae20 && at100 < summerGrades['20'].least100 ? ['before 2013 an SAE 20'] : []),
  ];
  return said.length ? said.join('; ') : undefined;
}

export const oilGradeName: Worksheet = {
  id: 'oil-grade',
  title: 'Which grade is it',
  question: 'Which SAE grade or ISO class is this oil?',
  purpose: 'The grades whose limits hold a measured viscosity.',
  fields: [
    optional(viscosity('at-hundred', 'At 100 °C', 'For the SAE grade.', '10.5 mm²/s')),
    optional(viscosity('at-forty', 'At 40 °C', 'For the ISO class.', '46 mm²/s')),
  ],
  compute: refusing({ viscosity100: 'at-hundred', viscosity40: 'at-forty' }, (given) => {
    if (!given.has('at-hundred') && !given.has('at-forty'))
      throw new EngineError('one of the two viscosities is wanted.', 'at-hundred');
    const sae = given.has('at-hundred') ? summerGradesOf(given.in('at-hundred', 'mm²/s')) : undefined;
    const iso = given.has('at-forty') ? isoClassOf(given.in('at-forty', 'mm²/s')) : undefined;
    const none = 'none: it lies outside or between them';
    return [
      ...(sae
        ? [
            words(
              'sae',
              'SAE grade',
              sae.length ? sae.map((each) => `SAE ${each}`).join(' or ') : none,
              {
                ...{ from: 'standard', detail: 'SAE J300, 2015' },
              },
              { note: saeNote(sae, given.in('at-hundred', 'mm²/s')) },
            ),
          ]
        : []),
      ...(given.has('at-forty')
        ? [
            words('iso', 'ISO class', iso ? `VG ${iso}` : none, {
              from: 'standard',
              detail: 'ISO 3448: midpoint ± 10 % at 40 °C',
            }),
          ]
        : []),
    ];
  }),
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
};

export const oilDrag: Worksheet = {
  id: 'oil-drag',
  title: 'Cranking drag of two oils',
  question: 'How much harder does it crank on the other oil in the cold?',
  purpose: 'Viscosity of two grades at the coldest start and how much harder the second turns.',
  fields: [
    grade('first', 'Oil', '10W-30'),
    grade('second', 'Against', 'SAE 30'),
    ask('temperature', 'temperature', 'Coldest start', 'Of the engine itself after a night.', '-5 °C'),
  ],
  compute: refusing({}, (given) => {
    const [first, second] = [given.choice('first') as OilGradeName, given.choice('second') as OilGradeName];
    const t = given.in('temperature', '°C');
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
      ...[first, second].flatMap((name, i) => winterLimit(name, i === 0 ? 'first-limit' : 'second-limit')),
    ];
  }),
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
      expect: { ratio: { value: 1, tolerance: 1e-12 } },
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
};

function winterLimit(name: OilGradeName, id: string) {
  const found = oilGrades[name];
  if (!('winter' in found)) return [];
  const { crankMPaS, crankC } = winterGrades[found.winter];
  return [
    words(id, `${name}, cranking limit`, `at most ${crankMPaS} mPa·s at ${minus(crankC)} °C`, {
      from: 'standard',
      detail: 'SAE J300, 2015',
    }),
  ];
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

export const oilForTemperature: Worksheet = {
  id: 'oil-for-temperature',
  title: 'Oil for a climate',
  question: 'Which oil suits the temperatures it will work in?',
  purpose: 'Grades whose usual range covers the coldest start and the hottest day.',
  fields: [
    ask('temperature', 'coldest', 'Coldest start', 'Of the season the oil stays in.', '-5 °C'),
    standing(
      ask(
        'temperature',
        'hottest',
        'Hottest day',
        '30 °C stands as a summer day (common practice).',
        '30 °C',
      ),
      '30 °C',
    ),
  ],
  compute: refusing({}, (given) => {
    const fit = gradesFor(given.in('coldest', '°C'), given.in('hottest', '°C'));
    return [
      words(
        'grades',
        'Grades that cover it',
        fit.length ? fit.join(', ') : 'none covers both: change the oil with the season',
        practice,
      ),
      lines(
        'remarks',
        'Mind',
        fit.map((name) => `${name}: ${oilGrades[name].remark}`),
        practice,
      ),
    ];
  }),
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
};

export const oilSheets: readonly Worksheet[] = [oilViscosity, oilGradeName, oilDrag, oilForTemperature];
