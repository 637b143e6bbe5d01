/** One thing wrong with a pack, and where. */
export interface CatalogProblem {
  readonly file: string;
  /** 1-based line of the pack's text */
  readonly line: number;
  /** where in the pack: `faults[3].repairMinutes` */
  readonly path: string;
  readonly reason: string;
}

/** Packs that do not make a catalog. All problems are listed, not only the first. */
export class CatalogError extends Error {
  constructor(readonly problems: readonly CatalogProblem[]) {
    super(problems.map(({ file, line, path, reason }) => `${file}:${line} ${path}: ${reason}`).join('\n'));
    this.name = 'CatalogError';
  }
}

/** "pumps.yaml, line 12, faults[0].repairMinutes: …" */
export function problemWords({ file, line, path, reason }: CatalogProblem): string {
  return `${[file, line > 0 && `line ${line}`, path].filter(Boolean).join(', ')}: ${reason}`;
}
