export function beginTrust(how: { again: boolean; program: string; folder: string }): {
  passed: string[];
  words: string;
};
export function notePassed(file: string, folder: string): void;
export function figures(folder: string): { campaign: { name: string }; next: number }[];
export function endTrust(folder: string): void;
