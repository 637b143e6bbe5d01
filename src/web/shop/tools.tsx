import { type ReactNode, useState } from 'react';
import { type Shop, shopLog } from '../../job/index.js';
import type { Kind } from '../../quantity/index.js';
import { write } from '../data/outbox.js';
import { Button, useAct, Wrong } from '../parts/act.js';
import { amountIn } from '../parts/amount.js';
import { Choices, TextField } from '../parts/field.js';
import { readWritten, WrittenField } from '../parts/written.js';
import { handleOf } from '../sheets/components.js';

function ToolList(props: {
  title: string;
  empty: string;
  tools: readonly { tool: string; name: string; says: string }[];
  onRetire: (tool: string) => void;
  children: ReactNode;
}) {
  return (
    <section className="section stack tight">
      <h2>{props.title}</h2>
      {props.tools.length === 0 && <p className="empty">{props.empty}</p>}
      <ul className="lines">
        {props.tools.map((t) => (
          <li key={t.tool}>
            <div>
              <b>{t.name}</b>
              <div className="soft">{t.says}</div>
            </div>
            <Button look="quiet" onClick={() => props.onRetire(t.tool)} aria-label={`Retire ${t.name}`}>
              Retire
            </Button>
          </li>
        ))}
      </ul>
      {props.children}
    </section>
  );
}

export function Wrenches({ shop }: { shop: Shop }) {
  const [name, setName] = useState('');
  const [min, setMin] = useState(readWritten('', 'torque'));
  const [max, setMax] = useState(readWritten('', 'torque'));
  const [accuracy, setAccuracy] = useState('4');
  const { wrong, act } = useAct();
  const add = () =>
    act(async () => {
      if (!name.trim() || !min.value || !max.value)
        throw new Error('A name and the range of the scale are needed.');
      if (min.value.si >= max.value.si) throw new Error('The scale ends below where it begins.');
      await write(shopLog, 'wrench', {
        tool: handleOf(name),
        name: name.trim(),
        min: min.value,
        max: max.value,
        accuracyPercent: amountIn('Accuracy', accuracy),
      });
      setName('');
      setMin(readWritten('', 'torque'));
      setMax(readWritten('', 'torque'));
    });
  const retire = (tool: string) => {
    const found = shop.wrenches.find((w) => w.tool === tool);
    if (found)
      void act(() =>
        write(shopLog, 'wrench', {
          tool,
          name: found.name,
          min: found.min,
          max: found.max,
          accuracyPercent: found.accuracyPercent,
          retired: true,
        }),
      );
  };
  return (
    <ToolList
      title="Torque wrenches"
      empty="List the shop’s torque wrenches, and each joint says which one is fit for it."
      tools={shop.wrenches.map((w) => ({
        tool: w.tool,
        name: w.name,
        says: `${w.min.written} to ${w.max.written}, ± ${w.accuracyPercent} %`,
      }))}
      onRetire={retire}
    >
      <details>
        <summary>Add a torque wrench</summary>
        <div className="stack tight">
          <div className="fields">
            <TextField label="Name" value={name} onChange={setName} placeholder="20–200 in-lb click" />
            <WrittenField
              label="Scale begins at"
              kind="torque"
              state={min}
              onChange={setMin}
              hint="20 in-lb"
            />
            <WrittenField
              label="Scale ends at"
              kind="torque"
              state={max}
              onChange={setMax}
              hint="200 in-lb"
            />
            <TextField
              label="Accuracy, ± %"
              value={accuracy}
              onChange={setAccuracy}
              inputMode="decimal"
              help="4 % is usual for a click wrench in the upper part of its range."
            />
          </div>
          <Wrong words={wrong} />
          <div>
            <Button look="go" onClick={() => void add()}>
              Add the wrench
            </Button>
          </div>
        </div>
      </details>
    </ToolList>
  );
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
  const [name, setName] = useState('');
  const [kind, setKind] = useState<Kind>('length');
  const [resolution, setResolution] = useState(readWritten('', kind));
  const [uncertainty, setUncertainty] = useState(readWritten('', kind));
  const [zero, setZero] = useState(readWritten('', kind));
  const { wrong, act } = useAct();
  const changeKind = (k: Kind) => {
    setKind(k);
    setResolution(readWritten(resolution.text, k));
    setUncertainty(readWritten(uncertainty.text, k));
    setZero(readWritten(zero.text, k));
  };
  const add = () =>
    act(async () => {
      if (!name.trim() || !resolution.value || !uncertainty.value)
        throw new Error('A name, what it reads to, and its uncertainty are needed.');
      if (zero.wrong) throw new Error(zero.wrong);
      await write(shopLog, 'instrument', {
        tool: handleOf(name),
        name: name.trim(),
        resolution: resolution.value,
        uncertainty: uncertainty.value,
        ...(zero.value && { zeroError: zero.value }),
      });
      setName('');
      setZero(readWritten('', kind));
    });
  const retire = (tool: string) => {
    const found = shop.instruments.find((i) => i.tool === tool);
    if (found)
      void act(() =>
        write(shopLog, 'instrument', {
          tool,
          name: found.name,
          resolution: found.resolution,
          uncertainty: found.uncertainty,
          ...(found.zeroError && { zeroError: found.zeroError }),
          retired: true,
        }),
      );
  };
  return (
    <ToolList
      title="Instruments"
      empty="List micrometers, gauges and testers with what they can tell, and a reading near its limit can be judged."
      tools={shop.instruments.map((i) => ({
        tool: i.tool,
        name: i.name,
        says: `reads to ${i.resolution.written}, ± ${i.uncertainty.written} in practised hands${i.zeroError ? `, ${i.zeroError.written} off at zero` : ''}`,
      }))}
      onRetire={retire}
    >
      <details>
        <summary>Add an instrument</summary>
        <div className="stack tight">
          <Choices label="It reads" choices={instrumentKinds} value={kind} onChange={changeKind} />
          <div className="fields">
            <TextField label="Name" value={name} onChange={setName} placeholder="outside micrometer 2–3 in" />
            <WrittenField
              label="Reads to"
              kind={kind}
              state={resolution}
              onChange={setResolution}
              hint="0.0001 in"
            />
            <WrittenField
              label="Uncertainty, ±"
              kind={kind}
              state={uncertainty}
              onChange={setUncertainty}
              hint="0.0002 in"
              help="Twice the standard uncertainty: 19 of 20 readings lie closer than this."
            />
            <WrittenField
              label="Off at zero (may be left out)"
              kind={kind}
              state={zero}
              onChange={setZero}
              hint="0.0002 in"
              help="What it shows on its standard, less the standard. Taken off every reading."
            />
          </div>
          <Wrong words={wrong} />
          <div>
            <Button look="go" onClick={() => void add()}>
              Add the instrument
            </Button>
          </div>
        </div>
      </details>
    </ToolList>
  );
}
