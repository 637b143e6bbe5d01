import { type Shop, shopLog } from '../../job/index.js';
import type { Kind } from '../../quantity/index.js';
import { FieldError, type Given } from '../form/field.js';
import { FormBox } from '../form/form.js';
import { useForm } from '../form/use-form.js';
import { handleOf } from '../sheets/components.js';
import { ShopList } from './shop-list.js';

export function Wrenches({ shop }: { shop: Shop }) {
  return (
    <ShopList
      kind="wrench"
      title="Torque wrenches"
      empty="List the shop’s torque wrenches, and each joint says which one is fit for it."
      things={shop.wrenches}
      says={(w) => `${w.min.written} to ${w.max.written}, ± ${w.accuracyPercent} %`}
    >
      <details>
        <summary>Add a torque wrench</summary>
        <AddWrench />
      </details>
    </ShopList>
  );
}

const rangeNeeded = 'A name and the range of the scale are needed.';

function AddWrench() {
  const form = useForm({
    job: shopLog,
    kind: 'wrench',
    title: 'A torque wrench',
    fields: {
      name: { as: 'text', label: 'Name', hint: '20–200 in-lb click', need: rangeNeeded },
      min: { as: 'quantity', kind: 'torque', label: 'Scale begins at', hint: '20 in-lb', need: rangeNeeded },
      max: { as: 'quantity', kind: 'torque', label: 'Scale ends at', hint: '200 in-lb', need: rangeNeeded },
      accuracyPercent: {
        as: 'number',
        label: 'Accuracy, ± %',
        begin: '4',
        need: 'Accuracy: a number is needed, 4 if nothing better is known.',
        help: '4 % is usual for a click wrench in the upper part of its range.',
      },
    },
    also: ({ name = '', min, max }) => {
      if (min && max && min.si >= max.si)
        throw new FieldError('max', 'The scale ends below where it begins.');
      return { tool: handleOf(name) };
    },
  });
  return <FormBox form={form} keep="Add the wrench" className="stack tight" />;
}

const instrumentKinds: readonly { id: Kind; label: string }[] = [
  { id: 'length', label: 'length' },
  { id: 'pressure', label: 'pressure' },
  { id: 'rotation', label: 'speed' },
  { id: 'ratio', label: 'percent' },
  { id: 'temperature', label: 'temperature' },
  { id: 'resistance', label: 'resistance' },
];

export function Instruments({ shop }: { shop: Shop }) {
  return (
    <ShopList
      kind="instrument"
      title="Instruments"
      empty="List micrometers, gauges and testers with what they can tell, and a reading near its limit can be judged."
      things={shop.instruments}
      says={(i) =>
        `reads to ${i.resolution.written}, ± ${i.uncertainty.written} in practised hands${i.zeroError ? `, ${i.zeroError.written} off at zero` : ''}`
      }
    >
      <details>
        <summary>Add an instrument</summary>
        <AddInstrument />
      </details>
    </ShopList>
  );
}

const readingNeeded = 'A name, what it reads to, and its uncertainty are needed.';
const kindOf = ({ $kind }: Given) => $kind as Kind;

function AddInstrument() {
  const form = useForm({
    job: shopLog,
    kind: 'instrument',
    title: 'An instrument',
    fields: {
      $kind: { as: 'choice', label: 'It reads', choices: instrumentKinds, begin: 'length' },
      name: { as: 'text', label: 'Name', hint: 'outside micrometer 2–3 in', need: readingNeeded },
      resolution: { as: 'quantity', kind: kindOf, label: 'Reads to', hint: '0.0001 in', need: readingNeeded },
      uncertainty: {
        as: 'quantity',
        kind: kindOf,
        label: 'Uncertainty, ±',
        hint: '0.0002 in',
        need: readingNeeded,
        help: 'Twice the standard uncertainty: 19 of 20 readings lie closer than this.',
      },
      zeroError: {
        as: 'quantity',
        kind: kindOf,
        label: 'Off at zero (may be left out)',
        hint: '0.0002 in',
        help: 'What it shows on its standard, less the standard. Taken off every reading.',
      },
    },
    also: ({ name = '' }) => ({ tool: handleOf(name) }),
  });
  return <FormBox form={form} keep="Add the instrument" className="stack tight" />;
}
