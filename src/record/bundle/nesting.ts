/** How deep the brackets of a JSON text go, up to `most + 1`: told before it is parsed, in one pass over its signs. */
export function nestingOf(json: string, most: number): number {
  let depth = 0;
  let deepest = 0;
  let inText = false;
  for (let i = 0; i < json.length && deepest <= most; i++) {
    const sign = json[i];
    if (inText) {
      if (sign === '\\') i++;
      else if (sign === '"') inText = false;
    } else if (sign === '"') inText = true;
    else if (sign === '[' || sign === '{') deepest = Math.max(deepest, ++depth);
    else if (sign === ']' || sign === '}') depth--;
  }
  return deepest;
}
