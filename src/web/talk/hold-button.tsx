import { type ReactNode, useRef } from 'react';
import { Button } from '../parts/act.js';

/** A press that is shorter begins and leaves it on until the next. */
const tapMs = 500;

/** Held while one talks; a tap begins and another ends, for whoever cannot hold. */
export function HoldButton(props: {
  isOn: boolean;
  disabled: boolean;
  begin: () => void;
  end: () => void;
  children: ReactNode;
}) {
  const { isOn, disabled, begin, end, children } = props;
  const pressed = useRef<number>(undefined);
  return (
    <Button
      className="hold-to-talk"
      aria-pressed={isOn}
      disabled={disabled}
      onPointerDown={(e) => {
        if (e.button !== 0) return;
        e.currentTarget.setPointerCapture(e.pointerId);
        if (isOn) return end();
        pressed.current = e.timeStamp;
        begin();
      }}
      onPointerUp={(e) => {
        if (pressed.current !== undefined && e.timeStamp - pressed.current >= tapMs) end();
        pressed.current = undefined;
      }}
      onPointerCancel={end}
      onContextMenu={(e) => e.preventDefault()}
      // from a key or another aid; a pointer has been heard already
      onClick={(e) => e.detail === 0 && (isOn ? end() : begin())}
    >
      {children}
    </Button>
  );
}
