import type { Body, From, Job } from '../../../job/index.js';
import { useShop } from '../../data/queries.js';
import { asBody } from '../../form/as-body.js';
import { FormBox } from '../../form/form.js';
import { useForm } from '../../form/use-form.js';
import { Dialog } from '../../parts/dialog.js';
import { handleOf } from '../components.js';

type State = Body<'part'>['state'];
const states: readonly { id: State; label: string }[] = [
  { id: 'wanted', label: 'wanted' },
  { id: 'ordered', label: 'ordered' },
  { id: 'arrived', label: 'here' },
  { id: 'mismatch', label: 'does not match' },
  { id: 'fitted', label: 'fitted' },
  { id: 'dropped', label: 'not needed' },
];
export const stateWord = (s: State) => states.find((x) => x.id === s)!.label;

interface PartProps {
  readonly job: Job;
  readonly part: From<'part'> | 'new' | undefined;
  readonly onClose: () => void;
}

export function PartDialog({ job, part, onClose }: PartProps) {
  return (
    <Dialog
      title={part === 'new' ? 'Add a part' : (part?.name ?? '')}
      open={part !== undefined}
      onClose={onClose}
    >
      <PartForm job={job} part={part} onClose={onClose} />
    </Dialog>
  );
}

function PartForm({ job, part, onClose }: PartProps) {
  const shop = useShop();
  const before = part === 'new' || part === undefined ? undefined : asBody(part);
  const form = useForm({
    job: job.id,
    kind: 'part',
    handle: before?.part,
    title: before?.name ?? 'A part',
    before,
    fields: {
      name: { as: 'text', label: 'Part', hint: 'head gasket', need: 'Say which part.' },
      count: { as: 'number', whole: true, label: 'How many', begin: '1', need: 'How many: 1 or more.' },
      number: { as: 'text', label: 'Number' },
      supplier: { as: 'text', label: 'Supplier' },
      price: {
        as: 'money',
        label: 'Price each',
        currency: before?.price?.currency ?? shop.settings.currency ?? '$',
      },
      due: { as: 'date', label: 'Due' },
      state: {
        as: 'choice',
        label: 'It is',
        choices: states,
        begin: 'wanted',
        help: ({ state }) =>
          state === 'arrived' ? 'Laid beside the old one: same outline, same holes, same slots?' : undefined,
      },
      words: { as: 'text', label: 'Note' },
    },
    also: ({ name = '' }) => ({
      part: before?.part ?? handleOf(name),
      component: before?.component,
      consumable: before?.consumable,
      offer: before?.offer,
    }),
    onDone: onClose,
  });
  return <FormBox form={form} keep="Keep" leave="Leave it" onLeave={onClose} />;
}
