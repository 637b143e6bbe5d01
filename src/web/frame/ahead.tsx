import { memo } from 'react';

/**
 * Works something out in pieces before what shows it is drawn: between two of them the page answers a touch. To be drawn
 * in a deferred render, before what wants the answers.
 */
export const Ahead = memo(({ pieces }: { pieces: readonly (() => void)[] }) =>
  // biome-ignore lint/suspicious/noArrayIndexKey: the pieces stand in a fixed order
  pieces.map((work, i) => <Piece key={i} work={work} />),
);

function Piece({ work }: { work: () => void }) {
  try {
    work();
  } catch {
    // what cannot be worked out says so where it is shown
  }
  return null;
}
