import type { Renewal } from '../../../job/index.js';

const stateWords: Readonly<Record<Renewal['state'], readonly [string, string]>> = {
  here: ['pass', 'here'],
  fitted: ['pass', 'fitted'],
  late: ['fail', 'not here'],
  'not listed': ['cannot-decide', 'on no list'],
  'old one for now': ['cannot-decide', 'the old one for now'],
};

/** Parts that are not used twice, and whether the new one is here. */
export function Renewals({ renew }: { renew: readonly Renewal[] }) {
  return renew.map((r) => (
    <div className="act-row" key={`${r.component} ${r.name}`}>
      <span>
        New: {r.name} <b className={`verdict ${stateWords[r.state][0]}`}>{stateWords[r.state][1]}</b>
        {r.part?.due && r.state === 'late' && <span className="soft"> due {r.part.due}</span>}
      </span>
    </div>
  ));
}
