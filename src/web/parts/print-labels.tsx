import { useState } from 'react';
import { parse, QuantityError } from '../../quantity/index.js';
import { labelsUrl } from '../data/api.js';
import { changeDevice, type LabelPaper, useDevice } from '../data/device.js';
import { Button } from './act.js';
import { Dialog } from './dialog.js';
import { Choices, TextField } from './field.js';

interface Labelled {
  readonly job: string;
  readonly kind: 'bag' | 'part';
}

const words = {
  bag: { button: 'Labels for the bags', title: 'Labels for the bags' },
  part: { button: 'Labels for the parts', title: 'Labels for the parts that are ordered or here' },
} as const;

/** Small labels to print: on a sheet to be cut, or on the roll that this device's printer takes. */
export function PrintLabels(props: Labelled) {
  const [open, setOpen] = useState(false);
  const close = () => setOpen(false);
  return (
    <>
      <Button onClick={() => setOpen(true)}>{words[props.kind].button}</Button>
      <Dialog title={words[props.kind].title} open={open} onClose={close}>
        <LabelsForm {...props} onClose={close} />
      </Dialog>
    </>
  );
}

const usual: LabelPaper = { paper: 'letter', width: '62', length: '40' };

function LabelsForm({ job, kind, onClose }: Labelled & { onClose: () => void }) {
  const { labels = usual } = useDevice();
  const change = (part: Partial<LabelPaper>) => changeDevice({ labels: { ...labels, ...part } });
  const { width, length } = rollOf(labels);
  const wrong = labels.paper === 'roll' && (width === undefined || length === undefined);
  return (
    <>
      <Choices
        label="Printed on"
        choices={[
          { id: 'letter', label: 'Letter, ten a sheet' },
          { id: 'a4', label: 'A4, ten a sheet' },
          { id: 'roll', label: 'A roll of labels' },
        ]}
        value={labels.paper}
        onChange={(paper) => change({ paper })}
      />
      {labels.paper === 'roll' && (
        <div className="side-by-side">
          <TextField
            label="Width of the roll, mm or in"
            value={labels.width}
            onChange={(width) => change({ width })}
            wrong={width === undefined ? '20 to 120 mm: “62”, “2-1/4 in”' : undefined}
          />
          <TextField
            label="Length of a label, mm or in"
            value={labels.length}
            onChange={(length) => change({ length })}
            wrong={length === undefined ? '20 to 200 mm: “40”, “1-1/4 in”' : undefined}
          />
        </div>
      )}
      <p className="soft">Print at 100 %, not fitted to the page. This device remembers the choice.</p>
      <div className="row end">
        <Button onClick={onClose}>Not now</Button>
        {wrong ? (
          <Button look="go" disabled>
            Open the labels (PDF)
          </Button>
        ) : (
          <a
            className="button go"
            href={labelsUrl(job, kind, { paper: labels.paper, width, length })}
            target="_blank"
            rel="noreferrer"
          >
            Open the labels (PDF)
          </a>
        )}
      </div>
    </>
  );
}

/** A roll as it was typed, in millimeters; undefined where no printer takes it. */
export const rollOf = ({ width, length }: Pick<LabelPaper, 'width' | 'length'>) => ({
  width: sideMm(width, 120),
  length: sideMm(length, 200),
});

function sideMm(typed: string, most: number): number | undefined {
  try {
    const mm = Math.round(parse(typed, 'length', { unit: 'mm' }).si * 1e5) / 100;
    return mm >= 20 && mm <= most ? mm : undefined;
  } catch (error) {
    if (error instanceof QuantityError) return undefined;
    throw error;
  }
}
