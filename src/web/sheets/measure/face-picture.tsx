import type { FaceAnswer } from '../../../job/index.js';
import { useWidth } from '../../parts/width.js';
import { between, contour, type Frame } from './contours.js';

/** The face from above with lines of equal height; every reading stands at its place, high and low ones with a sign. */
export function FacePicture({ answer }: { answer: FaceAnswer }) {
  const [box, width] = useWidth<HTMLDivElement>();
  return (
    <div ref={box} className="face-picture">
      {width > 0 && answer.face && <Drawing answer={answer} width={Math.min(width, 520)} />}
    </div>
  );
}

const margin = 46;
const levels = 4;

function Drawing({ answer, width }: { answer: FaceAnswer; width: number }) {
  const { points, unit } = answer;
  const { above, minimumZone } = answer.face!;
  const raised = points.map((p, i) => ({ x: p.x, y: p.y, z: above[i]! }));
  const frame = frameOf(raised);
  const scale = (width - 2 * margin) / (frame.right - frame.left || 1);
  const tall = Math.min(420, scale * (frame.high - frame.low));
  const perY = tall / (frame.high - frame.low || 1);
  const at = (x: number, y: number) =>
    [margin + (x - frame.left) * scale, margin + (frame.high - y) * perY] as const;
  const most = Math.max(...above);
  const lines = Array.from({ length: levels }, (_, i) => (most * (i + 0.5)) / levels);
  const sideOf = (i: number) => minimumZone.contacts.find((c) => c.index === i && c.weight > 1e-9)?.side;
  return (
    <svg
      width={width}
      height={tall + 2 * margin + 22}
      role="img"
      aria-label={`The face from above. ${raised.map((p, i) => `${Math.round(p.x)}, ${Math.round(p.y)} mm: ${said(p.z)} ${unit} above the lowest plane${sideOf(i) === 1 ? ', high' : sideOf(i) === -1 ? ', low' : ''}`).join('. ')}`}
    >
      <rect
        className="face-edge"
        x={margin - 34}
        y={margin - 30}
        width={width - 2 * margin + 68}
        height={tall + 60}
        rx={16}
      />
      {most > 0 &&
        lines.map((level, i) => (
          <path
            key={level}
            className="contour"
            style={{ strokeWidth: 0.8 + 0.5 * i }}
            d={contour((x, y) => between(raised, x, y), level, frame)
              .map(([x1, y1, x2, y2]) => `M${at(x1, y1).join(' ')}L${at(x2, y2).join(' ')}`)
              .join('')}
          />
        ))}
      {raised.map((p, i) => {
        const [x, y] = at(p.x, p.y);
        const side = sideOf(i);
        return (
          <g key={`${p.x} ${p.y}`} className={side === 1 ? 'high' : side === -1 ? 'low' : ''}>
            <rect className="spot" x={x - 28} y={y - 12} width={56} height={24} rx={6} />
            <text x={x} y={y + 5} textAnchor="middle">
              {side === 1 ? '▲' : side === -1 ? '▽' : ''}
              {said(p.z)}
            </text>
          </g>
        );
      })}
      <text className="scale" x={width / 2} y={tall + 2 * margin + 16} textAnchor="middle">
        {unit} above the lowest plane; ▲ high ▽ low
      </text>
    </svg>
  );
}

function frameOf(points: readonly { readonly x: number; readonly y: number }[]): Frame {
  const xs = points.map((p) => p.x);
  const ys = points.map((p) => p.y);
  return { left: Math.min(...xs), right: Math.max(...xs), low: Math.min(...ys), high: Math.max(...ys) };
}

const said = (x: number) => (Math.abs(x) < 1e-7 ? '0' : String(Number(x.toFixed(4))));
