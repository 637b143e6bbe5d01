import { Unreachable } from '../api.js';
import type { KeptPicture, OutboxParts } from './kept.js';

const largestPart = 256 * 1024;
const smallestPart = 16 * 1024;
/** so often a part may come to nothing before the rest is left for later */
const mostInVain = 3;

export class PictureGone extends Error {}

/** Sends a picture in parts, from where the store has it on. */
export class PictureOnItsWay {
  readonly #parts: Pick<OutboxParts, 'storage' | 'store'>;
  /** on a weak line smaller parts come through where large ones do not */
  #partBytes = largestPart;

  constructor(parts: Pick<OutboxParts, 'storage' | 'store'>) {
    this.#parts = parts;
  }

  /**
   * Resolves with true once the store has all of it, with false when `goOn`, which hears how much has gone, wants it left
   * for now. `given` are the bytes of a picture that is not kept here.
   */
  async go(
    picture: KeptPicture,
    goOn: (part: number) => boolean,
    given?: Uint8Array<ArrayBuffer>,
  ): Promise<boolean> {
    const { store, storage } = this.#parts;
    const { sha256 } = picture;
    let state = await store.pictureState(sha256);
    if (state.whole) return true;
    const bytes = given ?? (await storage.bytes(sha256));
    if (!bytes) throw new PictureGone('The picture is not on this device any more: take it again.');
    for (let inVain = 0; !state.whole; ) {
      if (!goOn(state.have / bytes.length)) return false;
      const before = state.have;
      state = await this.#send(sha256, bytes, before);
      inVain = state.have > before ? 0 : inVain + 1;
      if (inVain >= mostInVain) throw new Unreachable('The store takes no more of the picture.');
    }
    return true;
  }

  async #send(sha256: string, bytes: Uint8Array<ArrayBuffer>, at: number) {
    try {
      const part = bytes.slice(at, at + this.#partBytes);
      const state = await this.#parts.store.putPart(sha256, at, bytes.length, part);
      this.#partBytes = Math.min(largestPart, this.#partBytes * 2);
      return state;
    } catch (error) {
      if (error instanceof Unreachable) this.#partBytes = Math.max(smallestPart, this.#partBytes / 2);
      throw error;
    }
  }
}
