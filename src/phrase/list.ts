/** "a", "a and b", "a, b and c"; "" for none */
export function listed(items: readonly string[], last: 'and' | 'or' = 'and'): string {
  return items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} ${last} ${items.at(-1)}`;
}

/** Joins the parts that say something. */
export function joined(parts: readonly (string | undefined | false)[], by = ' · '): string {
  return parts.filter((part) => part && part.trim() !== '').join(by);
}
