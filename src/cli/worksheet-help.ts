import { type Field, isPublished, type Worksheet } from '../worksheet/index.js';
import { table } from './help.js';

/** The help of one worksheet: what it wants, what it was checked against, one example to copy. */
export function worksheetHelp(worksheet: Worksheet): string {
  const { id, question, purpose, fields, cautions, sources, examples } = worksheet;
  const lines = [
    question,
    purpose,
    '',
    `Usage: wristpin work ${id} ${fields.map(usageOf).join(' ')} [--json]`,
    '',
    'Fields:',
    ...fields.flatMap(fieldLines),
    ...titled('Cautions:', cautions),
    ...titled('Sources:', sources),
    ...titled(
      'Checked against:',
      examples.map(({ title, source }) => `${title} (${source})`),
    ),
  ];
  const [first] = examples;
  if (first)
    lines.push(
      '',
      `${isPublished(first) ? 'Published' : 'Worked'} example:`,
      `  ${exampleCall(id, first.given)}`,
    );
  return lines.join('\n');
}

/** Written so that it can be pasted into a shell of any of the three systems. */
export function exampleCall(id: string, given: Readonly<Record<string, string>>): string {
  const pairs = Object.entries(given).map(([key, value]) => quoted(`${key}=${value}`));
  return ['wristpin work', id, ...pairs].join(' ');
}

function quoted(pair: string): string {
  if (/^[\w=./:,+-]+$/.test(pair)) return pair;
  return pair.includes('"') ? `'${pair.replaceAll("'", "'\\''")}'` : `"${pair}"`;
}

function usageOf(field: Field): string {
  const pair = `${field.id}=…`;
  return isWanted(field) ? pair : `[${pair}]`;
}

function isWanted(field: Field): boolean {
  return field.required !== false && field.standard === undefined;
}

function fieldLines(field: Field): string[] {
  const lines = [`  ${field.id}  ${field.label} (${whatToWrite(field)})`, `      ${field.help}`];
  if (field.choices) lines.push(...table(field.choices.map((c) => [`    ${c.id}`, c.label] as const)));
  return lines;
}

function whatToWrite(field: Field): string {
  const kind = field.kind === 'list' ? `list of ${field.of ?? 'number'}` : field.kind;
  const standard = field.standard === undefined ? undefined : `else ${field.standard}`;
  const optional = field.required === false ? 'optional' : undefined;
  const hint = field.hint === undefined ? undefined : `such as ${field.hint}`;
  return [kind, hint, standard ?? optional].filter((part) => part !== undefined).join(', ');
}

function titled(title: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : ['', title, ...lines.map((line) => `  - ${line}`)];
}
