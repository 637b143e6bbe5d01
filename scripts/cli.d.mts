export function bundleCli(outDir: string): Promise<void>;
