export function placeOf(folder: string): string;
export function oneAtATime<T>(
  act: () => Promise<T>,
  more?: { folder?: string; say?: (words: string) => void },
): Promise<T>;
