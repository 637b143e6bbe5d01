import { ask } from '../../worksheet/index.js';
import { conditions } from '../friction.js';
import { gradeNames, unknownGrade } from '../grades.js';

export const thread = ask.thread(
  'Thread',
  'Diameter and pitch as marked: inch size and threads per inch, or M size and pitch. M8 alone is the coarse pitch.',
  '5/16-18',
);

/** What can be meant on a small engine and its machine. */
const torqueSpan = ['0.1 N·m', '500 N·m'] as const;
export const factorSpan = [0.05, 0.6] as const;

export const torqueField = (help: string) =>
  ask.in('N·m', 'Torque', help, { hint: '140 in-lb', within: torqueSpan });

export const conditionField = (
  label = 'Threads and head face',
  help = 'How they are when the wrench turns. Sources disagree about the factor; all of them are shown.',
) => ask.choice(label, help, conditions);

export const factorField = (label = 'Nut factor K') =>
  ask.number(
    label,
    "Only when you know it, from a maker's sheet or a trial. It then goes before the condition.",
    { hint: '0.20', optional: true, within: factorSpan },
  );

export const grade = ask.choice(
  'Grade or class',
  `Inch heads: no mark is SAE 1 or 2, three lines SAE 5, six lines SAE 8. Metric heads carry the number. Unmarked or doubtful: ${unknownGrade}, taken as the lowest.`,
  gradeNames,
);

export const orderField = (help: string) =>
  ask.numbers("Maker's sequence", help, { hint: '1, 5, 3, 7, 2, 6, 4, 8', within: [1, 100] });
