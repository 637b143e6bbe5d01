/** A sum or a plain number as people write it, "1,200", "$37.50", "26"; nothing where it is none. Never below zero. */
export function readAmount(text: string, currency = ''): number | undefined {
  const bare = text.replace(currency, '').trim();
  if (!/^(\d+|\d{1,3}(,\d{3})+)?(\.\d+)?$/.test(bare) || !/\d/.test(bare)) return undefined;
  return Number(bare.replaceAll(',', ''));
}

/** The same for an act that is refused without it. */
export function amountIn(what: string, text: string, currency = ''): number {
  const read = readAmount(text, currency);
  if (read === undefined) throw new Error(notRead(what, text, currency));
  return read;
}

/** A whole number from 1. */
export function countIn(what: string, text: string): number {
  const read = readAmount(text);
  if (read === undefined || !Number.isInteger(read) || read < 1)
    throw new Error(`${what}: “${text}” is no whole number. Write it in digits, 1 or more.`);
  return read;
}

export const notRead = (what: string, text: string, currency: string): string =>
  `${what}: “${text}” is no ${currency ? 'sum' : 'number'}. Write it in digits, such as ${currency ? '150 or 37.50' : '26'}.`;
