import { useState } from 'react';
import { type BackStep, fastenerLabel, type Job } from '../../../job/index.js';
import { useAnswers } from '../../data/answers.js';
import { writeAll } from '../../data/outbox.js';
import { asBody } from '../../form/as-body.js';
import { Button, useAct } from '../../parts/act.js';
import { Caution } from '../../parts/caution.js';
import { Dialog } from '../../parts/dialog.js';
import { UpToHere } from '../teardown/up-to-here.js';
import { backLine } from './back-line.js';
import { inOneGo } from './in-one-go.js';

/** Pieces that went on in one go, said in one touch: as far as nothing is asked before going on. */
export function SeveralBack({ job }: { job: Job }) {
  const [open, setOpen] = useState(false);
  const steps = inOneGo(useAnswers().assembly);
  if (steps.length < 2) return null;
  return (
    <>
      <Button onClick={() => setOpen(true)}>Several are back</Button>
      <Dialog title="Back on up to which?" open={open} onClose={() => setOpen(false)}>
        <UpTo job={job} steps={steps} onClose={() => setOpen(false)} />
      </Dialog>
    </>
  );
}

function UpTo(props: { job: Job; steps: readonly BackStep[]; onClose: () => void }) {
  const { job, steps, onClose } = props;
  const { wrong, busy, act } = useAct();
  const take = async (upTo: number) => {
    const lines = steps
      .slice(0, upTo + 1)
      .flatMap((step) => [
        ...step.renew.flatMap(({ state, part }) =>
          state === 'here' && part
            ? [{ kind: 'part' as const, body: { ...asBody(part), state: 'fitted' } }]
            : [],
        ),
        { kind: 'step' as const, body: backLine(step) },
      ]);
    if (await act(() => writeAll(job.id, lines))) onClose();
  };
  const dangers = new Map(steps.flatMap(({ cautions }) => cautions).map((c) => [c.id, c]));
  return (
    <>
      <Caution lines={[...dangers.values()].map(({ title }) => title)} />
      <UpToHere
        way="Back"
        pieces={steps.map((step) => ({
          id: step.off.step,
          name: step.title,
          bag: step.off.bag,
          says: saidOf(step).join(' · '),
        }))}
        busy={busy}
        wrong={wrong}
        onTake={(upTo) => void take(upTo)}
        onClose={onClose}
      />
    </>
  );
}

/** All that the touch says of a piece. */
const saidOf = (step: BackStep): string[] => [
  ...step.fasteners.map((f) => `${f.count} × ${fastenerLabel(f)}`),
  ...step.renew.filter(({ state }) => state === 'here').map(({ name }) => `new ${name.toLowerCase()}`),
  ...step.unplug.map((port) => `plug out of ${port.toLowerCase()}`),
  ...new Set(step.checks.map(({ words }) => words)),
];
