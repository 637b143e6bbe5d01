/** As wide as the lines of the repository. */
const widest = 110;

/** JSON as the repository's formatter lays it out, so that the written file passes its check. */
export function printed(value) {
  return `${print(value, '', 0)}\n`;
}

/** `taken` is what stands on the line already, before the value, and a comma after it. */
function print(value, indent, taken) {
  if (value === null || typeof value !== 'object') return JSON.stringify(value);
  const flat = onOneLine(value);
  if (flat !== undefined && indent.length + taken + flat.length <= widest) return flat;
  const inner = `${indent}  `;
  if (Array.isArray(value)) {
    return `[\n${value.map((item) => inner + print(item, inner, 1)).join(',\n')}\n${indent}]`;
  }
  const lines = Object.entries(value).map(([key, item]) => {
    const name = `${JSON.stringify(key)}: `;
    return inner + name + print(item, inner, name.length + 1);
  });
  return `{\n${lines.join(',\n')}\n${indent}}`;
}

/** An entry of the log always takes several lines: it is what a reader looks for. */
function onOneLine(value) {
  if (Array.isArray(value)) {
    if (value.length > 1 && value.every((item) => typeof item === 'object')) return undefined;
    const items = value.map(onOneLineOrPlain);
    return items.includes(undefined) ? undefined : `[${items.join(', ')}]`;
  }
  if ('body' in value || 'entries' in value) return undefined;
  const pairs = Object.entries(value).map(([key, item]) => [key, onOneLineOrPlain(item)]);
  if (pairs.some(([, item]) => item === undefined)) return undefined;
  return pairs.length === 0
    ? '{}'
    : `{ ${pairs.map(([key, item]) => `${JSON.stringify(key)}: ${item}`).join(', ')} }`;
}

const onOneLineOrPlain = (item) =>
  item === null || typeof item !== 'object' ? JSON.stringify(item) : onOneLine(item);
