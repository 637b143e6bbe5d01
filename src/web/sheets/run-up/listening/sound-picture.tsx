import { useEffect, useRef } from 'react';
import { axisOver } from '../../../../draw/index.js';
import type { Body } from '../../../../job/index.js';
import { orderLines, type Spectrogram } from '../../../../listen/index.js';
import { useWidth } from '../../../parts/width.js';

type Heard = Pick<Body<'recording'>, 'strokes' | 'cylinders' | 'track' | 'seconds'>;

const height = 260;
const left = 58;
const bottom = 26;
const orders = 6;

/**
 * Loudness over time and frequency, with the firing rate that was heard and its multiples drawn over it: where the
 * lines lie on the dark bands, the speed is to be believed.
 */
export function SoundPicture({ look, heard }: { look: Spectrogram; heard: Heard }) {
  const [box, width] = useWidth<HTMLDivElement>();
  return (
    <div ref={box} className="sound-picture">
      {width > 0 && <Drawing look={look} heard={heard} width={width} />}
    </div>
  );
}

function Drawing({ look, heard, width }: { look: Spectrogram; heard: Heard; width: number }) {
  const topHz = look.stepHz * ((look.columnsDb[0]?.length ?? 1) - 1);
  const x = axisOver(0, heard.seconds, left, width - 8, 80);
  const at = (t: number) => left + ((width - 8 - left) * t) / heard.seconds;
  const y = (hz: number) => height - bottom - ((height - bottom - 8) * hz) / topHz;
  const marks = [0, 0.25, 0.5, 0.75, 1].map((share) => Math.round((share * topHz) / 50) * 50);
  const { strokes, cylinders } = heard;
  const track = heard.track.map((point) => ({ ...point, confidence: 1 }));
  const lines = orderLines(track, { strokes, cylinders }, orders);
  return (
    <>
      <Loudness look={look} width={width - 8 - left} height={height - bottom - 8} />
      <svg
        width={width}
        height={height}
        role="img"
        aria-label={`The sound up to ${Math.round(topHz)} Hz with the firing rate that was heard and its first ${orders} multiples`}
      >
        {marks.map((hz) => (
          <text key={hz} x={left - 8} y={y(hz) + 4} textAnchor="end">
            {hz} Hz
          </text>
        ))}
        {x.ticks
          .filter((t) => t <= heard.seconds)
          .map((t) => (
            <text key={t} x={at(t)} y={height - 6} textAnchor="middle">
              {t} s
            </text>
          ))}
        {lines.map(({ order, points }) => (
          <g key={order} className={order === 1 ? 'firing' : 'multiple'}>
            {points
              .filter(({ hz }) => hz < topHz)
              .map(({ t, hz }) => (
                <circle key={t} cx={at(t)} cy={y(hz)} r={order === 1 ? 1.6 : 1} />
              ))}
          </g>
        ))}
      </svg>
    </>
  );
}

/** Ink on paper: the louder, the darker, by day and by night the paper's own ink. */
function Loudness({ look, width, height: high }: { look: Spectrogram; width: number; height: number }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const pen = canvas.current?.getContext('2d');
    if (!pen || !canvas.current) return;
    const ink = getComputedStyle(canvas.current).color;
    const columns = look.columnsDb.length;
    const rows = look.columnsDb[0]?.length ?? 0;
    pen.clearRect(0, 0, columns, rows);
    pen.fillStyle = ink;
    look.columnsDb.forEach((column, i) => {
      column.forEach((db, row) => {
        pen.globalAlpha = Math.max(0, 1 + db / quietestDb);
        pen.fillRect(i, rows - 1 - row, 1, 1);
      });
    });
  }, [look]);
  return (
    <canvas
      ref={canvas}
      width={look.columnsDb.length}
      height={look.columnsDb[0]?.length ?? 0}
      style={{ left, top: 8, width, height: high }}
    />
  );
}

const quietestDb = 70;
