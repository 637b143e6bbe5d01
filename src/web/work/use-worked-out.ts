import { useAnswers } from '../data/answers.js';
import { workedOutBeside } from './solve.js';
import { useBeside } from './use-beside.js';

/** A heavy member of the job on screen. */
export const useWorkedOut = <M extends 'worth' | 'worthHistory' | 'compression'>(member: M) =>
  useBeside(useAnswers(), member, (answers) => workedOutBeside(answers, member));
