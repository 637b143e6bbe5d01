/** One line of text with a full stop, whatever the person wrote at the end. */
export function sentence(text: string): string {
  const trimmed = text.trim();
  return /[.!?…”"]$/.test(trimmed) || trimmed === '' ? trimmed : `${trimmed}.`;
}

/** For a place with room for one line; cut between signs, never within one. */
export function cutShort(text: string, most: number): string {
  const signs = [...text];
  if (signs.length <= most) return text;
  return `${signs
    .slice(0, most - 1)
    .join('')
    .trimEnd()}…`;
}
