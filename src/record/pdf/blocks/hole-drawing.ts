import type { Content } from 'pdfmake/interfaces.js';
import { type HoleRoom, holesDrawing } from '../../../draw/index.js';
import type { JointBlock } from '../../service-record/index.js';
import { onPaper } from '../on-paper.js';
import { color } from '../theme.js';
import type { Typesetter } from '../typesetter.js';

const hole = { largest: 7.5, smallest: 3.2, rim: 11.5, margin: 12.5, corner: 14 };
/** Points. */
const rooms: Readonly<Record<'whole' | 'half', HoleRoom>> = {
  whole: { ...hole, width: 140, height: 88 },
  half: { ...hole, width: 92, height: 60 },
};

const roomOf = ({ half }: JointBlock) => rooms[half ? 'half' : 'whole'];

export const holeDrawingWidth = (joint: JointBlock): number => roomOf(joint).width;

/**
 * The holes, each with its places in the tightening order. One that clicked in every pass is filled, one that did not
 * is an empty dashed ring, a failed one is crossed: shape before color.
 */
export function holeDrawing(joint: JointBlock, type: Typesetter): Content {
  const holes = joint.holes.map(({ xMm, yMm, turns, state }) => ({
    xMm,
    yMm,
    state,
    words: turns.join('·') || '–',
    crossed: state === 'failed',
  }));
  const path = joint.holes
    .flatMap(({ turns }, i) => turns.map((turn) => ({ turn, i })))
    .sort((a, b) => a.turn - b.turn)
    .map(({ i }) => i);
  const small = { fontSize: type.size.small, color: color.soft, alignment: 'center' } as const;
  return {
    stack: [
      ...onPaper(holesDrawing(holes, roomOf(joint), { path }), type),
      ...(joint.bottomEdge ? [type.text(joint.bottomEdge, small)] : []),
    ],
  };
}
