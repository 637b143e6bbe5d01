interface TestOutcome {
  readonly fullName: string;
  readonly status: string;
  readonly failureMessages: readonly string[];
}
export function secondTries(tests: readonly TestOutcome[]): string[];
