/** "step" for one, "steps" for any other number, nought too */
export const plural = (count: number, one: string, many = `${one}s`): string => (count === 1 ? one : many);

/** "1 step", "3 steps", "0 steps" */
export const counted = (count: number, one: string, many?: string): string =>
  `${count} ${plural(count, one, many)}`;

const words = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

/** "three", and figures above ten */
export const countWord = (count: number): string => words[count] ?? String(count);
