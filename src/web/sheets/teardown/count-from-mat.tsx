import { Suspense, useState } from 'react';
import { later } from '../../later.js';
import { Button } from '../../parts/act.js';
import { Dialog } from '../../parts/dialog.js';
import type { Count } from './counter.js';

const BoltsFromMat = later(() => import('../../mat/bolts-from-mat.js').then((m) => m.BoltsFromMat));

/** Counts what came out from one photograph; it takes the place of what was counted by hand. */
export function CountFromMat({ onChange }: { onChange: (counts: Count[]) => void }) {
  const [open, setOpen] = useState(false);
  return (
    <>
      <Button look="quiet" onClick={() => setOpen(true)}>
        Count from a photograph
      </Button>
      <Dialog title="Bolts on the mat" open={open} onClose={() => setOpen(false)}>
        <Suspense fallback={<p>Opening …</p>}>
          <BoltsFromMat
            onCounted={(bolts) => {
              onChange(bolts.map((b) => ({ ...b, what: 'bolt', hole: '' })));
              setOpen(false);
            }}
          />
        </Suspense>
      </Dialog>
    </>
  );
}
