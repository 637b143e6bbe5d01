import type { From } from '../../../../job/index.js';
import { useWidth } from '../../../parts/width.js';
import { type Axis, axisOver } from './axis.js';

type Recording = From<'recording'>;
type Heard = Pick<Recording, 'seconds' | 'track' | 'segments' | 'marks' | 'mean'>;

/** Speeds that every picture beside it shares, so that two recordings can be laid against each other. */
export interface SpeedSpan {
  readonly low: number;
  readonly high: number;
}

export function spanOf(recordings: readonly Heard[], mostRpm: number | undefined): SpeedSpan | undefined {
  const speeds = recordings.flatMap(({ track }) => track.map(({ rpm }) => rpm));
  if (speeds.length === 0) return undefined;
  const all = mostRpm === undefined ? speeds : [...speeds, mostRpm];
  const low = Math.min(...all);
  const high = Math.max(...all);
  const room = Math.max(50, 0.08 * (high - low));
  return { low: Math.max(0, low - room), high: high + room };
}

/** Speed over time: the curve with what it may be off by, steady stretches underlined, marks and the most allowed. */
export function SpeedPicture(props: {
  heard: Heard;
  span: SpeedSpan;
  mostRpm?: number | undefined;
  title: string;
}) {
  const [box, width] = useWidth<HTMLDivElement>();
  return (
    <div ref={box} className="speed-picture">
      {width > 0 && <Drawing {...props} width={width} />}
    </div>
  );
}

const height = 230;
const left = 52;
const bottom = 30;
const top = 22;

function Drawing(props: Parameters<typeof SpeedPicture>[0] & { width: number }) {
  const { heard, span, mostRpm, title, width } = props;
  const x = axisOver(0, heard.seconds, left, width - 12, 80);
  const y = axisOver(span.low, span.high, height - bottom, top, 42);
  return (
    <svg width={width} height={height} role="img" aria-label={inWords(title, heard)}>
      {y.ticks.map((rpm) => (
        <g key={rpm} className="grid">
          <line x1={left} x2={width - 12} y1={y.at(rpm)} y2={y.at(rpm)} />
          <text x={left - 8} y={y.at(rpm) + 4} textAnchor="end">
            {rpm}
          </text>
        </g>
      ))}
      {x.ticks.slice(0, -1).map((t) => (
        <text key={t} className="tick" x={x.at(t)} y={height - 10} textAnchor="middle">
          {t} s
        </text>
      ))}
      <text className="tick" x={4} y={14}>
        rpm
      </text>
      {runs(heard.track).map((run) => (
        <Run key={run[0]!.t} run={run} x={x} y={y} />
      ))}
      {heard.segments.map((s) => (
        <line
          key={s.from}
          className="steady"
          x1={x.at(s.from)}
          x2={x.at(s.to)}
          y1={height - bottom + 4}
          y2={height - bottom + 4}
        />
      ))}
      {mostRpm !== undefined && (
        <g className="most">
          <line x1={left} x2={width - 12} y1={y.at(mostRpm)} y2={y.at(mostRpm)} />
          <text x={width - 14} y={y.at(mostRpm) - 5} textAnchor="end">
            at most {Math.round(mostRpm)}
          </text>
        </g>
      )}
      {heard.marks.map((mark) => (
        <g key={`${mark.t} ${mark.what}`} className="mark">
          <line x1={x.at(mark.t)} x2={x.at(mark.t)} y1={top} y2={height - bottom} />
          <text x={x.at(mark.t) + 4} y={top + 8}>
            {mark.what}
          </text>
        </g>
      ))}
    </svg>
  );
}

function Run({ run, x, y }: { run: Heard['track']; x: Axis; y: Axis }) {
  const place = (t: number, rpm: number) => `${x.at(t).toFixed(1)},${y.at(rpm).toFixed(1)}`;
  const upper = run.map((p) => place(p.t, p.rpm + 2 * p.u));
  const lower = run.map((p) => place(p.t, p.rpm - 2 * p.u));
  return (
    <>
      <polygon className="doubt" points={[...upper, ...lower.reverse()].join(' ')} />
      <polyline className="curve" points={run.map((p) => place(p.t, p.rpm)).join(' ')} />
    </>
  );
}

/** A gap in what was heard is a gap in the curve, never a line across it. */
function runs(track: Heard['track']): Heard['track'][] {
  const gaps = track
    .slice(1)
    .map((p, i) => p.t - track[i]!.t)
    .toSorted((a, b) => a - b);
  const usual = gaps[Math.floor(gaps.length / 2)] ?? 0;
  const list: Heard['track'][] = [];
  for (const point of track) {
    const last = list.at(-1)?.at(-1);
    if (last && point.t - last.t <= 2.5 * usual) list.at(-1)!.push(point);
    else list.push([point]);
  }
  return list;
}

function inWords(title: string, { seconds, mean, segments, track }: Heard): string {
  if (track.length === 0) return `${title}: no speed was heard in ${seconds.toFixed(0)} seconds`;
  const speeds = track.map(({ rpm }) => rpm);
  const range = `${Math.round(Math.min(...speeds))} to ${Math.round(Math.max(...speeds))} rpm`;
  const steady = segments.map(
    (s) => `${Math.round(s.rpm)} rpm from ${s.from.toFixed(0)} to ${s.to.toFixed(0)} s`,
  );
  return [
    `${title}: ${range} over ${seconds.toFixed(0)} seconds`,
    mean && `mean ${Math.round(mean.rpm)} rpm`,
    steady.length > 0 && `steady at ${steady.join(', ')}`,
  ]
    .filter(Boolean)
    .join('; ');
}
