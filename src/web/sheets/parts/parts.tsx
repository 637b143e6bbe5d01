import { useState } from 'react';
import type { From, Job } from '../../../job/index.js';
import { counted } from '../../../phrase/index.js';
import { usePrimary } from '../../frame/job-frame.js';
import { Sheet, type SheetProps } from '../../frame/sheet.js';
import { Cleaning } from '../cleaning/cleaning.js';
import { ArrivalDialog } from './arrival.js';
import { AskedFor } from './asked-for.js';
import { BasketSection } from './basket.js';
import { FallbackDialog } from './fallback.js';
import { Offers } from './offers.js';
import { PartDialog } from './part-form.js';
import { PartList } from './part-list.js';

/** What is to be bought, on its way, here and fitted. Lay the new part beside the old one before it is fitted. */
export function Parts({ job, gate }: SheetProps) {
  const [editing, setEditing] = useState<From<'part'> | 'new'>();
  const [arriving, setArriving] = useState<string>();
  const [mismatched, setMismatched] = useState<string>();
  usePrimary({ label: 'Add a part', act: () => setEditing('new') });
  return (
    <Sheet
      job={job}
      gate={gate}
      headline={headline(job)}
      say="Order once: gaskets, seals, clips and fluids with the rest. Lay each new part beside the old one before fitting it."
    >
      <AskedFor job={job} />
      <PartList
        job={job}
        onChange={setEditing}
        onArrive={({ part }) => setArriving(part)}
        onMismatch={({ part }) => setMismatched(part)}
      />
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
  const parts = [...job.parts.values()].filter((p) => p.state !== 'dropped');
  if (parts.length === 0) return 'No part is listed';
  const count = (...states: From<'part'>['state'][]) => parts.filter((p) => states.includes(p.state)).length;
  const said = [
    [count('wanted', 'mismatch'), 'to order'],
    [count('ordered'), 'on the way'],
  ] as const;
  const words = said.filter(([n]) => n > 0).map(([n, w]) => `${n} ${w}`);
  return [`${counted(parts.length, 'part')}`, ...words].join(', ');
}
