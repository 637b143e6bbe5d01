import { canHurt } from '../../../catalog/index.js';
import type { Body, Job } from '../../../job/index.js';
import { useCatalog } from '../../data/answers.js';
import { writeAll } from '../../data/outbox.js';
import { Button, useAct, Wrong } from '../../parts/act.js';

interface Named {
  readonly id: string;
  readonly name: string;
}

/**
 * The same said of several faults in one touch: that they are there and will be repaired, or that they were. That one which
 * can hurt somebody is repaired is said by itself.
 */
export function AllAtOnce({
  job,
  together,
  faults,
}: {
  job: Job;
  together: readonly Named[];
  faults: readonly Named[];
}) {
  const catalog = useCatalog();
  const said = new Map(job.decisions.filter((d) => d.about === 'fault').map((d) => [d.which, d.choice]));
  const open = together.filter(({ id }) => !said.has(id));
  const dangers = new Set(catalog.faults.filter(canHurt).map(({ id }) => id as string));
  const begun = faults.filter(({ id }) => said.get(id) === 'repair' && !dangers.has(id));
  return (
    <>
      <OneTouch job={job} of={open} choice="repair" label={`All ${open.length} are there: repair them`} />
      <OneTouch job={job} of={begun} choice="repaired" label={`All ${begun.length} are repaired`} />
    </>
  );
}

const titles = { repair: 'it is there: repair it', repaired: 'repaired' } as const;

function OneTouch(props: { job: Job; of: readonly Named[]; choice: keyof typeof titles; label: string }) {
  const { job, of, choice, label } = props;
  const { wrong, busy, act } = useAct(job);
  if (of.length < 2) return <Wrong words={wrong} />;
  const bodies = of.map(
    ({ id, name }): Body<'decision'> => ({
      ...{ about: 'fault', which: id, title: `${name}: ${titles[choice]}`, choice, reason: '' },
    }),
  );
  const say = () =>
    act(() =>
      writeAll(
        job.id,
        bodies.map((body) => ({ kind: 'decision', body })),
      ),
    );
  return (
    <div className="row">
      <Button disabled={busy} onClick={() => void say()}>
        {label}
      </Button>
      <Wrong words={wrong} />
    </div>
  );
}
