import {
  type Answer,
  amount,
  ask,
  computed,
  curve,
  near,
  picture,
  spaced,
  worksheet,
} from '../../worksheet/index.js';
import { architectures } from '../cranking/class-engine.js';
import { crank } from '../cranking/crank.js';
import { crankedSetup } from '../cranking/expected.js';
import { requireWithin } from '../error.js';
import { type FiringGeometry, likelyFiring } from '../firing/expected-firing.js';
import type { FiringResult } from '../firing/fire.js';
import { bore, geometryOf, kind, psi, ratioSpan, rod, shopAir, stroke } from './fields.js';
import { fieldOf, firingModel, firingSources, givesFiring, speed, withoutKnock } from './firing-fields.js';

export const ratioChange = worksheet({
  id: 'ratio-change',
  group: 'Firing and power',
  title: 'Gain or cost of another compression ratio',
  question: 'What does it gain or cost to change the compression ratio?',
  purpose: 'What a milled head, a thick gasket or carbon does to work, pressure and the push on the head.',
  fields: {
    architecture: kind(architectures, givesFiring),
    bore,
    stroke,
    ratio: ask.in('1', 'Ratio now', 'From the compression-ratio worksheet or the maker’s sheet.', {
      hint: '8.3:1',
      within: ratioSpan,
    }),
    'new-ratio': ask.in('1', 'Ratio then', 'After milling, another gasket or scraping off carbon.', {
      hint: '8.9:1',
      within: ratioSpan,
    }),
    rod,
    speed,
  },
  compute: ({ 'new-ratio': wanted, speed: rpm, ...given }) => {
    const geometry = geometryOf(given);
    const { ratio } = given;
    const asked = { rpm, weather: shopAir };
    const at = (compressionRatio: number) => likelyFiring({ ...geometry, compressionRatio }, asked);
    const newRatio = requireWithin(wanted, 1.5, 20, 'new-ratio');
    const [now, then] = [at(ratio), at(newRatio)];
    const change = (of: 'indicatedJ' | 'peakPa') => 100 * (then[of] / now[of] - 1);
    const same = computed('the same charge, spark for its best, firing stroke at both ratios (own model)');
    return [
      amount('work', 'Change in the work of each firing', change('indicatedJ'), '%', same, {
        note: 'friction unchanged, power at the shaft moves a little more',
        picture: ratioPicture(at, ratio, newRatio),
      }),
      amount('peak', 'Change in the highest pressure and the push on the head', change('peakPa'), '%', same),
      amount('peak-now', 'Highest pressure now', now.peakPa / 1e6, 'MPa', firingModel),
      amount('peak-then', 'Highest pressure then', then.peakPa / 1e6, 'MPa', firingModel),
      ...gaugeAnswers(geometry, ratio, newRatio),
    ];
  },
  names: fieldOf,
  cautions: [
    'More ratio wants fuel that does not knock and a later spark; an air-cooled head has little in hand.',
    withoutKnock,
    'Milling brings valves and piston nearer to the head: check with clay before it runs.',
  ],
  sources: firingSources,
  examples: [
    {
      title: 'Ideal cycle from ratio 8 to 6: 9.4 % less; real gas and walls stay within 2.5 points of it',
      given: {
        architecture: 'overhead-valve',
        bore: '65 mm',
        stroke: '62 mm',
        ratio: '8:1',
        'new-ratio': '6:1',
      },
      expect: { work: near(-9.4, 2.5, '%') },
      source:
        'air-standard Otto cycle, Thermodynamics: An Engineering Approach, 7th ed., ch. 9: 0.5116/0.5647',
      mark: 'calculated',
    },
  ],
});

/** What the mechanic sees of it: the gauge on a sound one, no release acting. */
function gaugeAnswers(geometry: FiringGeometry, now: number, then: number): Answer[] {
  const read = (compressionRatio: number) => {
    const setup = crankedSetup({ ...geometry, compressionRatio, release: 'none' }, { by: 'rope' });
    return crank(setup.engine, setup.gauge, setup.conditions).readingPa / psi;
  };
  const how = computed('cranking cycle at both ratios, by rope, no release (own model)');
  return [
    amount('gauge-now', 'Compression gauge on a sound one now', read(now), 'psi', how),
    amount('gauge-then', 'Compression gauge then', read(then), 'psi', how, {
      note: 'a harder pull is slowed more, so that the gauge shows less of it than the firing does',
    }),
  ];
}

function ratioPicture(at: (ratio: number) => FiringResult, now: number, then: number) {
  const [from, to] = [Math.min(5, now, then), Math.max(10, now, then)];
  const work = (ratio: number) => at(ratio).meanPa / 1000;
  return picture({
    title: 'Mean pressure over compression ratio',
    says: 'Every step of ratio gains less than the one before.',
    x: { label: 'Compression ratio', unit: '' },
    y: { label: 'Indicated mean pressure', unit: 'kPa' },
    curves: [curve('same charge', spaced(from, to, 6), work)],
    marks: [
      { x: now, y: work(now), label: 'now' },
      { x: then, y: work(then), label: 'then' },
    ],
  });
}
