import type { Measurement } from '../../../catalog/index.js';
import type { Job } from '../../../job/index.js';
import { Asked, FormBox } from '../../form/form.js';
import { useForm } from '../../form/use-form.js';
import { Button } from '../../parts/act.js';
import { Dialog } from '../../parts/dialog.js';

const stamps = [
  { id: 'no stamp', label: 'No stamp' },
  { id: '0.010 over', label: '0.010 over' },
  { id: '0.020 over', label: '0.020 over' },
  { id: '0.030 over', label: '0.030 over' },
  { id: 'another stamp', label: 'Another stamp' },
] as const;

/** What is looked at and not measured: a stamp on the piston's top or the block. It is kept as something seen. */
export function Looked(props: { job: Job; measurement: Measurement | undefined; onClose: () => void }) {
  const { measurement, onClose } = props;
  return (
    <Dialog title={measurement?.name ?? ''} open={measurement !== undefined} onClose={onClose}>
      {measurement && <Form {...props} measurement={measurement} />}
    </Dialog>
  );
}

function Form({ job, measurement, onClose }: { job: Job; measurement: Measurement; onClose: () => void }) {
  const form = useForm({
    job: job.id,
    kind: 'observation',
    handle: measurement.id,
    title: measurement.name,
    fields: {
      $seen: { as: 'choice', label: 'It says', choices: stamps, need: 'Say what stands there.' },
      words: { as: 'text', label: 'In words', hint: '0.25 on the piston top' },
    },
    also: (_, { $seen }) => ({ title: measurement.name, outcomes: [String($seen)] }),
    onDone: onClose,
  });
  return (
    <FormBox form={form} keep="Log it" more={<Button onClick={onClose}>Close</Button>}>
      <p className="soft">Look at the top of the piston and the edge of the block, wiped clean.</p>
      <Asked form={form} />
      <p className="soft">What follows: {measurement.decision}.</p>
    </FormBox>
  );
}
