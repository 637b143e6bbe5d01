import { at, box, bright, color, faded, group, n, round, scatter, shape, stroke, times } from './ink.mjs';

/** A hexagon bolt head seen from above, on its washer. */
export function bolt(x, y, r, { turn = 12, washer = 1.5, tone = 'url(#steel-v)' } = {}) {
  const corner = (i) => [r * Math.cos((i * Math.PI) / 3), r * Math.sin((i * Math.PI) / 3)];
  const hex = `M${times(6, (i) => corner(i).map(n).join(' ')).join('L')}Z`;
  return group(
    round(x + r * 0.18, y + r * 0.26, r * washer, { fill: '#1a1409', width: 0, more: 'opacity="0.35"' }),
    round(x, y, r * washer, { fill: 'url(#metal-ball)', width: Math.max(1.4, r / 10) }),
    at(
      x,
      y,
      group(
        shape(hex, { fill: tone, width: Math.max(1.6, r / 8) }),
        round(0, 0, r * 0.62, { fill: 'none', width: 1.2, more: 'opacity="0.5"' }),
      ),
      { turn },
    ),
  );
}

/** A cross-slot screw. */
export function screw(x, y, r, turn = 25) {
  return group(
    round(x, y, r, { width: Math.max(1.4, r / 7) }),
    at(x, y, stroke(`M${n(-r * 0.55)} 0H${n(r * 0.55)}M0 ${n(-r * 0.55)}V${n(r * 0.55)}`, color.ink, r / 4), {
      turn,
    }),
  );
}

/** Cooling fins, seen edge on: light tops, dark gaps. */
export function fins(x, y, w, h, count, { upright = false } = {}) {
  const step = (upright ? w : h) / count;
  return group(
    box(x, y, w, h, { r: 4, fill: '#3b3a38' }),
    times(count, (i) =>
      upright
        ? box(x + i * step + step * 0.12, y - 4, step * 0.5, h + 8, {
            r: 2,
            fill: 'url(#metal-h)',
            width: 1.6,
          })
        : box(x - 4, y + i * step + step * 0.12, w + 8, step * 0.5, {
            r: 2,
            fill: 'url(#metal-v)',
            width: 1.6,
          }),
    ),
  );
}

/** A fallen leaf with its rib. */
export function leaf(x, y, long, turn, tone) {
  const l = long;
  const d = `M0 0C${n(l * 0.25)} ${n(-l * 0.34)} ${n(l * 0.72)} ${n(-l * 0.3)} ${n(l)} 0C${n(l * 0.7)} ${n(l * 0.26)} ${n(l * 0.28)} ${n(l * 0.32)} 0 0Z`;
  const rib = `M${n(-l * 0.22)} ${n(l * 0.03)}L${n(l * 0.94)} 0M${n(l * 0.3)} 0l${n(l * 0.14)} ${n(-l * 0.13)}M${n(l * 0.3)} 0l${n(l * 0.15)} ${n(l * 0.12)}M${n(l * 0.56)} 0l${n(l * 0.12)} ${n(-l * 0.1)}M${n(l * 0.56)} 0l${n(l * 0.12)} ${n(l * 0.1)}`;
  return at(x, y, group(shape(d, { fill: tone, width: 1.6 }), stroke(rib, '#4b3418', 1.3, 0.8)), { turn });
}

const leafTones = ['#b98a3e', '#96662f', '#a87a45', '#7c5a33', '#c7a25a'];

export function leaves(seed, places) {
  const { between } = scatter(seed);
  return places.map(([x, y, long = 44], i) =>
    leaf(x, y, long * between(0.85, 1.15), between(0, 360), leafTones[i % leafTones.length]),
  );
}

/** Bits of straw and twig in a field. */
export function chaff(seed, x, y, w, h, count) {
  const { between } = scatter(seed);
  return times(count, (i) => {
    const long = between(10, 34);
    const turn = between(0, Math.PI);
    const [px, py] = [between(x, x + w), between(y, y + h)];
    return stroke(
      `M${n(px)} ${n(py)}l${n(long * Math.cos(turn))} ${n(long * Math.sin(turn))}`,
      ['#c8a55b', '#8d6b3a', '#a88a52', '#5f4a2b'][i % 4],
      between(1.6, 3.4),
      0.95,
    );
  });
}

/** Specks: dust, pits, soot. */
export function specks(seed, x, y, w, h, count, tones, [small, large] = [1, 3], opacity = 0.6) {
  const { between } = scatter(seed);
  return times(
    count,
    (i) =>
      `<circle cx="${n(between(x, x + w))}" cy="${n(between(y, y + h))}" r="${n(between(small, large))}" fill="${tones[i % tones.length]}" opacity="${n(between(opacity * 0.5, opacity))}"/>`,
  );
}

