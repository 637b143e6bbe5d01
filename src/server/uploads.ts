/** Of the bytes of one picture, what has come in so far. */
interface Upload {
  readonly bytes: Uint8Array;
  have: number;
  touched: number;
}

const megabyte = 1024 * 1024;
/** Of all pictures that are under way at once. Past this a new one waits: those begun come to their end. */
const roomBytes = 128 * megabyte;
/** Begun and not gone on with for so long, it makes room for one that is. */
const idleMs = 60_000;

/**
 * Pictures that come in parts. A phone at the edge of the network goes on where it was broken off; a server that is started
 * anew knows nothing of it, and the phone, which keeps the picture until it is whole in the store, begins again.
 */
export class Uploads {
  readonly #clock: () => Date;
  readonly #open = new Map<string, Upload>();

  constructor(clock: () => Date) {
    this.#clock = clock;
  }

  /** How many bytes of it have come in, from its beginning on. */
  have(sha256: string): number {
    return this.#open.get(sha256)?.have ?? 0;
  }

  /**
   * Takes a part where it joins what is here; one from elsewhere changes nothing. `undefined` where there is no room for
   * another picture just now. With its last part, and until it is `done`, the whole of it is given: a store that could not
   * take it is asked again without its being sent again.
   */
  take(
    sha256: string,
    at: number,
    of: number,
    part: Uint8Array,
  ): { have: number; whole?: Uint8Array } | undefined {
    const upload = this.#open.get(sha256) ?? this.#begin(sha256, of);
    if (upload === undefined) return undefined;
    const { bytes } = upload;
    upload.touched = this.#clock().getTime();
    if (at === upload.have && bytes.length === of && at + part.length <= of) {
      bytes.set(part, at);
      upload.have += part.length;
    }
    const { have } = upload;
    return have === bytes.length ? { have, whole: bytes } : { have };
  }

  /** Kept by the store, or never to be. */
  done(sha256: string): void {
    this.#open.delete(sha256);
  }

  #begin(sha256: string, of: number): Upload | undefined {
    const now = this.#clock().getTime();
    for (const [name, { touched }] of this.#open)
      if (this.#used() + of > roomBytes && now - touched > idleMs) this.#open.delete(name);
    if (this.#used() + of > roomBytes) return undefined;
    const upload = { bytes: new Uint8Array(of), have: 0, touched: now };
    this.#open.set(sha256, upload);
    return upload;
  }

  #used(): number {
    return [...this.#open.values()].reduce((sum, { bytes }) => sum + bytes.length, 0);
  }
}
