import { of, showBoth } from '../../quantity/index.js';
import { ask, computed, lines, optional, ruleOfThumb, words, worksheet } from '../../worksheet/index.js';
import { looseningOrder, looseningSteps, passes, tighteningSteps } from '../passes.js';
import { checkOrder, tighteningOrder } from '../pattern.js';
import { commonPractice, sources } from '../sources.js';
import { orderField, torqueField } from './fields.js';

const spaced = (holes: readonly number[]) => holes.join(' ');
const said = (newtonMeter: number) => showBoth(of(newtonMeter, 'N·m'), 'inch');
const highest = (holes: readonly number[]) => Math.max(0, ...holes);

export const tighteningOrderSheet = worksheet({
  id: 'tightening-order',
  group: 'In which order?',
  title: 'Tightening order',
  question: 'In which order do I tighten these bolts?',
  purpose: "An order from where the holes are, for a joint whose maker's sequence is lost.",
  fields: {
    holes: ask.points(
      'Holes',
      'The place of each hole as x,y in mm, in the order in which you number them; a unit may stand at the end.',
      '0,0 60,0 60,40 0,40',
    ),
    start: ask.count('Begin with hole', 'For a round flange; hole 1 stands when empty.', {
      hint: '1',
      optional: true,
      within: [1, 100],
    }),
    order: optional(orderField('Goes before the computed one, if you have it. Each hole once.')),
  },
  compute: ({ holes, start, order: given }) => {
    const found = tighteningOrder(holes, start === undefined ? {} : { start });
    const makers = given && checkOrder(given, holes.length);
    const order = makers ?? found.order;
    const origin = makers ? ({ from: "maker's sheet" } as const) : computed(found.source);
    return [
      words('order', 'Order', spaced(order), origin),
      words('rule', 'Pattern of the holes', found.rule, computed(found.source), { note: found.why }),
      words('around', 'For a final round', spaced(makers ?? found.around), origin),
      words('loosening', 'To slacken', spaced(looseningOrder(order)), ruleOfThumb(commonPractice)),
    ];
  },
  cautions: ["The maker's sequence goes first."],
  sources: [sources.flange, `center-out for heads and covers: ${commonPractice}`],
  examples: [
    {
      title: 'eight holes round a circle: 1 5 3 7 2 6 4 8',
      given: { holes: '50,0; 35.4,-35.4; 0,-50; -35.4,-35.4; -50,0; -35.4,35.4; 0,50; 35.4,35.4' },
      expect: { order: { text: '1 5 3 7 2 6 4 8' }, rule: { text: 'round cross pattern' } },
      source: sources.flange,
      mark: 'memory',
    },
    {
      title: 'two rows of five: from the center outward, crossing over',
      given: { holes: '0,30; 40,30; 80,30; 120,30; 160,30; 0,-30; 40,-30; 80,-30; 120,-30; 160,-30' },
      expect: { order: { text: '3 8 2 9 7 4 6 5 1 10' }, rule: { text: 'center-out crosswise' } },
      source: 'center-out, crosswise, for cylinder heads',
      mark: 'common practice',
    },
  ],
});

export const tighteningPasses = worksheet({
  id: 'tightening-passes',
  group: 'In which order?',
  title: 'Tightening in passes',
  question: 'What do I set on each go?',
  purpose: 'Every turn of the wrench: pass, hole and torque.',
  fields: {
    torque: torqueField('The full torque.'),
    parts: ask.numbers(
      'Parts of it',
      'Rising, the last is 1. Half and full stands when empty: common practice for small heads.',
      { standard: '0.5, 1', hint: '0.3, 0.7, 1', within: [0.05, 1] },
    ),
    round: ask.choice(
      'Round at full torque',
      'Once more over all bolts in turn, until none moves.',
      ['yes', 'no'],
      'no',
    ),
    order: orderField('The tightening order, as hole numbers.'),
  },
  compute: ({ torque, parts, round, order }) => {
    const goes = passes(torque, parts, round === 'yes');
    const steps = tighteningSteps(checkOrder(order, highest(order)), goes);
    const how = computed(`parts of the full torque; ${commonPractice}`);
    return [
      lines(
        'passes',
        'Settings',
        goes.map(
          ({ pass, torqueNm, isRound }) => `${isRound ? 'final round' : `pass ${pass}`}: ${said(torqueNm)}`,
        ),
        how,
      ),
      lines(
        'steps',
        'Step by step',
        steps.map(({ pass, hole, torqueNm }) => `pass ${pass}, hole ${hole}: ${said(torqueNm)}`),
        how,
      ),
      words('count', 'Turns of the wrench', String(steps.length), how),
    ];
  },
  cautions: ["The maker's steps go first; some heads are turned by angle instead."],
  sources: ['ASME PCC-1, Table 2 (from memory)', commonPractice],
  examples: [
    {
      title: 'eight bolts to 140 in-lb in two passes: sixteen turns of the wrench',
      given: { torque: '140 in-lb', parts: '0.5, 1', round: 'no', order: '1, 5, 3, 7, 2, 6, 4, 8' },
      expect: { count: { text: '16' } },
      source: 'two passes in the maker’s sequence',
      mark: 'common practice',
    },
  ],
});

export const looseningOrderSheet = worksheet({
  id: 'loosening-order',
  group: 'In which order?',
  title: 'Loosening order',
  question: 'In which order do I slacken this head?',
  purpose: 'The tightening order backward, in steps, so that the last tight bolt does not bend the part.',
  fields: { order: orderField('The tightening order, as hole numbers.') },
  compute: ({ order: tightening }) => {
    const order = checkOrder(tightening, highest(tightening));
    const how = ruleOfThumb(commonPractice);
    return [
      words('order', 'Order', spaced(looseningOrder(order)), how),
      lines(
        'steps',
        'Step by step',
        looseningSteps(order).map(({ go, hole, act }) => `go ${go}, hole ${hole}: ${act}`),
        how,
      ),
    ];
  },
  cautions: ['Cold engine only: a hot head warps when it is slackened.'],
  sources: [commonPractice],
  examples: [
    {
      title: 'the tightening order backward',
      given: { order: '1, 3, 2, 4' },
      expect: { order: { text: '4 2 3 1' } },
      source: 'loosen in reverse of the tightening order',
      mark: 'common practice',
    },
  ],
});
