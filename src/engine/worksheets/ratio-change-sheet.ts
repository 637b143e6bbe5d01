import {
  type Answer,
  amount,
  oldAsk as ask,
  computed,
  curve,
  picture,
  spaced,
  type OldWorksheet as Worksheet,
} from '../../worksheet/index.js';
import { architectures } from '../cranking/class-engine.js';
import { crank } from '../cranking/crank.js';
import { crankedSetup } from '../cranking/expected.js';
import { requireWithin } from '../error.js';
import { type FiringGeometry, likelyFiring } from '../firing/expected-firing.js';
import type { FiringResult } from '../firing/fire.js';
import { refusing } from './answers.js';
import { psi } from './compression-picture.js';
import { bore, rod, stroke } from './fields.js';
import {
  fieldOf,
  firingModel,
  firingSources,
  geometryOf,
  kind,
  shopAir,
  speed,
  withoutKnock,
} from './firing-fields.js';

export const ratioChange: Worksheet = {
  id: 'ratio-change',
  title: 'Gain or cost of another compression ratio',
  question: 'What does it gain or cost to change the compression ratio?',
  purpose: 'What a milled head, a thick gasket or carbon does to work, pressure and the push on the head.',
  fields: [
    kind(architectures),
    bore,
    stroke,
    ask('ratio', 'ratio', 'Ratio now', 'From the compression-ratio worksheet or the maker’s sheet.', '8.3:1'),
    ask('ratio', 'new-ratio', 'Ratio then', 'After milling, another gasket or scraping off carbon.', '8.9:1'),
    rod,
    speed,
  ],
  compute: refusing(fieldOf, (given) => {
    const geometry = geometryOf(given);
    const asked = { rpm: given.in('speed', 'rpm'), weather: shopAir };
    const at = (compressionRatio: number) => likelyFiring({ ...geometry, compressionRatio }, asked);
    const newRatio = requireWithin(given.si('new-ratio'), 1.5, 20, 'new-ratio');
    const [now, then] = [at(given.si('ratio')), at(newRatio)];
    const change = (of: (each: FiringResult) => number) => 100 * (of(then) / of(now) - 1);
    const same = computed('the same charge, spark for its best, firing stroke at both ratios (own model)');
    return [
      amount(
        'work',
        'Change in the work of each firing',
        change((e) => e.indicatedJ),
        '%',
        same,
        {
          note: 'friction unchanged, power at the shaft moves a little more',
          picture: ratioPicture(at, given.si('ratio'), newRatio),
        },
      ),
      amount(
        'peak',
        'Change in the highest pressure and the push on the head',
        change((e) => e.peakPa),
        '%',
        same,
      ),
      amount('peak-now', 'Highest pressure now', now.peakPa / 1e6, 'MPa', firingModel),
      amount('peak-then', 'Highest pressure then', then.peakPa / 1e6, 'MPa', firingModel),
      ...gaugeAnswers(geometry, given.si('ratio'), newRatio),
    ];
  }),
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
      expect: { work: { value: -9.4, unit: '%', tolerance: 2.5 } },
      source:
        'air-standard Otto cycle, Thermodynamics: An Engineering Approach, 7th ed., ch. 9: 0.5116/0.5647',
      mark: 'calculated',
    },
  ],
};

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
