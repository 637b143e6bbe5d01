import { useState } from 'react';
import { filmMinutesLeft } from '../../job/index.js';
import { minutesWords } from '../../phrase/index.js';
import { TextField } from '../parts/field.js';

/** How long a camera can still run before its card is full. */
export function CardLeft({ rate }: { rate: string | undefined }) {
  const [free, setFree] = useState('');
  const [typed, setTyped] = useState(rate ?? '');
  const minutes = filmMinutesLeft(numberIn(free), numberIn(typed));
  return (
    <section className="section stack tight" aria-label="Minutes left on a card">
      <h2>Minutes left on a card</h2>
      <div className="side-by-side">
        <TextField label="Free on the card, GB" value={free} onChange={setFree} inputMode="decimal" />
        <TextField
          label="The camera’s bit rate, Mb/s"
          value={typed}
          onChange={setTyped}
          inputMode="decimal"
          help={
            rate === undefined
              ? 'In the camera’s menu or manual; a film that is chosen above fills it in.'
              : 'Of the film above: its size over its length.'
          }
        />
      </div>
      <p role="status">
        {minutes === undefined ? (
          <span className="soft">Both figures give the minutes.</span>
        ) : (
          <>
            <b>About {minutesWords(minutes)}</b>; count on a tenth less, the rate changes with the picture.
          </>
        )}
      </p>
    </section>
  );
}

const numberIn = (typed: string): number =>
  /^\s*\d*[.,]?\d+\s*$/.test(typed) ? Number(typed.replace(',', '.')) : Number.NaN;
