import { to } from '../../quantity/index.js';
import { amount, ask, computed, lines, near, worksheet } from '../../worksheet/index.js';
import { classFigures } from '../class-figures.js';
import { decide } from '../decide.js';
import { GaugeError } from '../error.js';
import { classRingGap, gapClosing, gapInBore, growthFromGaps } from '../ring-gap.js';
import { failing, verdict } from './answers.js';
import {
  diameterSpan,
  feelers,
  gapSpan,
  limitAnswer,
  limitField,
  limitFields,
  materialField,
  standardIn,
  toleranceField,
  type UsedLimit,
  usedLimit,
} from './fields.js';
import { linePicture } from './pictures.js';

const arithmetic = 'own arithmetic';
const ringGeometry = computed('a closed circle opens by π for each unit of diameter');

export const ringEndGap = worksheet({
  id: 'ring-end-gap',
  group: 'Is it worn?',
  title: 'Ring end gap',
  question: 'Is this ring gap right, and what will it be in the worn part of the bore?',
  purpose: 'Decision on the gap, the gap at another diameter, and the gap that heat needs.',
  fields: {
    gap: ask.quantity(
      'length',
      'Gap measured',
      'Ring squared with the piston, in the unworn part of the bore.',
      { hint: '0.014 in', within: gapSpan },
    ),
    bore: ask.quantity('length', 'Bore there', 'Diameter where the gap was measured.', {
      hint: '2.5625 in',
      within: diameterSpan,
    }),
    worn: ask.quantity('length', 'Bore where worn', 'Largest diameter: gives the gap there.', {
      hint: '2.5655 in',
      optional: true,
      within: diameterSpan,
    }),
    uncertainty: feelers,
    'bore-uncertainty': toleranceField('Bore gauge, k = 2', 'a dial bore gauge', '0.0003 in'),
    ring: materialField('Ring', 'cast iron'),
    wall: materialField('Bore wall', 'cast iron'),
    ...limitFields(classFigures.ringGap),
  },
  names: { u: 'uncertainty', toBore: 'worn', fromBore: 'bore' },
  compute: ({ ring, wall, ...given }) => {
    const { unit } = given.gap;
    const [gap, bore, u] = [to(given.gap, unit), to(given.bore, unit), standardIn(given.uncertainty, unit)];
    const worn = given.worn && to(given.worn, unit);
    const used = usedLimit(classFigures.ringGap, unit, given);
    const closing = gapClosing({
      bore,
      ringMaterial: ring,
      ringC: 200,
      boreMaterial: wall,
      boreC: 150,
    });
    const picture = { picture: gapPicture({ gap, bore, worn: worn ?? bore, unit, used }) };
    return [
      gap < closing
        ? failing('verdict', 'Gap', 'smaller than what heat closes: the ends would butt', picture)
        : verdict('verdict', 'Gap', decide({ value: gap, u, limit: used.limit, unit }), used.origin, picture),
      limitAnswer(used, unit),
      ...(worn === undefined
        ? []
        : [
            amount('worn-gap', 'Gap where the bore is worn', gapInBore(gap, bore, worn), unit, ringGeometry, {
              u: Math.hypot(u, Math.PI * Math.SQRT2 * standardIn(given['bore-uncertainty'], unit)),
            }),
          ]),
      amount(
        'heat',
        'Gap that heat closes',
        closing,
        unit,
        computed('linear expansion, ring at 200 °C, wall at 150 °C (trade judgement, no source)'),
        { note: 'a smaller gap lets the ends butt' },
      ),
      lines('handbook', 'Handbook rule for this bore', handbook(bore, unit), {
        from: 'rule of thumb',
        detail:
          'cast-iron ring, 0.0035 to 0.008 for each unit of bore: a public handbook, second-hand; typical of the class, not this engine’s',
      }),
    ];
  },
  cautions: [
    'A ring that is not square, or sits in the worn zone, misleads: push it down with the piston and measure below the lowest ring travel.',
    'Too tight: file the ends square, a little at a time, and only rings that may be filed. Plated faces chip: file from the face inward.',
    'New rings still too wide: the bore is worn, not the rings.',
  ],
  sources: ['geometry', classFigures.ringGap.source],
  examples: [
    {
      title: 'Gap 0.010 in at 2.5625 in; the bore is 0.003 in wider above: 0.0194 in',
      given: { gap: '0.010 in', bore: '2.5625 in', worn: '2.5655 in' },
      expect: { 'worn-gap': near(0.019425, 5e-6, 'in') },
      source: `${arithmetic}: 0.010 + π × 0.003`,
      mark: 'calculated',
    },
    {
      title: 'Handbook rule: 2.5625 in bore, 0.0090 to 0.0205 in',
      given: { gap: '0.014 in', bore: '2.5625 in' },
      expect: { handbook: { text: 'least 0.00897 in; most 0.0205 in' } },
      source: 'a public handbook: 0.0035 in for each inch of bore at least, 0.008 in at most',
      mark: 'seen',
    },
  ],
});

