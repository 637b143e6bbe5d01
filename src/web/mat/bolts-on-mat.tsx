import { type ReactNode, useState } from 'react';
import type { Job } from '../../job/index.js';
import { counted } from '../../phrase/index.js';
import type { UnitSystem } from '../../quantity/index.js';
import { type BoltGroup, groupsOf, type Seen } from '../../sight/index.js';
import { useUnits } from '../data/queries.js';
import { toggled } from '../parts/field.js';
import { BarsNotMeasured } from './bars-not-measured.js';
import { KeepSeen } from './keep-seen.js';
import { lengthWords } from './length-words.js';
import { PhotographOnMat } from './photograph.js';
import { Saw } from './saw.js';

/** Bolts that lie on the mat: counted, measured, like ones together, the picture kept. */
export function BoltsOnMat({ job, about }: { job: Job; about: string | undefined }) {
  const system = useUnits();
  return (
    <SeenBolts>
      {(seen, groups) => (
        <KeepSeen
          job={job}
          about={about}
          stage="teardown"
          seen={seen}
          sizes={groups.map((group) => `${group.bolts.length} × ${groupWords(group, system)}`).join('; ')}
        />
      )}
    </SeenBolts>
  );
}

/** Photographs bolts on the mat and says what was seen; what is done with them is the caller's. */
export function SeenBolts(props: { children: (seen: Seen, groups: readonly BoltGroup[]) => ReactNode }) {
  const [seen, setSeen] = useState<Seen>();
  const [dropped, setDropped] = useState<readonly number[]>([]);
  const system = useUnits();
  const bolts = seen?.bolts?.filter((_, i) => !dropped.includes(i));
  const groups = bolts && groupsOf(bolts);
  return (
    <div className="stack">
      <p className="soft">Each on its side, a finger’s width apart, nothing else on the mat.</p>
      <PhotographOnMat
        as="bolts"
        label={seen ? 'Another photograph' : 'Photograph them on the mat'}
        onSeen={(now) => {
          setSeen(now);
          setDropped([]);
        }}
      />
      {seen && groups && (
        <>
          <Saw
            seen={seen}
            dropped={new Set(dropped)}
            onTap={(i) => setDropped(toggled(dropped, i))}
            says="What was seen on the mat"
          />
          <p>
            <b>{counted(bolts.length, 'bolt')}</b>
            {groups.length > 1 && ` of ${groups.length} kinds: keep them apart`}.
          </p>
          <BarsNotMeasured />
          <ul className="lines">
            {groups.map((group) => (
              <li key={`${group.length} ${group.d}`}>
                <span>
                  <b>{group.bolts.length} ×</b> {groupWords(group, system)}
                </span>
              </li>
            ))}
          </ul>
          {props.children(seen, groups)}
        </>
      )}
    </div>
  );
}

const groupWords = ({ length, d, flats, u, uDiameter }: BoltGroup, system: UnitSystem): string => {
  const words = (mm: number) => lengthWords(mm, system, 'coarse');
  return [
    `${words(length)} ±${words(u)} under the head`,
    `${words(d)} ±${words(uDiameter)} thick`,
    ...(flats === undefined ? [] : [`${words(flats)} across the flats`]),
  ].join(', ');
};
