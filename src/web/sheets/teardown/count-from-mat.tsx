import { Suspense, useState } from 'react';
import { later } from '../../later.js';
import { Button } from '../../parts/act.js';
import { Dialog } from '../../parts/dialog.js';
import { type Count, countedFromMat } from './counter.js';

const BoltsFromMat = later(() => import('../../mat/bolts-from-mat.js').then((m) => m.BoltsFromMat));

/** Counts the bolts that came out from one photograph. */
export function CountFromMat(props: { counts: readonly Count[]; onChange: (counts: Count[]) => void }) {
  const { counts, onChange } = props;
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
              onChange(countedFromMat(counts, bolts));
              setOpen(false);
            }}
          />
        </Suspense>
      </Dialog>
    </>
  );
}
