declare module 'webvtt-parser' {
  /** The W3C's own parser and validator of WebVTT. */
  export class WebVTTParser {
    parse(
      text: string,
      mode?: 'metadata' | 'chapters',
    ): {
      readonly cues: readonly {
        readonly startTime: number;
        readonly endTime: number;
        readonly text: string;
      }[];
      readonly errors: readonly { readonly message: string; readonly line: number }[];
    };
  }
}
