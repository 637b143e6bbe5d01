/** A long title up to its first explanation: "Leak-down, shaft held at firing top" → "Leak-down". */
export function briefTitle(title: string, at: RegExp = /[:(,]/): string {
  const cut = title.search(at);
  return title.length > 34 && cut > 0 ? title.slice(0, cut).trimEnd() : title;
}

/** "head-bolts" → "head bolts": for handles that have no better name */
export function handleWords(handle: string): string {
  return handle.replaceAll(/[-.]/g, ' ');
}
