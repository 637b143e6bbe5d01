export function outsideValues(tests: readonly { status: string; meta?: object }[]): string | undefined;