function handbook(bore: number, unit: string): string[] {
  const { least, most } = classRingGap(bore);
  return [`least ${Number(least.toPrecision(3))} ${unit}`, `most ${Number(most.toPrecision(3))} ${unit}`];
}

export const boreGrowthFromGaps = worksheet({
  id: 'bore-growth-from-gaps',
  group: 'Is it worn?',
  title: 'Bore taper with feelers alone',
  question: 'I have no bore gauge: can a ring and feelers show the taper?',
  purpose: 'How much wider the bore is at one depth than at another, from the end gap of one ring at both.',
  fields: {
    worn: ask.quantity('length', 'Gap where worn', 'Ring squared near the top of its travel.', {
      hint: '0.019 in',
      within: gapSpan,
    }),
    unworn: ask.quantity(
      'length',
      'Gap where unworn',
      'The same ring squared below the lowest ring travel.',
      { hint: '0.010 in', within: gapSpan },
    ),
    uncertainty: feelers,
    most: limitField('Taper allowed', classFigures.boreTaper),
  },
  names: { u: 'uncertainty', gap: 'worn', unwornGap: 'unworn' },
  compute: ({ worn, unworn, uncertainty, most }) => {
    const { unit } = worn;
    const used = usedLimit(classFigures.boreTaper, unit, { most });
    const found = growthFromGaps(to(worn, unit), to(unworn, unit), standardIn(uncertainty, unit));
    if (found.growth < -2 * found.u)
      throw new GaugeError(
        'A bore is not narrower where it is worn: the two gaps are swapped, or the ring stood askew.',
        'worn',
        found.growth,
      );
    return [
      amount('growth', 'Wider by', found.growth, unit, ringGeometry, { u: found.u }),
      verdict(
        'verdict',
        'Taper',
        decide({ value: found.growth, u: found.u, limit: used.limit, unit }),
        used.origin,
      ),
      limitAnswer(used, unit),
    ];
  },
  cautions: ['Use one ring for both readings, square both times. Out-of-round does not show.'],
  sources: ['geometry'],
  examples: [
    {
      title: 'Gaps 0.019 and 0.010 in: 0.0029 in wider',
      given: { worn: '0.019 in', unworn: '0.010 in' },
      expect: { growth: near(0.0028648, 1e-7, 'in') },
      source: `${arithmetic}: 0.009/π`,
      mark: 'calculated',
    },
  ],
});

/** The gap of the same ring wherever in the bore it stands. */
function gapPicture(given: { gap: number; bore: number; worn: number; unit: string; used: UsedLimit }) {
  const { gap, bore, worn, unit, used } = given;
  const reach = Math.max(worn - bore, 0.002 * bore);
  // below this the ends would butt
  const least = Math.max(bore - gap / Math.PI, bore - 0.5 * reach);
  return linePicture({
    title: 'The same ring up and down the bore',
    says: 'Where the bore is wider the gap opens by a little more than three times as much.',
    x: { label: 'bore', unit },
    y: { label: 'gap', unit },
    label: 'gap of this ring',
    from: least,
    to: bore + 1.5 * reach,
    at: (at) => Math.max(0, gap + Math.PI * (at - bore)),
    mark: { x: worn, label: worn === bore ? 'as measured' : 'where worn' },
    limit: used.limit,
  });
}
