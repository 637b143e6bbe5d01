export interface WhichTests {
  readonly core: readonly string[];
  readonly browser: readonly string[];
  readonly build: boolean;
  readonly missing: readonly string[];
}
export function testFiles(): string[];
export function whichTests(words: readonly string[], files?: readonly string[]): WhichTests;
