import type { Picture, PictureBand } from '../../worksheet/index.js';
import { useWidth } from '../parts/width.js';
import { type Scale, scaleOf } from './axis.js';

/**
 * An answer's picture: curves told apart by their dashes, the operating point marked, bands shaded and named. What it
 * shows stands beneath in words, and as numbers for whoever cannot see it.
 */
export function PictureDrawing({ picture }: { picture: Picture }) {
  const [box, width] = useWidth<HTMLDivElement>();
  return (
    <figure className="answer-picture">
      <figcaption>{picture.title}</figcaption>
      <div ref={box}>{width > 0 && <Drawing picture={picture} width={Math.min(width, 760)} />}</div>
      <Legend picture={picture} />
      <p className="soft">{picture.says}</p>
      <AsNumbers picture={picture} />
    </figure>
  );
}

const dashes = ['', '9 5', '2 4', '12 4 2 4', '5 2'];
const left = 56;
const right = 14;
const top = 30;
const bottom = 46;

function Drawing({ picture, width }: { picture: Picture; width: number }) {
  const height = Math.round(Math.max(230, Math.min(400, width * 0.58)));
  const { curves, marks = [], bands = [] } = picture;
  const xs = curves
    .flatMap((c) => c.points.map(([x]) => x))
    .concat(
      marks.map((m) => m.x),
      ends(bands, 'x'),
    );
  const ys = curves
    .flatMap((c) => c.points.map(([, y]) => y))
    .concat(
      marks.map((m) => m.y),
      ends(bands, 'y'),
    );
  const x = scaleOf(picture.x, xs, [left, width - right], width < 480 ? 4 : 8);
  const y = scaleOf(picture.y, ys, [height - bottom, top], 5);
  return (
    <svg width={width} height={height} role="img" aria-label={`${picture.title}. ${picture.says}`}>
      <defs>
        <pattern id="band" width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line className="band-line" x1="0" y1="0" x2="0" y2="8" />
        </pattern>
      </defs>
      {bands.map((b, i) => (
        <Band key={b.label} band={b} row={i} x={x} y={y} width={width} height={height} />
      ))}
      <Axes picture={picture} x={x} y={y} width={width} height={height} />
      {curves.map((c, i) => (
        <path
          key={c.label}
          className={`curve c${i % dashes.length}`}
          strokeDasharray={dashes[i % dashes.length]}
          d={c.points.map(([px, py], n) => `${n === 0 ? 'M' : 'L'}${x.at(px)} ${y.at(py)}`).join('')}
        />
      ))}
      {marks.map((m) => (
        <g key={m.label} className="mark">
          <line x1={x.at(m.x)} x2={x.at(m.x)} y1={y.at(m.y)} y2={height - bottom} />
          <line x1={left} x2={x.at(m.x)} y1={y.at(m.y)} y2={y.at(m.y)} />
          <circle cx={x.at(m.x)} cy={y.at(m.y)} r={6} />
          <MarkWords words={m.label} at={x.at(m.x)} height={y.at(m.y)} width={width} />
        </g>
      ))}
    </svg>
  );
}

/** The grid with its figures, and what either axis says. */
function Axes(props: { picture: Picture; x: Scale; y: Scale; width: number; height: number }) {
  const { picture, x, y, width, height } = props;
  return (
    <>
      {y.ticks.map((t) => (
        <g key={t.value}>
          <line className="grid" x1={left} x2={width - right} y1={y.at(t.value)} y2={y.at(t.value)} />
          <text className="tick" x={left - 7} y={y.at(t.value) + 5} textAnchor="end">
            {t.text}
          </text>
        </g>
      ))}
      {x.ticks.map((t) => (
        <g key={t.value}>
          <line className="grid" x1={x.at(t.value)} x2={x.at(t.value)} y1={top} y2={height - bottom} />
          <text
            className="tick"
            x={x.at(t.value)}
            y={height - bottom + 19}
            textAnchor={x.at(t.value) > width - right - 16 ? 'end' : 'middle'}
          >
            {t.text}
          </text>
        </g>
      ))}
      <text className="axis-name" x={width - right} y={height - 6} textAnchor="end">
        {named(picture.x)} →
      </text>
      <text className="axis-name" x={2} y={14}>
        ↑ {named(picture.y)}
      </text>
    </>
  );
}

