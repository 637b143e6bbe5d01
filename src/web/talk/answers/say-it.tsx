import { useDevice } from '../../data/device.js';
import { Button } from '../../parts/act.js';
import type { Choice } from './choice.js';

/** A choice as its button, with what may be said for it where answers are spoken. */
export function ChoiceButton({
  choice: { label, say, act, disabled, look = 'plain' },
  autoFocus,
}: {
  choice: Choice;
  autoFocus?: boolean;
}) {
  const { spokenAnswers } = useDevice();
  return (
    <Button look={look} autoFocus={autoFocus} disabled={disabled} onClick={() => void act()}>
      {label}
      {spokenAnswers && say !== undefined && say !== label && <small className="say-it">“{say}”</small>}
    </Button>
  );
}
