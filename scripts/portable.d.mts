export function makeFolder(folder: string): void;
export function archiveName(folder: string): string;
export function makeArchive(folder: string, file: string): void;
