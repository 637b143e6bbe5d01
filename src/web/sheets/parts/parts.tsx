import { useState } from 'react';
import type { From, Job } from '../../../job/index.js';
import { counted } from '../../../phrase/index.js';
import { useAnswers } from '../../data/answers.js';
import { usePrimary } from '../../frame/job-frame.js';
import { Sheet, type SheetProps } from '../../frame/sheet.js';
import { Button, useAct } from '../../parts/act.js';
import { PrintLabels } from '../../parts/print-labels.js';
import { Cleaning } from '../cleaning/cleaning.js';
import { ArrivalDialog } from './arrival.js';
import { AskedFor, askedLots } from './asked-for.js';
import { BasketSection } from './basket.js';
import { FallbackDialog } from './fallback.js';
import { Offers } from './offers.js';
import { PartDialog } from './part-form.js';
import { livePartsOf, lotsOf, PartList } from './part-list.js';

/** What is to be bought, on its way, here and fitted. Lay the new part beside the old one before it is fitted. */
export function Parts({ job, gate }: SheetProps) {
  const [editing, setEditing] = useState<From<'part'> | 'new'>();
  const [arriving, setArriving] = useState<string>();
  const [mismatched, setMismatched] = useState<string>();
  const { busy, act } = useAct(job);
  const [lot] = [...askedLots(job, useAnswers().bill), ...lotsOf(job)];
  usePrimary(
    lot
      ? { label: lot.label, act: () => void act(lot.write), disabled: busy }
      : { label: 'Add a part', act: () => setEditing('new') },
  );
  return (
    <Sheet
      job={job}
      gate={gate}
      headline={headline(job)}
      rule="Order once: gaskets, seals, clips and fluids with the rest. Lay each new part beside the old one before fitting it."
    >
      {lot && (
        <div className="row">
          <Button onClick={() => setEditing('new')}>Add a part</Button>
        </div>
      )}
      <AskedFor job={job} />
      <PartList
        job={job}
        onChange={setEditing}
        onArrive={({ part }) => setArriving(part)}
        onMismatch={({ part }) => setMismatched(part)}
      />
      {[...job.parts.values()].some(({ state }) => state === 'ordered' || state === 'arrived') && (
        <div className="row">
          <PrintLabels job={job.id} kind="part" />
        </div>
      )}
      <Offers job={job} />
      <BasketSection job={job} />
      <Cleaning job={job} />
      <PartDialog job={job} part={editing} onClose={() => setEditing(undefined)} />
      <ArrivalDialog
        job={job}
        part={arriving === undefined ? undefined : job.parts.get(arriving)}
        onClose={() => setArriving(undefined)}
        onMismatch={(part) => {
          setArriving(undefined);
          setMismatched(part);
        }}
      />
      <FallbackDialog
        job={job}
        part={mismatched === undefined ? undefined : job.parts.get(mismatched)}
        onClose={() => setMismatched(undefined)}
      />
    </Sheet>
  );
}

function headline(job: Job): string {
  const parts = livePartsOf(job);
  if (parts.length === 0) return 'No part is listed';
  const count = (...states: From<'part'>['state'][]) => parts.filter((p) => states.includes(p.state)).length;
  const said = [
    [count('wanted', 'mismatch'), 'to order'],
    [count('ordered'), 'on the way'],
  ] as const;
  const words = said.filter(([n]) => n > 0).map(([n, w]) => `${n} ${w}`);
  return [`${counted(parts.length, 'part')}`, ...words].join(', ');
}
