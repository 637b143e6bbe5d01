import { useState } from 'react';
import type { Job } from '../../job/index.js';
import { counted, inPercent } from '../../phrase/index.js';
import type { UnitSystem } from '../../quantity/index.js';
import {
  extentOf,
  mayHideBolts,
  type Plate,
  type Seen,
  type Thickness,
  toDxf,
  toSvg,
} from '../../sight/index.js';
import { useShop, useUnits } from '../data/queries.js';
import { Button } from '../parts/act.js';
import { toggled } from '../parts/field.js';
import { download } from '../shop/download.js';
import { barsOf } from './bars.js';
import { BarsNotMeasured } from './bars-not-measured.js';
import { KeepSeen } from './keep-seen.js';
import { lengthWords } from './length-words.js';
import { PhotographOnMat } from './photograph.js';
import { Saw } from './saw.js';
import { ThicknessField } from './thickness-field.js';

/** A gasket, a cover or a head face: its outline and holes, to look at, to cut by, to keep. */
export function PlateOnMat({ job, about }: { job: Job; about: string | undefined }) {
  const [thickness, setThickness] = useState<Thickness>();
  const [seen, setSeen] = useState<Seen>();
  const [dropped, setDropped] = useState<readonly number[]>([]);
  const system = useUnits();
  const begin = (now: Seen | undefined) => {
    setSeen(now);
    setDropped([]);
  };
  const plate = seen?.plate && {
    ...seen.plate,
    holes: seen.plate.holes.filter((_, i) => !dropped.includes(i)),
  };
  return (
    <div className="stack">
      <ThicknessField
        label="How thick it is, by a caliper"
        help="Left empty, it is read as if it were thin as paper, and every ± is wider."
        onChange={setThickness}
      />
      <PhotographOnMat
        as="plate"
        thickness={thickness}
        label={seen ? 'Another photograph' : 'Photograph it on the mat'}
        onSeen={begin}
      />
      {seen && plate && (
        <>
          <Saw
            seen={seen}
            dropped={new Set(dropped)}
            onTap={(i) => setDropped(toggled(dropped, i))}
            says="What was seen on the mat"
          />
          <p className="soft">Tap a hole that is a stain or a speck: it is left out.</p>
          <Sizes plate={plate} tilt={seen.camera?.tiltDeg} />
          <div className="row">
            <Button onClick={() => download('part-1-to-1.svg', toSvg(plate), 'image/svg+xml')}>
              Drawing to print, 1:1
            </Button>
            <Button onClick={() => download('part-1-to-1.dxf', toDxf(plate), 'image/vnd.dxf')}>
              For a cutting machine (DXF)
            </Button>
          </div>
          <KeepSeen job={job} about={about} stage="measure" seen={seen} sizes={sizeWords(plate, system)} />
        </>
      )}
    </div>
  );
}

function sizeWords(plate: Plate, system: UnitSystem): string {
  const { x, y } = extentOf(plate);
  return [
    `${lengthWords(x, system, 'coarse')} × ${lengthWords(y, system, 'coarse')} as it lay`,
    ...plate.holes.map(({ d, u }, i) => `hole ${i + 1} ${lengthWords(d, system)} ±${lengthWords(u, system)}`),
  ].join(', ');
}

function Sizes({ plate, tilt = 0 }: { plate: Plate; tilt: number | undefined }) {
  const bars = barsOf(useShop());
  const system = useUnits();
  const { x: long, y: wide } = extentOf(plate);
  return (
    <div className="stack tight">
      <p>
        <b>
          {lengthWords(long, system, 'coarse')} × {lengthWords(wide, system, 'coarse')}
        </b>{' '}
        as it lay, {counted(plate.holes.length, 'round hole')}
        {plate.cutouts.length > 0 && `, ${counted(plate.cutouts.length, 'opening')} that are not round`}.
        Taken {tilt.toFixed(0)}° off upright.
      </p>
      <BarsNotMeasured />
      <table className="figures">
        <thead>
          <tr>
            <th scope="col">Hole</th>
            <th scope="col">across</th>
            <th scope="col">from the first</th>
            <th scope="col">±</th>
          </tr>
        </thead>
        <tbody>
          {plate.holes.map(({ x, y, d, u }, i) => (
            <tr key={`${x} ${y}`}>
              <th scope="row">{i + 1}</th>
              <td>{lengthWords(d, system)}</td>
              <td>
                {i === 0 ? '' : lengthWords(Math.hypot(x - plate.holes[0]!.x, y - plate.holes[0]!.y), system)}
              </td>
              <td>{lengthWords(u, system)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {bars && <p className="soft">And ±{inPercent(bars.u, 2)} of every length, for the bars of the mat.</p>}
      {mayHideBolts(plate) && (
        <p>
          <b>Count the holes on the part.</b> From here one narrower than {plate.hiddenBelow.toFixed(0)} mm
          may show no mat through it; from straight above more of them are seen.
        </p>
      )}
    </div>
  );
}
