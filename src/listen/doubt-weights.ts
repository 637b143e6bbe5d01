/** Written by `npm run bench listen-learn`; not by hand. */
export const learned: { readonly weights: readonly number[]; readonly bias: number } = {
  weights: [1.338, 0.549, 0.171, -0.115, 0.661, 0.443, -0.515],
  bias: -1.859,
};
