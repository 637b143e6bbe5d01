/** A number as it reads in a sentence: three significant digits, no trailing noughts. */
export function figure(value: number, digits = 3): string {
  return String(Number(value.toPrecision(digits)));
}
