/** What is used of the recognizer; its own types bring the whole of its compiler's along. */
declare module 'soundswallower' {
  type Decoder = import('../hear/index.js').Decoder;
  interface Recognizer extends Decoder {
    initialize(): Promise<unknown>;
    lookup_word(word: string): string | null;
  }
  const createModule: () => Promise<{
    readonly Decoder: new (config: Readonly<Record<string, string | number | boolean>>) => Recognizer;
  }>;
  export default createModule;
}
