import { Fragment, type ReactNode, useState } from 'react';
import type { IntakeFacts, Job } from '../../../job/index.js';
import { write } from '../../data/outbox.js';
import { Button, useAct, Wrong } from '../../parts/act.js';

/** A group of intake facts that is filled in together and written as one line: only what changed. */
export function FactsForm<K extends keyof IntakeFacts>(props: {
  job: Job;
  title: string;
  keys: readonly K[];
  children: (
    facts: Pick<IntakeFacts, K>,
    change: (part: { readonly [F in K]?: IntakeFacts[F] | undefined }) => void,
  ) => ReactNode;
  after?: ReactNode;
}) {
  const { job, keys } = props;
  const kept = pick(job.intake, keys);
  const [draft, setDraft] = useState<Partial<Pick<IntakeFacts, K>>>({});
  // fields that keep what was typed begin anew once it is written or given up
  const [round, setRound] = useState(0);
  const beginAnew = () => {
    setDraft({});
    setRound(round + 1);
  };
  const { wrong, busy, act } = useAct();
  const facts = { ...kept, ...draft };
  const changed = keys.filter(
    (k) => draft[k] !== undefined && JSON.stringify(draft[k]) !== JSON.stringify(kept[k]),
  );
  const save = async () => {
    if (await act(() => write(job.id, 'intake', pick(draft as IntakeFacts, changed)))) beginAnew();
  };
  return (
    <form
      className="section stack tight"
      onSubmit={(e) => {
        e.preventDefault();
        void save();
      }}
    >
      <h2>{props.title}</h2>
      <Fragment key={round}>{props.children(facts, (part) => setDraft({ ...draft, ...part }))}</Fragment>
      {props.after}
      <Wrong words={wrong} />
      {changed.length > 0 && (
        <div className="row">
          <Button type="submit" look="go" disabled={busy}>
            Write it down
          </Button>
          <Button look="quiet" onClick={beginAnew}>
            Leave it as it was
          </Button>
        </div>
      )}
    </form>
  );
}

function pick<K extends keyof IntakeFacts>(facts: IntakeFacts, keys: readonly K[]): Pick<IntakeFacts, K> {
  return Object.fromEntries(keys.filter((k) => facts[k] !== undefined).map((k) => [k, facts[k]])) as Pick<
    IntakeFacts,
    K
  >;
}
