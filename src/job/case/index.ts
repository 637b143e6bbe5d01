export { adviseCase, type CaseAdvice } from './advise-case.js';
export { type Case, CaseError, caseChoices, readCase } from './case.js';
