import {
  amount,
  ask,
  computed,
  near,
  number,
  standard,
  verdict,
  words,
  worksheet,
} from '../../worksheet/index.js';
import { allowedUnbalance, balanceGrades, centrifugalForce, pinResolution } from '../balance.js';
import { decideForEach } from './practice-verdict.js';

const rule = standard('ISO 21940-11: U = 1000·G·m/ω');
const pinRule = computed('moment of friction at the pin');

export const bladeBalance = worksheet({
  id: 'blade-balance',
  group: 'The machine it drives',
  title: 'Balance of a blade or rotor',
  question: 'How far out of balance may this blade be?',
  purpose:
    'The unbalance allowed by its grade in grams at the tip, what hanging it on a pin can tell of that, and whether the weight that levels it is small enough.',
  fields: {
    length: ask.in('mm', 'Length', 'Tip to tip; twice the radius of a rotor.', {
      hint: '21 in',
      within: ['10 mm', '3 m'],
    }),
    mass: ask.in('kg', 'Mass', 'Of the blade or rotor alone.', '2.6 lb'),
    speed: ask.in('rpm', 'Speed', 'At which it works.', '3100 rpm'),
    grade: ask.choice(
      'Grade',
      'G 16 stands for farm and garden machines (ISO 21940-11); the maker may ask for a finer one.',
      {
        G2_5: 'G 2.5: generator rotors',
        G6_3: 'G 6.3: fans, blowers, flywheels, impellers',
        G16: 'G 16: blades and rotors of farm machines',
        G40: 'G 40: wheels',
      },
      'G16',
    ),
    pin: ask.in('mm', 'Pin', 'Diameter where it hangs; 3 mm or less for a cone or a knife edge.', '1/4 in'),
    friction: ask.number('Friction', '0.15 stands for clean dry steel on steel (common practice).', {
      standard: '0.15',
      within: [0, 1],
    }),
    levels: ask.in(
      'g',
      'Weight that levels it',
      'At the tip of the light side; 0 g if it hangs level without.',
      {
        hint: '2 g',
        optional: true,
      },
    ),
  },
  names: { rpm: 'speed' },
  compute: ({ length, mass, speed, grade, pin, friction, levels }) => {
    const radius = length / 2;
    const allowed = allowedUnbalance(balanceGrades[grade].grade, { massKg: mass, rpm: speed });
    const unseen = pinResolution({ massKg: mass, pinDiameterMm: pin, friction });
    return [
      number('allowed', 'Unbalance allowed, g·mm', allowed, 0, rule),
      amount('tip', 'That is, at the tip', allowed / radius, 'g', rule),
      amount('force', 'Pull round at that', centrifugalForce(allowed, speed), 'N', computed('U·ω²')),
      amount('unseen', 'A pin cannot show less than', unseen / radius, 'g', pinRule, {
        note: 'at the tip; what hangs level may be out by this much either way',
      }),
      words('pin-tells', 'The hanging test', pinWords(unseen, allowed), pinRule),
      ...(levels === undefined ? [] : [levelVerdict(levels, { radius, unseen, allowed })]),
    ];
  },
  cautions: [
    'Lead off and blade blocked before it is touched; gloves for the edges.',
    'Grind the heavy end on its back, never weld, drill or bend a blade. A blade that is bent or cracked is renewed, not balanced.',
  ],
  sources: ['ISO 21940-11:2016', 'friction at the pin: common practice'],
  examples: [
    {
      title: 'a rotor of 40 kg at 3600 rpm in G 6.3: 668 g·mm',
      given: { length: '400 mm', mass: '40 kg', speed: '3600 rpm', grade: 'G6_3', pin: '10 mm' },
      expect: { allowed: near(668.5, 0.5), tip: near(3.342, 0.002, 'g') },
      source: 'balancing handbooks: 9549·G·m/n',
      mark: 'memory, recomputed',
    },
    {
      title:
        'a 21 in blade of 1.2 kg that hangs level on a 10 mm pin: up to 3.3 g stays unseen, less than allowed',
      given: { length: '533.4 mm', mass: '1.2 kg', speed: '600 rpm', pin: '10 mm', levels: '0 g' },
      expect: { unseen: near(3.337, 0.005, 'g'), verdict: { text: 'cannot-decide' } },
      source: 'own arithmetic',
      mark: 'calculated',
    },
    {
      title: 'the same blade that wants 8 g to level: too much',
      given: { length: '533.4 mm', mass: '1.2 kg', speed: '3100 rpm', pin: '3 mm', levels: '8 g' },
      expect: { verdict: { text: 'fail' } },
      source: 'own arithmetic',
      mark: 'calculated',
    },
  ],
});

function pinWords(unseen: number, allowed: number): string {
  if (unseen <= allowed / 2) return 'fine enough: level on this pin is within the grade.';
  if (unseen <= allowed)
    return 'just fine enough: level is within the grade, but a blade that needs a weight cannot be told closely.';
  return 'too coarse: a blade may hang level and still be out. Use a thinner pin, a cone or a knife edge.';
}

function levelVerdict(
  levels: number,
  { radius, unseen, allowed }: { radius: number; unseen: number; allowed: number },
) {
  const asked = {
    value: levels,
    u: unseen / radius / Math.sqrt(3), // level anywhere within the friction of the pin, all equally likely
    limit: { max: allowed / radius },
  };
  const found = decideForEach(asked, { metric: 'g', inch: 'oz' });
  return verdict('verdict', 'In balance', found.verdict, found.why, rule);
}
