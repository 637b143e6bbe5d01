import { type SpreadView, spreadDrawing } from '../../../draw/index.js';
import type { Worth } from '../../../worth/index.js';
import { Drawn } from '../../parts/drawn.js';
import { useWidth } from '../../parts/width.js';

/** Twenty machines like this one along the cost, with what it is worth, the limit and the stop point across them. */
export function SpreadPicture(props: {
  worth: Worth;
  value: number | undefined;
  limit: number | undefined;
  money: (amount: number) => string;
}) {
  const { worth, value, limit, money } = props;
  const { ofTwenty, withRest: cost } = worth;
  const [box, width] = useWidth<HTMLDivElement>();
  if (!cost || ofTwenty.length === 0) return <div ref={box} className="worth-picture" />;
  const says = `Cost of twenty machines like this one, with what may still turn up: half of them between ${money(cost.p25)} and ${money(cost.p75)}`;
  const view = { ofTwenty, cost, good: value ?? limit, marks: marksOf(worth, value, limit, money) };
  return (
    <div ref={box} className="worth-picture">
      {width > 0 && <Drawn drawing={spreadDrawing(view, width, money, says)} />}
    </div>
  );
}

function marksOf(
  { stop }: Worth,
  value: number | undefined,
  limit: number | undefined,
  money: (amount: number) => string,
): SpreadView['marks'] {
  const marks: SpreadView['marks'][number][] = [];
  if (value !== undefined) marks.push({ amount: value, words: `worth ${money(value)}`, look: 'value' });
  if (limit !== undefined && stop?.rule !== 'limit')
    marks.push({ amount: limit, words: `owner’s limit ${money(limit)}`, look: 'limit' });
  if (stop && stop.rule !== 'not-worth-starting')
    marks.push({
      amount: stop.amount,
      words: `call above ${money(stop.amount)}${stop.rule === 'limit' ? ', the owner’s limit' : ''}`,
      look: 'stop',
    });
  return marks;
}
