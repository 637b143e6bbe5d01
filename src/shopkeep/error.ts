/** What cannot be done with the store's jobs and pictures: a code for programs, and a sentence that says what to do. */
export class ShopkeepError extends Error {
  override readonly name = 'ShopkeepError';
  constructor(
    readonly code: 'not-found' | 'bad-file' | 'bad-entry' | 'bad-picture' | 'bad-demo' | 'no-demo',
    message: string,
    readonly field?: string,
  ) {
    super(message);
  }
}
