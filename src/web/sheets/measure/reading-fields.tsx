import type { Body, Shop, Written } from '../../../job/index.js';
import type { Kind } from '../../../quantity/index.js';
import { Button } from '../../parts/act.js';
import { Choices, SelectField, TextField } from '../../parts/field.js';
import { readWritten, WrittenField, type WrittenState } from '../../parts/written.js';

export type Phase = NonNullable<Body<'measurement'>['phase']>;

/** What is the same for every reading of one go: the tool, when it was taken, how warm the part was. */
export interface Circumstances {
  readonly instrument: string;
  readonly phase: Phase;
  readonly temperature: WrittenState;
  readonly material: NonNullable<Body<'measurement'>['material']> | '';
}

export const atFirst: Circumstances = {
  instrument: '',
  phase: 'as-found',
  temperature: { text: '' },
  material: '',
};

const gaugeUnits = [
  { id: 'in', label: 'inch' },
  { id: 'mm', label: 'mm' },
] as const;
export type GaugeUnit = (typeof gaugeUnits)[number]['id'];

/** The unit that the instrument shows, for a grid of readings. */
export function UnitChoice(props: { value: GaugeUnit; onChange: (unit: GaugeUnit) => void }) {
  return <Choices label="Unit of the readings" choices={gaugeUnits} {...props} />;
}

const materials = [
  { id: 'cast iron', label: 'cast iron' },
  { id: 'aluminum', label: 'aluminum' },
  { id: 'steel', label: 'steel' },
  { id: 'bronze', label: 'bronze' },
  { id: 'magnesium', label: 'magnesium' },
] as const;

export function CircumstanceFields(props: {
  shop: Shop;
  kind: Kind;
  value: Circumstances;
  onChange: (value: Circumstances) => void;
}) {
  const { shop, kind, value, onChange } = props;
  const set = (some: Partial<Circumstances>) => onChange({ ...value, ...some });
  const tools = shop.instruments.filter((i) => i.uncertainty.kind === kind);
  return (
    <>
      <SelectField
        label="Instrument"
        value={value.instrument}
        onChange={(instrument) => set({ instrument })}
        none="not from the shop’s list"
        choices={tools.map((i) => ({ id: i.tool, label: `${i.name} (± ${i.uncertainty.written})` }))}
        help={
          tools.length === 0
            ? 'List the shop’s instruments under Shop, and a reading near its limit can be judged.'
            : undefined
        }
      />
      <Choices
        label="When"
        value={value.phase}
        onChange={(phase) => set({ phase })}
        choices={[
          { id: 'as-found', label: 'as found' },
          { id: 'after', label: 'after the work' },
        ]}
      />
      {kind === 'length' && (
        <details>
          <summary>Part not at room temperature</summary>
          <div className="fields">
            <WrittenField
              label="Temperature of the part"
              kind="temperature"
              state={value.temperature}
              onChange={(temperature) => set({ temperature })}
              hint="85 °F"
              help="With the material, the size is brought to 20 °C (68 °F)."
            />
            <SelectField
              label="It is made of"
              value={value.material}
              onChange={(material) => set({ material })}
              none="not said: no correction"
              choices={materials}
            />
          </div>
        </details>
      )}
    </>
  );
}

/** The part of an entry that the circumstances give. Refuses a temperature at which no one measures. */
export function circumstancesOf(value: Circumstances): Partial<Body<'measurement'>> {
  const { instrument, phase, temperature, material } = value;
  if (temperature.wrong) throw new Error(`Temperature of the part: ${temperature.wrong}`);
  const celsius = temperature.value && temperature.value.si - 273.15;
  if (celsius !== undefined && (celsius < -20 || celsius > 60))
    throw new Error('A part is measured between −20 and 60 °C (−4 and 140 °F): let it cool first.');
  return {
    phase,
    ...(instrument && { instrument }),
    ...(temperature.value && { temperature: temperature.value }),
    ...(material && { material }),
  };
}

/** A place or direction: one of the usual ones by a tap, any other in words. */
export function QuickText(props: {
  label: string;
  value: string;
  onChange: (value: string) => void;
  usual: readonly string[];
  placeholder?: string;
}) {
  const { usual, value, onChange } = props;
  return (
    <div className="stack tight">
      <TextField
        label={props.label}
        value={value}
        onChange={onChange}
        placeholder={props.placeholder ?? ''}
      />
      {usual.length > 0 && (
        <div className="choices">
          {usual.map((name) => (
            <Button key={name} aria-pressed={value === name} onClick={() => onChange(name)}>
              {name}
            </Button>
          ))}
        </div>
      )}
    </div>
  );
}

/** A number typed without a unit gets the one that was chosen for the whole grid, in its words too. */
export function readInUnit(text: string, unit: string): WrittenState {
  const bare = /^[-+−]?[\d.,/ ]+$/.test(text.trim()) && text.trim() !== '';
  const { value, wrong } = readWritten(bare ? `${text.trim()} ${unit}` : text, 'length');
  return { text, ...(value && { value }), ...(wrong && { wrong }) };
}

/** The same where a length must stand. Throws an Error that names what was read and why it is none. */
export function lengthIn(name: string, text: string, unit: string): Written {
  const { value, wrong } = readInUnit(text, unit);
  if (!value) throw new Error(`${name}: ${wrong ?? 'not a length'}`);
  return value;
}

/** A length that takes the grid's unit when only a number is typed. */
export function LengthText(props: {
  label: string;
  value: string;
  onChange: (text: string) => void;
  unit: string;
  hint?: string;
}) {
  const { wrong } = readInUnit(props.value, props.unit);
  return (
    <TextField
      label={props.label}
      value={props.value}
      onChange={props.onChange}
      wrong={wrong}
      placeholder={props.hint ?? ''}
      inputMode="decimal"
    />
  );
}

/** A line of the maker's sheet that says a length. */
export function lengthLine(
  spec: string,
  label: string,
  text: string,
  unit: string,
  from: string,
): Body<'spec'> {
  const value = lengthIn(label, text, unit);
  return { spec, label, line: `${label} ${value.written}`, value, origin: saidOrigin(from) };
}

/** Where a limit comes from, as a person says it. */
export function saidOrigin(said: string): { from: "maker's sheet" | "shop's own"; detail: string } {
  const maker = /sheet|maker|manual|page|booklet|\bp\. ?\d/i.test(said);
  return { from: maker ? "maker's sheet" : "shop's own", detail: said.trim() };
}
