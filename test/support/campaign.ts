/**
 * The size of a long campaign of seeded cases or kills: a short form in `npm test`, the whole one in `npm run trust`,
 * which sets WRISTPIN_TRUST. The short form is the beginning of the long one: the same code, the same seeds.
 */
export const campaign = (short: number, long: number): number => (isWhole ? long : short);

/** Whether this is the whole one. */
export const isWhole = Boolean(process.env.WRISTPIN_TRUST);
