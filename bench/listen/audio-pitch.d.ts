declare module '@audio/pitch' {
  interface Estimate {
    readonly freq: number;
  }
  export function yin(data: Float32Array, params: { readonly fs: number }): Estimate | null;
  export function pyin(
    data: Float32Array,
    params: { readonly fs: number; readonly minFreq: number; readonly maxFreq: number },
  ): Estimate | null;
}