/** Blotches with soft edges: rust, oil, mud. Each is a few lobes, so that none is a plain ellipse. */
export function blotches(seed, x, y, w, h, count, tone, [small, large] = [12, 46], opacity = 0.35) {
  const { between } = scatter(seed);
  const lobe = (px, py, r, o) =>
    `<ellipse cx="${n(px)}" cy="${n(py)}" rx="${n(r)}" ry="${n(r * between(0.45, 0.75))}" fill="${tone}" opacity="${n(o)}"/>`;
  const blotch = () => {
    const [px, py, r, o] = [
      between(x, x + w),
      between(y, y + h),
      between(small, large) * 0.72,
      between(opacity * 0.35, opacity * 0.8),
    ];
    return times(3, () =>
      lobe(px + between(-r, r) * 0.8, py + between(-r, r) * 0.5, r * between(0.6, 1.1), o),
    );
  };
  return `<g filter="url(#blur-${large > 60 ? 16 : large > 34 ? 8 : 4})">${times(count, blotch).flat().join('')}</g>`;
}

/** What has run down a face: stains that narrow. */
export function runs(seed, x, y, w, count, long, tone) {
  const { between } = scatter(seed);
  return `<g filter="url(#blur-2)">${times(count, () => {
    const px = between(x, x + w);
    const l = between(long * 0.4, long);
    const half = between(3, 8);
    const top = y + between(0, long * 0.15);
    return `<path d="M${n(px - half)} ${n(top)}h${n(half * 2)}L${n(px + half * 0.3)} ${n(top + l)}h${n(-half * 0.6)}Z" fill="${tone}" opacity="${n(between(0.25, 0.6))}"/>`;
  }).join('')}</g>`;
}

/** A web in a corner: spokes from x, y into the angle between the two turns, and slack threads across. */
export function web(x, y, reach, from, to) {
  const spoke = (i, r) => {
    const turn = ((from + ((to - from) * i) / 5) * Math.PI) / 180;
    return [x + r * Math.cos(turn), y + r * Math.sin(turn)];
  };
  const spokes = times(
    6,
    (i) =>
      `M${n(x)} ${n(y)}L${spoke(i, reach * (0.82 + 0.18 * ((i * 7) % 3) * 0.5))
        .map(n)
        .join(' ')}`,
  ).join('');
  const threads = times(6, (k) => {
    const r = (reach * (k + 1.4)) / 7.6;
    return times(5, (i) => {
      const [a, b] = [spoke(i, r), spoke(i + 1, r)];
      const slack = [
        (a[0] + b[0]) / 2 + (x - (a[0] + b[0]) / 2) * 0.12,
        (a[1] + b[1]) / 2 + (y - (a[1] + b[1]) / 2) * 0.12,
      ];
      return `M${a.map(n).join(' ')}Q${slack.map(n).join(' ')} ${b.map(n).join(' ')}`;
    }).join('');
  }).join('');
  return faded(0.75, stroke(spokes + threads, '#fbf8ef', 1.3));
}

/** A close-coiled wire spring between two points, with its hooks left to the drawing. */
export function coil(x1, y1, x2, y2, radius, turns, width, tones = bright) {
  const length = Math.hypot(x2 - x1, y2 - y1);
  const angle = (Math.atan2(y2 - y1, x2 - x1) * 180) / Math.PI;
  const step = length / turns;
  const lean = step * 0.55;
  const back = times(turns, (i) =>
    stroke(`M${n(i * step + lean)} ${n(radius)}L${n(i * step + step)} ${n(-radius)}`, tones[0], width * 0.8),
  );
  const front = times(turns, (i) => {
    const d = `M${n(i * step)} ${n(-radius)}C${n(i * step - width * 0.2)} ${n(-radius * 0.2)} ${n(i * step + lean)} ${n(radius * 0.4)} ${n(i * step + lean)} ${n(radius)}`;
    return group(
      stroke(d, color.ink, width + 3),
      stroke(d, tones[1], width),
      stroke(d, tones[2], width * 0.35),
    );
  });
  return at(x1, y1, group(back, front), { turn: angle });
}

/** A wire with a body: link rods, hooks. */
export function wire(d, width, tones = bright) {
  return group(
    stroke(d, color.ink, width + 3.4),
    stroke(d, tones[0], width),
    stroke(d, tones[1], width * 0.6),
    stroke(d, tones[2], width * 0.22),
  );
}

/** The tag that hangs on the machine by a loop of string round a tube at `knot`, seen from the tag's eyelet. */
export function tag(x, y, drawnNumber, { turn = 6, knot = [0, -60] } = {}) {
  const d = 'M-46 16Q-46 0-30 0L30 0Q46 0 46 16V96Q46 110 32 110H-32Q-46 110-46 96Z';
  const [dx, dy] = knot;
  return group(
    stroke(
      `M${n(x + dx)} ${n(y + dy)}Q${n(x + dx * 0.1)} ${n(y + dy * 0.6)} ${n(x)} ${n(y + 14)}`,
      '#6d5c3c',
      3,
    ),
    stroke(`M${n(x + dx - 15)} ${n(y + dy - 4)}q15 9 30 3`, '#6d5c3c', 3.4),
    stroke(`M${n(x + dx - 15)} ${n(y + dy + 1)}q15 9 30 3`, '#8f7b52', 2.6),
    at(
      x,
      y,
      group(
        `<path d="${d}" transform="translate(6 9)" fill="#1a1409" opacity="0.35" filter="url(#blur-4)"/>`,
        shape(d, { fill: 'url(#sheet-v)', width: 2.6 }),
        round(0, 15, 7, { fill: '#b9ae99', width: 2 }),
        drawnNumber,
      ),
      { turn },
    ),
  );
}
