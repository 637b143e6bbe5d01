export const bundled: readonly string[];