const ends = (bands: readonly PictureBand[], axis: 'x' | 'y') =>
  bands.filter((b) => b.axis === axis).flatMap((b) => [b.from, b.to].filter((v) => v !== undefined));

const named = ({ label, unit }: Picture['x']) => (unit && unit !== '1' ? `${label}, ${unit}` : label);

function MarkWords(props: { words: string; at: number; height: number; width: number }) {
  const leftward = props.at > props.width * 0.55;
  const above = props.height > top + 30;
  return (
    <text
      x={leftward ? props.at - 10 : props.at + 10}
      y={above ? props.height - 10 : props.height + 22}
      textAnchor={leftward ? 'end' : 'start'}
    >
      {props.words}
    </text>
  );
}

function Band(props: { band: PictureBand; row: number; x: Scale; y: Scale; width: number; height: number }) {
  const { band, row, x, y, width, height } = props;
  const clamp = (v: number, a: number, b: number) => Math.max(Math.min(a, b), Math.min(Math.max(a, b), v));
  if (band.axis === 'x') {
    const from = clamp(band.from === undefined ? left : x.at(band.from), left, width - right);
    const to = clamp(band.to === undefined ? width - right : x.at(band.to), left, width - right);
    return (
      <g className="band">
        <rect x={Math.min(from, to)} y={top} width={Math.abs(to - from)} height={height - bottom - top} />
        <text x={(from + to) / 2} y={top + 16 + 18 * (row % 3)} textAnchor={anchorAt((from + to) / 2, width)}>
          {band.label}
        </text>
      </g>
    );
  }
  const from = clamp(band.from === undefined ? height - bottom : y.at(band.from), top, height - bottom);
  const to = clamp(band.to === undefined ? top : y.at(band.to), top, height - bottom);
  return (
    <g className="band">
      <rect x={left} y={Math.min(from, to)} width={width - right - left} height={Math.abs(to - from)} />
      <text x={width - right - 6} y={Math.min(from, to) + 16} textAnchor="end">
        {band.label}
      </text>
    </g>
  );
}

function anchorAt(x: number, width: number): 'start' | 'middle' | 'end' {
  if (x < left + 70) return 'start';
  return x > width - right - 70 ? 'end' : 'middle';
}

/** Which line is which; left out where there is only one. */
function Legend({ picture: { curves } }: { picture: Picture }) {
  if (curves.length < 2) return null;
  return (
    <ul className="plain legend">
      {curves.map((c, i) => (
        <li key={c.label}>
          <svg width="40" height="12" aria-hidden="true">
            <path
              className={`curve c${i % dashes.length}`}
              strokeDasharray={dashes[i % dashes.length]}
              d="M2 6L38 6"
            />
          </svg>{' '}
          {c.label}
        </li>
      ))}
    </ul>
  );
}

const rows = 9;

function AsNumbers({ picture }: { picture: Picture }) {
  const said = (v: number) => String(Number(v.toPrecision(4)));
  const { marks = [], bands = [] } = picture;
  return (
    <details>
      <summary>The picture as numbers</summary>
      {marks.map((m) => (
        <p key={m.label}>
          {m.label}: {named(picture.x)} {said(m.x)}, {named(picture.y)} {said(m.y)}
        </p>
      ))}
      {bands.map((b) => (
        <p key={b.label}>
          {b.label}: {named(picture[b.axis])} {b.from === undefined ? 'up' : `from ${said(b.from)}`}
          {b.to !== undefined && ` to ${said(b.to)}`}
        </p>
      ))}
      {picture.curves.map((c) => (
        <div key={c.label} className="scroll-x">
          <table>
            <caption>{c.label}</caption>
            <thead>
              <tr>
                <th scope="col">{named(picture.x)}</th>
                <th scope="col">{named(picture.y)}</th>
              </tr>
            </thead>
            <tbody>
              {thinned(c.points).map(([px, py]) => (
                <tr key={px}>
                  <td>{said(px)}</td>
                  <td>{said(py)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      ))}
    </details>
  );
}

function thinned<T>(points: readonly T[]): readonly T[] {
  if (points.length <= rows) return points;
  return Array.from({ length: rows }, (_, i) => points[Math.round((i * (points.length - 1)) / (rows - 1))]!);
}
