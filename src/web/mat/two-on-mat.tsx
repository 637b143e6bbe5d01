import { useMemo, useState } from 'react';
import type { Job } from '../../job/index.js';
import { counted } from '../../phrase/index.js';
import type { UnitSystem } from '../../quantity/index.js';
import type { Comparison, Difference, Seen, Thickness } from '../../sight/index.js';
import { useUnits } from '../data/queries.js';
import { Wrong } from '../parts/act.js';
import { compareBeside } from '../work/see-beside.js';
import { useBeside } from '../work/use-beside.js';
import { KeepSeen } from './keep-seen.js';
import { lengthWords } from './length-words.js';
import { PhotographOnMat } from './photograph.js';
import { Saw } from './saw.js';
import { ThicknessField } from './thickness-field.js';

const none: ReadonlySet<number> = new Set();
const signs = 'abcdefghijklmnopqrstuvwxyz';

/** Two gaskets that look alike, or the new part and the old one: what one has otherwise is marked on both pictures. */
export function TwoOnMat({ job, about }: { job: Job; about: string | undefined }) {
  const [thickness, setThickness] = useState<Thickness>();
  const [first, setFirst] = useState<Seen>();
  const [second, setSecond] = useState<Seen>();
  const system = useUnits();
  const pair = useMemo(
    () => (first?.plate && second?.plate ? { first: first.plate, second: second.plate } : undefined),
    [first, second],
  );
  const { answer, busy, wrong } = useBeside(pair, 'two', compareBeside);
  const found = busy ? undefined : answer;
  const marks = (where: 'inFirst' | 'inSecond') =>
    found?.differences.map((each, i) => ({ at: each[where], sign: signs[i] ?? '…' })) ?? [];
  return (
    <div className="stack">
      <ThicknessField
        label="How thick they are, by a caliper"
        help="If one is thicker than the other, they are not the same part."
        onChange={setThickness}
      />
      <div className="side-by-side">
        {(
          [
            ['first', first, setFirst, 'inFirst'],
            ['second', second, setSecond, 'inSecond'],
          ] as const
        ).map(([name, seen, set, where]) => (
          <div key={name} className="stack tight">
            <h2>The {name}</h2>
            <PhotographOnMat
              as="plate"
              thickness={thickness}
              label={seen ? 'Another photograph' : `Photograph the ${name}`}
              onSeen={set}
            />
            {seen && <Saw seen={seen} dropped={none} marked={marks(where)} says={`The ${name} on the mat`} />}
          </div>
        ))}
      </div>
      {busy && <p role="status">Laying one over the other …</p>}
      <Wrong words={wrong} />
      {found && <Found found={found} />}
      {found && second && (
        <KeepSeen job={job} about={about} stage="parts" seen={second} sizes={foundWords(found, system)} />
      )}
    </div>
  );
}

/** In the words of somebody who looks for it. */
function differenceWords({ what, by }: Difference, system: UnitSystem): string {
  const far = lengthWords(by, system, 'coarse');
  switch (what) {
    case 'hole only in first':
      return `a hole of ${far} that only the first has`;
    case 'hole only in second':
      return `a hole of ${far} that only the second has`;
    case 'hole moved':
      return `a hole ${far} off`;
    case 'hole wider':
      return `a hole ${far} wider in the second`;
    case 'hole narrower':
      return `a hole ${far} narrower in the second`;
    case 'edge':
      return `the edge ${far} off`;
  }
}

const foundWords = ({ differences }: Comparison, system: UnitSystem): string =>
  differences.length === 0
    ? 'no difference to the first'
    : `differs from the first: ${differences.map((each) => differenceWords(each, system)).join(', ')}`;

function Found({ found }: { found: Comparison }) {
  const { differences, turnedOver, eitherWayUp, turns, least, maybeHidden } = found;
  const system = useUnits();
  return (
    <section className="stack tight" role="status">
      {differences.length === 0 ? (
        <p>
          <b className="verdict pass">No difference found.</b> One of less than{' '}
          {lengthWords(least, system, 'coarse')} would not show.
        </p>
      ) : (
        <>
          <p>
            <b className="verdict fail">
              They are not the same: {counted(differences.length, 'difference')}.
            </b>
          </p>
          <ul className="lines">
            {differences.map((each, i) => (
              <li key={`${each.what} ${each.inFirst.x} ${each.inFirst.y}`}>
                <span>
                  <b>{signs[i] ?? '…'}</b> {differenceWords(each, system)}
                </span>
              </li>
            ))}
          </ul>
        </>
      )}
      {maybeHidden > 0 && (
        <p>
          {counted(maybeHidden, 'narrow hole')} of one may be hidden in the other: take both from straight
          above.
        </p>
      )}
      {turnedOver && <p>The second lies the other way up; it was turned over to be compared.</p>}
      {eitherWayUp && (
        <p>
          Either way up it looks the same: its shape does not tell which side goes to the engine. Look for a
          mark.
        </p>
      )}
      {turns > 1 && (
        <p>It fits in {turns} turns alike: its shape does not tell which. Mark it as it comes off.</p>
      )}
    </section>
  );
}
