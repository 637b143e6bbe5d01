// jstat ships no types; only what the oracles use is declared.
declare module 'jstat' {
  interface Distribution {
    cdf(x: number, ...parameters: number[]): number;
  }
  const jStat: {
    readonly normal: Distribution;
    readonly studentt: Distribution;
    readonly tukey: Distribution;
    ibeta(x: number, a: number, b: number): number;
    gammaln(x: number): number;
  };
  export default { jStat };
}
