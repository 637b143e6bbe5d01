import { byId } from '../../../catalog/index.js';
import { percent, roughHours, thousands } from '../../../phrase/index.js';
import type { Worth } from '../../../worth/index.js';
import { useCatalog } from '../../data/answers.js';
import { FigureWithOrigin } from '../../parts/number.js';

const shown = 6;

/** What the cost is made of: faults by their part in it, each weighed with the chance that it is there. */
export function Drivers({ worth, money }: { worth: Worth; money: ((amount: number) => string) | undefined }) {
  const faults = byId(useCatalog().faults);
  const top = worth.drivers.slice(0, shown);
  const rest = worth.drivers.slice(shown).reduce((sum, d) => sum + d.share, 0);
  const longest = top[0]?.share ?? 1;
  if (top.length === 0) return null;
  return (
    <section className="section stack tight">
      <h2>What drives it</h2>
      <ul className="lines drivers">
        {top.map((d) => (
          <li key={d.fault}>
            <div>
              <b>{faults.get(d.fault)?.name ?? d.fault}</b>
              <div className="bar" aria-hidden="true">
                <i style={{ width: `${(100 * d.share) / longest}%` }} />
              </div>
              <span className="soft">
                {d.present === 1 ? 'found' : `${percent(d.present)} likely to be there`}
              </span>
            </div>
            <div className="share">
              <FigureWithOrigin
                what={`Part of the cost: ${faults.get(d.fault)?.name ?? d.fault}`}
                shown={percent(d.share)}
                rows={[
                  [
                    'from',
                    `computed: its part of the mean cost over ${thousands(worth.drawn.machines)} machines drawn`,
                  ],
                  ['there', d.present === 1 ? 'found' : `${percent(d.present)}, from the findings`],
                  ['costs', money ? money(d.cost) : roughHours(d.cost)],
                  ['stands on', 'minutes and prices of the catalog: trade judgement, no source'],
                ]}
              />
              <div className="soft">{money ? money(d.cost) : roughHours(d.cost)}</div>
            </div>
          </li>
        ))}
      </ul>
      {rest > 0.005 && (
        <p className="soft">All other faults together: {percent(rest)} of the cost on average.</p>
      )}
    </section>
  );
}
