/** "step" for one, "steps" for any other number, nought too */
export const plural = (count: number, one: string, many = `${one}s`): string => (count === 1 ? one : many);

/** "1 step", "3 steps", "0 steps" */
export const counted = (count: number, one: string, many?: string): string =>
  `${count} ${plural(count, one, many)}`;

/** "3 pictures", "1 picture and 2 sounds", "1 sound": what is kept beside lines */
export function picturesAndSounds(pictures: number, sounds = 0): string {
  if (sounds === 0) return counted(pictures, 'picture');
  const said = counted(sounds, 'sound');
  return pictures === 0 ? said : `${counted(pictures, 'picture')} and ${said}`;
}

const words = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

/** "three", and figures above ten */
export const countWord = (count: number): string => words[count] ?? String(count);
