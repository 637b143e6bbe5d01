/** What is used of the recognizer; its own types bring the whole of its compiler's along. */
declare module 'soundswallower' {
  type Recognizer = import('../hear/index.js').Recognizer;
  const createModule: (module?: {
    readonly wasmBinary?: ArrayBuffer;
    readonly locateFile?: (name: string) => string;
  }) => Promise<{
    readonly Decoder: new (config: Readonly<Record<string, string | number | boolean>>) => Recognizer;
  }>;
  export default createModule;
}
