import { to } from '../../quantity/index.js';
import { amount, ask, computed, lines, near, words, worksheet } from '../../worksheet/index.js';
import { classFigures } from '../class-figures.js';
import { chanceOf } from '../figure.js';
import { chooseThickness, type ThicknessChoice } from '../thickness-choice.js';
import { failing, verdict } from './answers.js';
import {
  gapSpan,
  limitAnswer,
  limitFields,
  listIn,
  standardIn,
  toleranceField,
  toolSpan,
  usedLimit,
} from './fields.js';

const playRule = computed('play changes by the change of thickness; decided by JCGM 106:2012');

export const endPlayGasket = worksheet({
  id: 'end-play-gasket',
  group: 'Setting clearances',
  title: 'End play: which gasket or shim',
  question: 'Which gasket or shim gives the right end play?',
  purpose: 'The thickness on offer that brings the end play most surely into its range.',
  fields: {
    play: ask.quantity(
      'length',
      'End play measured',
      'With the cover at torque, indicator on the shaft end. 0 if the shaft binds.',
      { hint: '0.001 in', within: gapSpan },
    ),
    fitted: ask.quantity(
      'length',
      'Thickness fitted then',
      'Gasket or shims in place while measuring; 0 in for none.',
      { hint: '0.015 in', within: gapSpan },
    ),
    kind: ask.choice(
      'What sets it',
      'A gasket under the cover opens the play as it gets thicker; a shim on the shaft closes it.',
      { gasket: 'gasket under the cover', shim: 'shim on the shaft' },
      'gasket',
    ),
    offered: ask.list(
      'length',
      'Thicknesses to be had',
      'Each single one. Shims are tried in stacks of up to three; gaskets are never stacked.',
      { hint: '0.005; 0.009; 0.015; 0.020 in', within: ['0.01 mm', '10 mm'] },
    ),
    uncertainty: toleranceField('Indicator, k = 2', 'a dial indicator on the shaft end', '0.0005 in'),
    crush: ask.quantity(
      'length',
      'Thickness as clamped, k = 2',
      'How far a clamped gasket strays from its size; 0.001 in stands (trade judgement, no source). 0 in for steel shims.',
      { standard: '0.001 in', hint: '0.001 in', within: toolSpan },
    ),
    ...limitFields(classFigures.endPlay),
  },
  names: { u: 'uncertainty', uThickness: 'crush', limit: 'most' },
  compute: ({ play, fitted, kind, offered, uncertainty, crush, ...given }) => {
    const { unit } = play;
    const used = usedLimit(classFigures.endPlay, unit, given);
    const found = chooseThickness({
      measured: to(play, unit),
      u: standardIn(uncertainty, unit),
      fitted: to(fitted, unit),
      offered: listIn(offered, unit),
      kind,
      uThickness: standardIn(crush, unit),
      limit: { ...used.limit, min: used.limit.min ?? 0 },
      unit,
    });
    return [
      play.si > 0
        ? verdict('now', 'As it stands', found.now, used.origin)
        : failing('now', 'As it stands', 'no end play: the shaft binds'),
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
  },
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
        thickness: near(0.02, 1e-9, 'in'),
        expected: near(0.006, 1e-9, 'in'),
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
        thickness: near(0.007, 1e-9, 'in'),
        expected: near(0.005, 1e-9, 'in'),
      },
      source: 'own arithmetic',
      mark: 'calculated',
    },
  ],
});

function choiceAnswers({ thickness, play, decision }: ThicknessChoice, unit: string) {
  return [
    amount('thickness', 'Thickness', thickness, unit, playRule),
    amount('expected', 'End play to expect', play, unit, playRule, {
      note: `chance that it conforms: ${chanceOf(decision.probabilityOfConformity)}; measure again`,
    }),
  ];
}

function choiceLine({ stack, play, decision }: ThicknessChoice, unit: string): string {
  const said = (x: number) => String(Number(x.toFixed(6)));
  const what = stack.length === 0 ? 'none' : stack.map(said).join(' + ');
  return `${what}: play ${said(play)} ${unit}, ${chanceOf(decision.probabilityOfConformity)}`;
}
