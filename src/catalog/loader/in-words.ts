const typeWords: Readonly<Record<string, string>> = {
  string: 'text',
  array: 'a list',
  object: 'a map',
  number: 'a number',
};

/** The schema's own words for what is left out or of another kind, as a person says it. */
export function inWords(message: string): string {
  const said = /^Invalid input: expected (\w+), received (\w+)$/.exec(message);
  if (!said) return message;
  const [, wanted = '', got = ''] = said;
  const named = (type: string): string => typeWords[type] ?? type;
  return got === 'undefined'
    ? `is missing: ${named(wanted)} is wanted`
    : `${named(wanted)} is wanted, not ${named(got)}`;
}
