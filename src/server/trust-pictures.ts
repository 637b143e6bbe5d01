/** Line drawings for pages that stand by themselves; the words beside them say the same. */
const drawing = (inside: string) =>
  `<svg viewBox="0 0 320 140" aria-hidden="true" fill="none" stroke="currentColor" stroke-width="3" stroke-linejoin="round" stroke-linecap="round">${inside}</svg>`;
const phone = (x: number, inside = '') =>
  `<g transform="translate(${x} 10)"><rect width="66" height="120" rx="10"/><path d="M26 111h14"/>${inside}</g>`;
const bench =
  '<g transform="translate(20 25)"><rect width="110" height="70" rx="5"/><path d="M40 95h30M55 70v25"/></g>';
const seal = (x: number, y: number) =>
  `<g transform="translate(${x} ${y})"><path d="M0 0h30v38l-15-8-15 8z"/><path d="M8 12h14M8 19h9"/></g>`;
export const fetchPicture = drawing(
  `${bench}${seal(60, 40)}<path d="M145 62h55m-12-10 12 10-12 10"/>${phone(220, seal(18, 36))}`,
);
export const comparePicture = drawing(
  `${bench}<path d="M40 55h70M40 72h70"/><path d="M160 56h28M160 70h28"/>${phone(220, '<path d="M12 45h42M12 58h42"/>')}`,
);
export const settingsPicture = drawing(
  `${phone(127, '<path d="M12 28h42M12 48h42"/><rect x="12" y="66" width="42" height="20" rx="10"/><circle cx="44" cy="76" r="7" fill="currentColor"/>')}`,
);
export const openPicture = drawing(
  `${phone(70, '<rect x="18" y="44" width="30" height="24" rx="4"/><path d="M24 44v-7a9 9 0 0 1 18 0v7"/>')}<path d="M160 70h26m-9-8 9 8-9 8"/>${phone(210, '<path d="m20 60 10 11 18-24"/>')}`,
);

const sign = (inside: string, words: string) =>
  `<li><svg viewBox="0 0 32 32" aria-hidden="true" fill="none" stroke="currentColor" stroke-width="2" stroke-linejoin="round" stroke-linecap="round">${inside}</svg>${words}</li>`;

/** What a phone can do once it trusts the bench, and cannot before. */
export const whatItOpens = `<ul class="opens">${[
  sign(
    '<path d="M4 12a17 17 0 0 1 24 0M9 17a10 10 0 0 1 14 0M16 23v.1M5 27 27 5"/>',
    'opens without a network',
  ),
  sign(
    '<circle cx="16" cy="16" r="5"/><path d="M16 4v3M16 25v3M4 16h3M25 16h3M8 8l2 2M22 22l2 2M8 24l2-2M22 10l2-2"/>',
    'the screen stays awake',
  ),
  sign('<path d="M8 22V14a8 8 0 0 1 16 0v8l2 2H6zM14 27h4"/>', 'timers ring'),
  sign(
    '<rect x="12" y="4" width="8" height="15" rx="4"/><path d="M7 15a9 9 0 0 0 18 0M16 24v4"/>',
    'it listens to the engine',
  ),
].join('')}</ul>`;
