import { localTime } from '../../job/index.js';
import { Field } from '../parts/field.js';

/** An instant to the second, by this device's own clock; nothing is told while the field is no time. */
export function TimeField(props: {
  label: string;
  ms: number | undefined;
  onChange: (ms: number) => void;
  help?: string;
}) {
  const { label, ms, onChange, help } = props;
  return (
    <Field label={label} help={help}>
      {(control) => (
        <input
          {...control}
          type="datetime-local"
          step={1}
          value={ms === undefined ? '' : localTime(new Date(ms)).slice(0, 19)}
          onChange={(e) => {
            const typed = new Date(e.target.value).getTime();
            if (!Number.isNaN(typed)) onChange(typed);
          }}
        />
      )}
    </Field>
  );
}
