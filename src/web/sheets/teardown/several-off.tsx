import { useState } from 'react';
import type { Job, PlannedStep } from '../../../job/index.js';
import { counted } from '../../../phrase/index.js';
import { writeAll } from '../../data/outbox.js';
import { Button, useAct } from '../../parts/act.js';
import { Caution } from '../../parts/caution.js';
import { Dialog } from '../../parts/dialog.js';
import { Choices } from '../../parts/field.js';
import { countsFor } from './counter.js';
import { missingViews, offLine, unseenBecause } from './off-line.js';
import { UpToHere } from './up-to-here.js';

interface Several {
  readonly job: Job;
  /** in the order in which they come off */
  readonly steps: readonly PlannedStep[];
}

/** Hands that took several pieces off in one go say so in one touch: all up to one of them, each in its bag. */
export function SeveralOff({ job, steps }: Several) {
  const [open, setOpen] = useState(false);
  if (steps.length < 2) return null;
  return (
    <>
      <Button onClick={() => setOpen(true)}>Several are off</Button>
      <Dialog title="Off up to which?" open={open} onClose={() => setOpen(false)}>
        <UpTo job={job} steps={steps} onClose={() => setOpen(false)} />
      </Dialog>
    </>
  );
}

function UpTo({ job, steps, onClose }: Several & { onClose: () => void }) {
  const [reason, setReason] = useState(unseenBecause[0]!);
  const { wrong, busy, act } = useAct();
  const missing = steps.flatMap(missingViews).length;
  const dangers = dangersOf(steps);
  const take = async (upTo: number) => {
    const lines = steps
      .slice(0, upTo + 1)
      .map((step) => ({ kind: 'step' as const, body: lineOf(step, reason) }));
    if (await act(() => writeAll(job.id, lines))) onClose();
  };
  return (
    <>
      <Caution lines={[...gravest(dangers), ...spoiledOf(steps)]} />
      {dangers.length > 0 && (
        <details>
          <summary>The cautions in full</summary>
          <Caution lines={dangers} />
        </details>
      )}
      <p className="soft">
        Each goes into its own bag, its ports plugged, its fasteners as usual on this kind of engine. What was
        otherwise is changed at the piece.
      </p>
      {missing > 0 && (
        <Choices
          label={`Why ${counted(missing, 'picture')} may be missing`}
          value={reason}
          onChange={setReason}
          choices={unseenBecause.map((id) => ({ id, label: id }))}
        />
      )}
      <UpToHere
        way="Off"
        pieces={steps.map(({ step, name, bag }) => ({ id: step, name, bag }))}
        busy={busy}
        wrong={wrong}
        onTake={(upTo) => void take(upTo)}
        onClose={onClose}
      />
    </>
  );
}

function lineOf(step: PlannedStep, reason: string) {
  const open = missingViews(step).length > 0;
  const line = offLine(step, {
    counts: countsFor(step.fasteners),
    plugged: step.plugs.map((p) => p.name),
    reason: open ? reason : '',
  });
  return { ...line, ...(step.bag !== undefined && { bag: step.bag }) };
}

/** What any of them can do to a person, each once. */
const dangersOf = (steps: readonly PlannedStep[]) => [
  ...new Map(steps.flatMap(({ cautions }) => cautions).map((c) => [c.id, c])).values(),
];

/** In short; the others stand in full below. */
const gravest = (all: PlannedStep['cautions']) => all.filter((c) => c.severity === 3).map((c) => c.title);

const spoiledOf = (steps: readonly PlannedStep[]) =>
  [...new Set(steps.flatMap(({ spoils }) => spoils))].map((look) => `Cannot be had afterwards: ${look}.`);
