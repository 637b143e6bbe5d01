import { to } from '../../quantity/index.js';
import { amount, ask, computed, near, words, worksheet } from '../../worksheet/index.js';
import { atReference, expansions, hotClearance, type Mating, referenceC } from '../thermal.js';
import { diameterSpan, materialField } from './fields.js';
import { linePicture } from './pictures.js';

const how = computed('linear expansion to 20 °C (ISO 1:2016; JCGM 100:2008, H.1.2)');
const tableSource = [...new Set(Object.values(expansions).map(({ source }) => source))];

export const thermalLength = worksheet({
  id: 'thermal-length',
  group: 'Can I trust this reading?',
  title: 'Size at 20 °C',
  question: 'The part is warm: what size is it really?',
  purpose: 'A length read at shop temperature, brought to 20 °C, with what that correction is worth.',
  fields: {
    read: ask.quantity('length', 'Reading', 'As the tool shows it.', {
      hint: '65.000 mm',
      within: ['0.1 mm', '2 m'],
    }),
    part: materialField('Part', 'aluminum'),
    'part-temperature': ask.in('°C', 'Part temperature', 'Of the part itself, not of the air.', {
      hint: '30 °C',
      within: ['-30 °C', '150 °C'],
    }),
    tool: materialField('Tool', 'steel'),
    'tool-temperature': ask.in(
      '°C',
      'Tool temperature',
      'Left empty, as the part: both lay together for an hour.',
      { hint: '30 °C', optional: true, within: ['-30 °C', '100 °C'] },
    ),
  },
  names: { partC: 'part-temperature', toolC: 'tool-temperature' },
  compute: ({ read, part, 'part-temperature': partC, tool, 'tool-temperature': toolC }) => {
    const { unit } = read;
    const { size, correction, u } = atReference({
      ...{ read: to(read, unit), part, partC, tool },
      ...(toolC !== undefined && { toolC }),
    });
    return [
      amount('size', 'Size at 20 °C', size, unit, how, { u, note: 'without the uncertainty of the tool' }),
      amount('correction', 'Correction', correction, unit, how, { u }),
    ];
  },
  cautions: ['A part warm from cleaning reads large. An hour on an iron plate beats any correction.'],
  sources: ['ISO 1:2016', ...tableSource],
  examples: [
    {
      title: 'Aluminum piston 65.000 mm at 30 °C under a steel micrometer at 30 °C: 64.9935 mm',
      given: { read: '65.000 mm', part: 'aluminum', 'part-temperature': '30 °C', tool: 'steel' },
      expect: { size: near(64.9935, 0.00005, 'mm') },
      source: 'own arithmetic: 65 × (1 + 115e-6)/(1 + 215e-6)',
      mark: 'calculated',
    },
  ],
});

export const runningClearance = worksheet({
  id: 'running-clearance',
  group: 'Setting clearances',
  title: 'Clearance when hot',
  question: 'Will this fit still have clearance when it runs hot?',
  purpose: 'Clearance at running temperature from sizes at 20 °C.',
  fields: {
    hole: ask.quantity('length', 'Hole at 20 °C', 'Bore, rod eye, guide.', {
      hint: '65.00 mm',
      within: diameterSpan,
    }),
    'hole-material': materialField('Around the hole', 'cast iron'),
    'hole-temperature': ask.in('°C', 'Hole, running', 'An estimate does.', {
      hint: '150 °C',
      within: ['-30 °C', '400 °C'],
    }),
    shaft: ask.quantity('length', 'Shaft at 20 °C', 'Piston, pin, stem.', {
      hint: '64.90 mm',
      within: diameterSpan,
    }),
    'shaft-material': materialField('Shaft', 'aluminum'),
    'shaft-temperature': ask.in('°C', 'Shaft, running', 'An estimate does.', {
      hint: '200 °C',
      within: ['-30 °C', '400 °C'],
    }),
  },
  compute: (given) => {
    const { unit } = given.hole;
    const mating = (id: 'hole' | 'shaft'): Mating => ({
      size: to(given[id], unit),
      material: given[`${id}-material`],
      hotC: given[`${id}-temperature`],
    });
    const [hole, shaft] = [mating('hole'), mating('shaft')];
    const { clearance, u } = hotClearance(hole, shaft);
    return [
      amount('clearance', 'Clearance when hot', clearance, unit, how, {
        u,
        note: 'the uncertainty is that of the alloys alone',
        picture: hotPicture(hole, shaft, unit),
      }),
      words('meaning', 'Which means', hotWords(clearance, u), how),
    ];
  },
  cautions: [
    'Temperatures are guesses and the bore is not evenly hot: read this as a warning, not as a limit.',
  ],
  sources: tableSource,
  examples: [
    {
      title: 'Iron bore 65.00 at 150 °C, aluminum piston 64.93 at 200 °C: seizes by 0.085 mm',
      given: {
        hole: '65.00 mm',
        'hole-material': 'cast iron',
        'hole-temperature': '150 °C',
        shaft: '64.93 mm',
        'shaft-material': 'aluminum',
        'shaft-temperature': '200 °C',
      },
      expect: { clearance: near(-0.08495, 0.00001, 'mm') },
      source: 'own arithmetic: 65 × 1.001482 − 64.93 × 1.00387',
      mark: 'calculated',
    },
  ],
});

function hotWords(clearance: number, u: number): string {
  if (clearance - 2 * u > 0) return 'It keeps clearance.';
  return clearance + 2 * u < 0 ? 'It would seize.' : 'It may or may not keep clearance: the alloys decide.';
}

/** The clearance over the temperature of the shaft, the hole as hot as said. */
function hotPicture(hole: Mating, shaft: Mating, unit: string) {
  const at = (hotC: number) => hotClearance(hole, { ...shaft, hotC }).clearance;
  return linePicture({
    title: 'Clearance as the shaft gets hot',
    says: `With the hole at ${hole.hotC} °C. Where the line meets the shaded stretch the parts touch.`,
    x: { label: 'shaft', unit: '°C' },
    y: { label: 'clearance', unit },
    label: 'clearance',
    from: Math.min(referenceC, shaft.hotC),
    to: Math.max(300, shaft.hotC + 50),
    at,
    mark: { x: shaft.hotC, label: 'as said' },
    limit: { min: 0 },
  });
}
