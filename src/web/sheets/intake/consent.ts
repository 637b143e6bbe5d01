import type { IntakeFacts } from '../../../job/index.js';

type Consent = NonNullable<IntakeFacts['consent']>;

/** Who agreed and how, as it was typed: what nobody said stays empty, and nobody named is no consent. */
export const consentOf = ({ by = '', how = '' }: Partial<Consent>): Consent => ({
  given: by !== '',
  by,
  how,
});
