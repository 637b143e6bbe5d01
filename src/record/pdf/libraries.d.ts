// The two libraries ship no types for these parts; only what is used here is declared.

declare module 'pdfmake/js/Printer.js' {
  import type { TDocumentDefinitions, TFontDictionary } from 'pdfmake/interfaces.js';

  interface VirtualFiles {
    existsSync(name: string): boolean;
    readFileSync(name: string): Uint8Array;
  }
  interface UrlResolver {
    resolve(url: string): void;
    resolved(): Promise<void>;
  }
  interface PdfStream {
    on(event: 'data', take: (chunk: Uint8Array) => void): void;
    on(event: 'end', done: () => void): void;
    on(event: 'error', failed: (error: Error) => void): void;
    end(): void;
  }
  export class Printer {
    constructor(
      fonts: TFontDictionary,
      files: VirtualFiles,
      urls: UrlResolver,
      mayReadLocalFile: (path: string) => boolean,
    );
    createPdfKitDocument(document: TDocumentDefinitions): Promise<PdfStream>;
  }
  const module: typeof Printer | { readonly default: typeof Printer };
  export default module;
}

declare module 'fontkit' {
  export interface Font {
    hasGlyphForCodePoint(codePoint: number): boolean;
  }
  export function create(bytes: Uint8Array): Font;
}
