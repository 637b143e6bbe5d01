declare module 'fft.js' {
  /** In-place-free complex transform of a power-of-two length; arrays are interleaved real, imaginary. */
  export default class FFT {
    constructor(size: number);
    readonly size: number;
    realTransform(out: ArrayLike<number>, data: ArrayLike<number>): void;
    transform(out: ArrayLike<number>, data: ArrayLike<number>): void;
  }
}
