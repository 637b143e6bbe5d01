import { builtInCatalog } from '../../src/catalog/index.js';
import {
  type Answers,
  type AnswersAsked,
  answersFor,
  foldShop,
  type Job,
  nothingTaught,
} from '../../src/job/index.js';

const emptyShop = foldShop([]);

/** The door to a job in a shop that has written nothing down yet, unless the test says otherwise. */
export const door = (job: Job, more: Partial<AnswersAsked> = {}): Answers =>
  answersFor({ job, catalog: builtInCatalog(), shop: emptyShop, jobs: nothingTaught, ...more });
