import { useState } from 'react';
import { QuantityError } from '../../quantity/index.js';
import { readThickness, type Thickness } from '../../sight/index.js';
import { TextField } from '../parts/field.js';

/** A thickness as it is typed; what cannot be read is said and changes nothing. */
export function ThicknessField(props: {
  label: string;
  help: string;
  onChange: (thickness: Thickness | undefined) => void;
}) {
  const [text, setText] = useState('');
  const [wrong, setWrong] = useState<string>();
  const change = (typed: string) => {
    setText(typed);
    try {
      props.onChange(typed.trim() === '' ? undefined : readThickness(typed));
      setWrong(undefined);
    } catch (error) {
      if (!(error instanceof QuantityError)) throw error;
      setWrong(error.message);
    }
  };
  return (
    <TextField
      label={props.label}
      value={text}
      onChange={change}
      placeholder="1.2 mm"
      wrong={wrong}
      help={props.help}
    />
  );
}
