/** "a", "a and b", "a, b and c"; "" for none */
export function listed(items: readonly string[], last: 'and' | 'or' = 'and'): string {
  return items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} ${last} ${items.at(-1)}`;
}

/** Joins the parts that say something. */
export function joined(parts: readonly (string | undefined | false)[], by = ' · '): string {
  return parts.filter((part) => part && part.trim() !== '').join(by);
}

/**
 * Lines of one list that begin alike ("to do: a", "to do: b") said once: "to do: a, b and c". A line without a head stays as
 * it is; the order is that of the first of each head.
 */
export function saidOnce(lines: readonly string[]): string[] {
  const heads = new Map<string, string[]>();
  for (const line of lines) {
    const [head = '', ...rest] = line.split(': ');
    const tail = rest.join(': ');
    heads.set(head, [...(heads.get(head) ?? []), ...(tail === '' ? [] : [tail])]);
  }
  return [...heads].map(([head, tails]) =>
    tails.length === 0
      ? head
      : `${head}: ${tails.some((t) => t.includes(',')) ? tails.join('; ') : listed(tails)}`,
  );
}
