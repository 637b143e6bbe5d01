import { amount, computed, lines, type OldWorksheet as Worksheet, words } from '../../worksheet/index.js';
import { classFigures } from '../class-figures.js';
import { percent } from '../figure.js';
import { chooseThickness, type ThicknessChoice } from '../thickness-choice.js';
import { refusing, verdict } from './answers.js';
import {
  lengthField,
  limitAnswer,
  limitFields,
  listIn,
  standardFrom,
  toleranceField,
  usedLimit,
} from './fields.js';

const playRule = computed('play changes by the change of thickness; decided by JCGM 106:2012');

export const endPlayGasket: Worksheet = {
  id: 'end-play-gasket',
  title: 'End play: which gasket or shim',
  question: 'Which gasket or shim gives the right end play?',
  purpose: 'The thickness on offer that brings the end play most surely into its range.',
  fields: [
    lengthField(
      'play',
      'End play measured',
      'With the cover at torque, indicator on the shaft end. 0 if the shaft binds.',
      '0.001 in',
    ),
    lengthField(
      'fitted',
      'Thickness fitted then',
      'Gasket or shims in place while measuring; 0 in for none.',
      '0.015 in',
    ),
    {
      id: 'kind',
      label: 'What sets it',
      help: 'A gasket under the cover opens the play as it gets thicker; a shim on the shaft closes it.',
      kind: 'choice',
      choices: [
        { id: 'gasket', label: 'gasket under the cover' },
        { id: 'shim', label: 'shim on the shaft' },
      ],
      standard: 'gasket',
    },
    {
      id: 'offered',
      label: 'Thicknesses to be had',
      help: 'Each single one. Shims are tried in stacks of up to three; gaskets are never stacked.',
      kind: 'list',
      of: 'length',
      hint: '0.005; 0.009; 0.015; 0.020 in',
    },
    toleranceField('uncertainty', 'Indicator, k = 2', 'a dial indicator on the shaft end', '0.0005 in'),
    {
      ...lengthField(
        'crush',
        'Thickness as clamped, k = 2',
        'How far a clamped gasket strays from its size; 0.001 in stands (trade judgement, no source). 0 in for steel shims.',
        '0.001 in',
      ),
      standard: '0.001 in',
    },
    ...limitFields(classFigures.endPlay),
  ],
  compute: refusing({ u: 'uncertainty', uThickness: 'crush', limit: 'most' }, (given) => {
    const unit = given.quantity('play').unit;
    const used = usedLimit(given, classFigures.endPlay, unit);
    const found = chooseThickness({
      measured: given.in('play', unit),
      u: standardFrom(given, 'uncertainty', unit),
      fitted: given.in('fitted', unit),
      offered: listIn(given, 'offered', unit),
      kind: given.choice('kind') === 'shim' ? 'shim' : 'gasket',
      uThickness: standardFrom(given, 'crush', unit),
      limit: used.limit,
      unit,
    });
    return [
      verdict('now', 'As it stands', found.now, used.origin),
      limitAnswer(used, unit),
      words('do', 'Do', found.words, playRule),
      ...(found.choice ? choiceAnswers(found.choice, unit) : []),
      lines(
        'all',
        'Every choice',
        found.choices.slice(0, 8).map((choice) => choiceLine(choice, unit)),
        playRule,
      ),
    ];
  }),
  cautions: [
    'Never draw a cover down by its bolts against resistance: something inside is not seated.',
    'Measure again after fitting, and turn the shaft: it must turn with two fingers.',
  ],
  sources: ['common practice', `class figure: ${classFigures.endPlay.source}`],
  examples: [
    {
      title: '0.001 in of play with a 0.015 in gasket: 0.020 in gives 0.006 in',
      given: {
        play: '0.001 in',
        fitted: '0.015 in',
        offered: '0.005; 0.009; 0.015; 0.020 in',
        least: '0.002 in',
        most: '0.008 in',
      },
      expect: {
        thickness: { value: 0.02, unit: 'in', tolerance: 1e-9 },
        expected: { value: 0.006, unit: 'in', tolerance: 1e-9 },
      },
      source: 'own arithmetic: 0.001 + 0.020 − 0.015; range from TM 5-4240-501-14P',
      mark: 'calculated',
    },
    {
      title: '0.012 in of play and shims on the shaft: one of 0.007 in leaves 0.005 in',
      given: {
        play: '0.012 in',
        fitted: '0 in',
        kind: 'shim',
        offered: '0.007; 0.015 in',
        crush: '0 in',
        least: '0.002 in',
        most: '0.008 in',
      },
      expect: {
        thickness: { value: 0.007, unit: 'in', tolerance: 1e-9 },
        expected: { value: 0.005, unit: 'in', tolerance: 1e-9 },
      },
      source: 'own arithmetic',
      mark: 'calculated',
    },
  ],
};

function choiceAnswers({ thickness, play, decision }: ThicknessChoice, unit: string) {
  return [
    amount('thickness', 'Thickness', thickness, unit, playRule),
    amount('expected', 'End play to expect', play, unit, playRule, {
      note: `chance that it conforms: ${percent(decision.probabilityOfConformity)}; measure again`,
    }),
  ];
}

function choiceLine({ stack, play, decision }: ThicknessChoice, unit: string): string {
  const said = (x: number) => String(Number(x.toFixed(6)));
  const what = stack.length === 0 ? 'none' : stack.map(said).join(' + ');
  return `${what}: play ${said(play)} ${unit}, ${percent(decision.probabilityOfConformity)}`;
}
