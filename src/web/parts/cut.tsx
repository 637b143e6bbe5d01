import type { Body } from '../../job/index.js';
import { pictureUrl } from '../data/api.js';

/** A piece cut out of a picture, as it stands there. `address` where the picture is not in the store yet. */
export function Cut(props: {
  cut: NonNullable<Body<'spec'>['cut']>;
  of: { readonly width: number; readonly height: number };
  alt: string;
  address?: string | undefined;
}) {
  const { cut, of, alt, address } = props;
  const rim = 0.25 * cut.height;
  const box = [cut.x - rim, cut.y - rim, cut.width + 2 * rim, cut.height + 2 * rim];
  return (
    <svg
      className="cut-out"
      preserveAspectRatio="xMinYMid meet"
      viewBox={box.join(' ')}
      role="img"
      aria-label={alt}
    >
      <image href={address ?? pictureUrl(cut.picture)} width={of.width} height={of.height} />
    </svg>
  );
}
