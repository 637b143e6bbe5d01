import type { From, Job, Renewal } from '../../../job/index.js';
import { write } from '../../data/outbox.js';
import { asBody } from '../../form/as-body.js';
import { Button, useAct, Wrong } from '../../parts/act.js';

const stateWords: Readonly<Record<Renewal['state'], readonly [string, string]>> = {
  here: ['pass', 'here'],
  fitted: ['pass', 'fitted'],
  late: ['fail', 'not here'],
  'not listed': ['cannot-decide', 'on no list'],
  'old one for now': ['cannot-decide', 'the old one for now'],
};

/** Parts that are not used twice, and whether the new one is here. Fitting it is one tap. */
export function Renewals({ job, renew }: { job: Job; renew: readonly Renewal[] }) {
  const { wrong, act } = useAct();
  const fitIn = (part: From<'part'>) =>
    act(() => write(job.id, 'part', { ...asBody(part), state: 'fitted' }));
  return (
    <>
      {renew.map((r) => (
        <div className="act-row" key={`${r.component} ${r.name}`}>
          <span>
            New: {r.name} <b className={`verdict ${stateWords[r.state][0]}`}>{stateWords[r.state][1]}</b>
            {r.part?.due && r.state === 'late' && <span className="soft"> due {r.part.due}</span>}
          </span>
          {r.state === 'here' && <Button onClick={() => void fitIn(r.part!)}>It is in</Button>}
        </div>
      ))}
      <Wrong words={wrong} />
    </>
  );
}
