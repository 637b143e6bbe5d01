import type { ReactNode } from 'react';
import type { Drawing, Shape } from '../../draw/index.js';

/** A drawing on the screen; each shape's look is its class. What can be tapped lies on top. */
export function Drawn(props: {
  drawing: Drawing;
  /** takes the size of its place, in proportion */
  scaled?: boolean;
  /** it shows nothing that the words beside it do not say */
  hidden?: boolean;
  /** its children can be tapped */
  tapped?: boolean;
  className?: string | undefined;
  children?: ReactNode;
}) {
  const { width, height, shapes, says } = props.drawing;
  return (
    <svg
      {...(!props.scaled && { width, height })}
      role={props.tapped ? 'group' : 'img'}
      aria-label={says}
      aria-hidden={props.hidden}
      viewBox={`0 0 ${width} ${height}`}
      className={props.className}
    >
      {shapes.map((shape, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a shape has no name but its place in the drawing
        <Element key={i} shape={shape} />
      ))}
      {props.children}
    </svg>
  );
}

function Element({ shape }: { shape: Shape }) {
  const className = shape.look;
  switch (shape.is) {
    case 'path':
      return <path className={className} d={shape.d} />;
    case 'circle':
      return <circle className={className} cx={shape.x} cy={shape.y} r={shape.r} />;
    case 'rect': {
      const { x, y, width, height, round } = shape;
      return <rect className={className} {...{ x, y, width, height }} rx={round} />;
    }
    case 'text':
      return (
        <text
          className={className}
          x={shape.x}
          y={shape.y}
          dy="0.36em"
          textAnchor={shape.anchor ?? 'middle'}
          fontSize={shape.size}
        >
          {shape.words}
        </text>
      );
  }
}
