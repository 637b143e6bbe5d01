import type { Field } from '../../worksheet/index.js';
import { conditions } from '../friction.js';
import { gradeNames, unknownGrade } from '../grades.js';

export const threadField: Field = {
  id: 'thread',
  label: 'Thread',
  help: 'Diameter and pitch as marked: inch size and threads per inch, or M size and pitch. M8 alone is the coarse pitch.',
  kind: 'thread',
  hint: '5/16-18',
};

export const torqueField = (help: string): Field => ({
  id: 'torque',
  label: 'Torque',
  help,
  kind: 'torque',
  hint: '140 in-lb',
});

export const conditionField = (id = 'condition', label = 'Threads and head face'): Field => ({
  id,
  label,
  help: 'How they are when the wrench turns. Sources disagree about the factor; all of them are shown.',
  kind: 'choice',
  choices: Object.entries(conditions).map(([choice, said]) => ({ id: choice, label: said })),
});

export const factorField = (id = 'k', label = 'Nut factor K'): Field => ({
  id,
  label,
  help: "Only when you know it, from a maker's sheet or a trial. It then goes before the condition.",
  kind: 'number',
  required: false,
  hint: '0.20',
});

export const gradeField: Field = {
  id: 'grade',
  label: 'Grade or class',
  help: `Inch heads: no mark is SAE 1 or 2, three lines SAE 5, six lines SAE 8. Metric heads carry the number. Unmarked or doubtful: ${unknownGrade}, taken as the lowest.`,
  kind: 'choice',
  choices: gradeNames.map((id) => ({ id, label: id })),
};

export const orderField = (required: boolean, help: string): Field => ({
  id: 'order',
  label: "Maker's sequence",
  help,
  kind: 'list',
  of: 'number',
  required,
  hint: '1, 5, 3, 7, 2, 6, 4, 8',
});
