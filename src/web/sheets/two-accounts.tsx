import type { Job, TwoAccounts } from '../../job/index.js';
import { useAnswers } from '../data/answers.js';
import { writeAll } from '../data/outbox.js';
import { Button, useAct, Wrong } from '../parts/act.js';

/** Acts that two devices tell of: what differs is asked to be settled, what agrees is shown as counted once. */
export function TwoAccountsAsked({ job, of }: { job: Job; of: 'pieces' | 'bolts' }) {
  const { twoAccounts } = useAnswers();
  const shown = twoAccounts.filter(({ differ }) => differ === (of === 'pieces'));
  if (shown.length === 0) return null;
  return (
    <section className="section stack tight" aria-label="Two accounts of one act">
      <h2>{of === 'pieces' ? 'Two accounts: which is right?' : 'Logged on two devices'}</h2>
      <ul className="lines">
        {shown.map((each) => (
          <li key={each.accounts[0]!.entry}>
            <div className="stack tight">
              <b>{each.what}</b>
              {each.differ ? <Settle job={job} told={each} /> : <OnceOnly told={each} />}
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}

const OnceOnly = ({ told }: { told: TwoAccounts }) => (
  <div className="soft">{told.accounts.map(({ who }) => who).join(' and ')}: counted once</div>
);

/** Look where it lies, then say which line is right: the others are struck and stay readable. */
function Settle({ job, told }: { job: Job; told: TwoAccounts }) {
  const { act, busy, wrong } = useAct();
  const right = (entry: string, says: string) =>
    act(() =>
      writeAll(
        job.id,
        told.accounts
          .filter((other) => other.entry !== entry)
          .map((other) => ({ kind: 'strike', body: { entry: other.entry, reason: `It is ${says}` } })),
      ),
    );
  return (
    <>
      {told.accounts.map(({ entry, who, says = '' }) => (
        <div className="row apart" key={entry}>
          <span>
            {says} <span className="soft">({who})</span>
          </span>
          <Button disabled={busy} onClick={() => void right(entry, says)}>
            It is {says}
          </Button>
        </div>
      ))}
      <Wrong words={wrong} />
    </>
  );
}
