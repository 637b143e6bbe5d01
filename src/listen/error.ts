/** A sound or an engine that cannot be listened to as given. Names the field, the value and the bound. */
export class ListenError extends Error {
  constructor(
    message: string,
    readonly field: string,
    readonly value?: unknown,
  ) {
    super(message);
    this.name = 'ListenError';
  }
}
