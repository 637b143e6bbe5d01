/** What the scope of an audio worklet has (Web Audio API, AudioWorkletGlobalScope). */
declare const registerProcessor: (name: string, processor: unknown) => void;
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}

/** Samples that are handed over at once: a sixteenth of a second at 16,000 a second. */
const together = 1024;

/** Hands over every sample of the first channel, in order, to whoever holds the other end of its port. */
class Tape extends AudioWorkletProcessor {
  #part = new Float32Array(together);
  #have = 0;

  process([input]: readonly (readonly Float32Array[])[]): boolean {
    for (const sample of input?.[0] ?? []) {
      this.#part[this.#have++] = sample;
      if (this.#have < together) continue;
      this.port.postMessage(this.#part, [this.#part.buffer]);
      this.#part = new Float32Array(together);
      this.#have = 0;
    }
    return true;
  }
}

registerProcessor('tape', Tape);
