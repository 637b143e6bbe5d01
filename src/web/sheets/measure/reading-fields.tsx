import { type Body, type Shop, type Written, written } from '../../../job/index.js';
import { type Kind, QuantityError } from '../../../quantity/index.js';
import { FieldError, type FieldsOf, type Given, type QuantityField, quantityIn } from '../../form/field.js';
import { Asked } from '../../form/form.js';
import type { Form } from '../../form/use-form.js';
import { Button } from '../../parts/act.js';

const materials = [
  { id: 'cast iron', label: 'cast iron' },
  { id: 'aluminum', label: 'aluminum' },
  { id: 'steel', label: 'steel' },
  { id: 'bronze', label: 'bronze' },
  { id: 'magnesium', label: 'magnesium' },
] as const;

/** What is the same for every reading of one go: the tool, when it was taken, how warm the part was. */
export function circumstances(
  shop: Shop,
  kindOf: Kind | ((given: Given) => Kind),
): FieldsOf<Body<'measurement'>> {
  const kind = (given: Given) => (typeof kindOf === 'function' ? kindOf(given) : kindOf);
  const tools = (given: Given) => shop.instruments.filter((i) => i.uncertainty.kind === kind(given));
  const isLength = (given: Given) => kind(given) === 'length';
  return {
    instrument: {
      as: 'select',
      label: 'Instrument',
      none: 'not from the shop’s list',
      choices: (given) =>
        tools(given).map((i) => ({ id: i.tool, label: `${i.name} (± ${i.uncertainty.written})` })),
      help: (given) =>
        tools(given).length === 0
          ? 'List the shop’s instruments under Shop, and a reading near its limit can be judged.'
          : undefined,
    },
    phase: {
      as: 'choice',
      label: 'When',
      begin: 'as-found',
      choices: [
        { id: 'as-found', label: 'as found' },
        { id: 'after', label: 'after the work' },
      ],
    },
    temperature: {
      as: 'quantity',
      kind: 'temperature',
      label: 'Temperature of the part',
      hint: '85 °F',
      help: 'With the material, the size is brought to 20 °C (68 °F).',
      when: isLength,
    },
    material: {
      as: 'select',
      label: 'It is made of',
      none: 'not said: no correction',
      choices: materials,
      when: isLength,
    },
  };
}

export function CircumstanceFields({ form }: { form: Form }) {
  const warm = form.fields.temperature?.when?.(form.given) ?? true;
  return (
    <>
      <Asked form={form} names={['instrument', 'phase']} />
      {warm && (
        <details>
          <summary>Part not at room temperature</summary>
          <Asked form={form} names={['temperature', 'material']} />
        </details>
      )}
    </>
  );
}

/** Refuses a temperature at which no one measures. */
export function requireMeasurable({ temperature }: Partial<Body<'measurement'>>): void {
  const celsius = temperature && temperature.si - 273.15;
  if (celsius !== undefined && (celsius < -20 || celsius > 60))
    throw new FieldError(
      'temperature',
      'A part is measured between −20 and 60 °C (−4 and 140 °F): let it cool first.',
    );
}

/** A place or direction: one of the usual ones by a tap, any other in words. */
export function QuickText(props: { form: Form; name: string; usual: readonly string[] }) {
  const { form, name, usual } = props;
  return (
    <div className="stack tight">
      <Asked form={form} names={[name]} />
      {usual.length > 0 && (
        <div className="choices">
          {usual.map((words) => (
            <Button
              key={words}
              aria-pressed={form.given[name] === words}
              onClick={() => form.set(name, words)}
            >
              {words}
            </Button>
          ))}
        </div>
      )}
    </div>
  );
}

/** The unit in which one of these fields is written already: what stands beside it is taken in the same. */
export const unitBeside =
  (kind: (given: Given) => Kind, ...names: readonly string[]) =>
  (given: Given): string | undefined => {
    for (const name of names) {
      try {
        return written(String(given[name] ?? ''), kind(given)).unit;
      } catch (error) {
        if (!(error instanceof QuantityError)) throw error;
      }
    }
    return undefined;
  };

const gaugeUnits = [
  { id: 'in', label: 'inch' },
  { id: 'mm', label: 'mm' },
] as const;

/** The unit that the instrument shows, for a grid of readings. */
export const unitField = (metric: boolean) => ({
  $unit: {
    as: 'choice' as const,
    label: 'Unit of the readings',
    choices: gaugeUnits,
    begin: metric ? 'mm' : 'in',
  },
});
export const unitOf = ({ $unit }: Given): string => String($unit);

/** A length that takes the grid’s unit when only a number is typed. */
export const lengthField = (label: string, more: Partial<QuantityField> = {}): QuantityField => ({
  as: 'quantity',
  kind: 'length',
  unit: unitOf,
  label,
  ...more,
});

/** What is wrong with a cell of a grid; nothing while it is empty or can be read. */
export function wrongLength(text: string, unit: string): string | undefined {
  return lengthOrWhy(text, unit).wrong;
}

/** The length that a cell says; nothing while it cannot be read. */
export const lengthOf = (text: string, unit: string): Written | undefined => lengthOrWhy(text, unit).value;

function lengthOrWhy(text: string, unit: string): { value?: Written; wrong?: string } {
  if (text.trim() === '') return {};
  try {
    return { value: quantityIn(text, 'length', unit) };
  } catch (error) {
    if (error instanceof QuantityError) return { wrong: error.message };
    throw error;
  }
}

/** The same where a length must stand. Throws an Error that names what was read and why it is none. */
export function lengthIn(name: string, text: string, unit: string): Written {
  const { value, wrong } = lengthOrWhy(text, unit);
  if (!value) throw new Error(`${name}: ${wrong ?? 'not a length'}`);
  return value;
}

/** A line of the maker's sheet that says a length. */
export function lengthLine(spec: string, label: string, value: Written, from: string): Body<'spec'> {
  return { spec, label, line: `${label} ${value.written}`, value, origin: saidOrigin(from) };
}

/** Where a limit comes from, as a person says it. */
export function saidOrigin(said: string): { from: "maker's sheet" | "shop's own"; detail: string } {
  const maker = /sheet|maker|manual|page|booklet|\bp\. ?\d/i.test(said);
  return { from: maker ? "maker's sheet" : "shop's own", detail: said.trim() };
}
