import { type SpeedSpan, speedDrawing, speedSpan } from '../../../../draw/index.js';
import type { From } from '../../../../job/index.js';
import { Drawn } from '../../../parts/drawn.js';
import { useWidth } from '../../../parts/width.js';

type Recording = From<'recording'>;
type Heard = Pick<Recording, 'seconds' | 'track' | 'segments' | 'marks' | 'mean'>;

export type { SpeedSpan };

/** One span for pictures that are laid against each other. */
export const spanOf = (recordings: readonly Heard[], mostRpm: number | undefined): SpeedSpan | undefined =>
  speedSpan(
    recordings.map(({ track }) => track),
    mostRpm,
  );

/** Speed over time: the curve with what it may be off by, steady stretches underlined, marks and the most allowed. */
export function SpeedPicture(props: {
  heard: Heard;
  span: SpeedSpan;
  mostRpm?: number | undefined;
  title: string;
}) {
  const { heard, span, mostRpm, title } = props;
  const [box, width] = useWidth<HTMLDivElement>();
  return (
    <div ref={box} className="speed-picture">
      {width > 0 && (
        <Drawn drawing={speedDrawing({ ...heard, mostRpm }, span, width, inWords(title, heard))} />
      )}
    </div>
  );
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
