/** A document that cannot be made, or a file that must not be believed. `message` is a whole sentence. */
export class RecordError extends Error {
  constructor(
    message: string,
    /** what it is about: a font, a picture's hash, a name in a bundle */
    readonly field?: string,
  ) {
    super(message);
    this.name = 'RecordError';
  }
}
