/** 1, 2 or 5 times a power of ten, the smallest that is not below `rough`. */
export function roundStep(rough: number): number {
  const power = 10 ** Math.floor(Math.log10(Math.max(rough, 1e-12)));
  return power * ([1, 2, 5].find((n) => n * power >= rough * (1 - 1e-9)) ?? 10);
}
