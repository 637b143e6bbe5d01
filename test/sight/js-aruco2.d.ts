declare module 'js-aruco2' {
  interface Marker {
    readonly id: number;
    /** clockwise in the picture, from the tag's own upper left */
    readonly corners: readonly { readonly x: number; readonly y: number }[];
  }
  const library: {
    readonly AR: {
      readonly Detector: new (config: {
        readonly dictionaryName: string;
        readonly maxHammingDistance: number;
      }) => { detectImage(width: number, height: number, data: Uint8Array): Marker[] };
      readonly Dictionary: new (name: string) => { readonly codeList: readonly string[] };
    };
  };
  export default library;
}
