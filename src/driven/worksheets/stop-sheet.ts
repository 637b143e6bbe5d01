import { decideExtreme } from '../../gauge/index.js';
import { to } from '../../quantity/index.js';
import { amount, ask, computed, near, standard, verdict, worksheet } from '../../worksheet/index.js';

export const bladeStop = worksheet({
  id: 'timed-stops',
  group: 'The machine it drives',
  title: 'Blade stop time',
  question: 'Does the blade stop soon enough?',
  purpose: 'Timed stops after the control is let go, held against the time allowed; the longest counts.',
  fields: {
    times: ask.list('time', 'Times', 'From letting go until it stands, each stop; three at least.', {
      hint: '2.1, 2.3, 2.2 s',
      within: ['0 s', '120 s'],
    }),
    limit: ask.in(
      's',
      'Longest allowed',
      '3.0 s stands: walk-behind power mowers, 16 CFR 1205.5. Other machines: their manual.',
      { standard: '3 s', within: ['0 s', '120 s'] },
    ),
    uncertainty: ask.in(
      's',
      'Timing, k = 2',
      '0.3 s stands for a thumb on a stopwatch (trade judgement, no source); 0.05 s out of a sound recording.',
      { standard: '0.3 s', within: ['0 s', '5 s'] },
    ),
  },
  names: { count: 'times', value: 'times', u: 'uncertainty' },
  compute: ({ times, limit, uncertainty }) => {
    const seconds = times.map((time) => to(time, 's'));
    const longest = Math.max(...seconds);
    const found = decideExtreme({
      value: longest,
      u: uncertainty / 2,
      count: seconds.length,
      limit: { max: limit },
      unit: 's',
    });
    return [
      verdict('verdict', 'Stops in time', found.verdict, found.why, standard('16 CFR 1205.5; JCGM 106:2012')),
      amount('longest', 'Longest stop', longest, 's', computed('largest of the times'), {
        u: uncertainty / 2,
      }),
    ];
  },
  cautions: [
    'Timed from behind, with the deck on the ground and nobody near the chute. Never look for the stop with a hand.',
    'A blade that does not stop in time is a safety point: the machine is not handed over.',
  ],
  sources: ['16 CFR 1205.5', 'JCGM 106:2012'],
  examples: [
    {
      title: 'three stops of about 2.2 s: in time',
      given: { times: '2.1, 2.3, 2.2 s' },
      expect: { verdict: { text: 'pass' }, longest: near(2.3, 1e-9, 's') },
      source: 'limit of 16 CFR 1205.5',
      mark: 'seen',
    },
    {
      title: '2.95 s by a stopwatch cannot be told from 3.0 s',
      given: { times: '2.9, 2.95, 2.9 s' },
      expect: { verdict: { text: 'cannot-decide' } },
      source: 'own arithmetic',
      mark: 'calculated',
    },
  ],
});
