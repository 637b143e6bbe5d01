import { Button } from '../../parts/act.js';
import type { Choice } from './choice.js';

/** A choice as its button. */
export function ChoiceButton({ choice, autoFocus }: { choice: Choice; autoFocus?: boolean }) {
  const { label, act, disabled, look = 'plain' } = choice;
  return (
    <Button look={look} autoFocus={autoFocus} disabled={disabled} onClick={() => void act()}>
      {label}
    </Button>
  );
}
