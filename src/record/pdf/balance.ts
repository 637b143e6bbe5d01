import type { Block, Section } from '../service-record/index.js';

/**
 * Divides sections over two columns of about equal height, each in their order: every section goes where less stands
 * so far. Heights are estimated from the length of the text, in lines; a wrong guess costs white space, nothing else.
 */
export function balanced(
  sections: readonly Section[],
  signsPerLine: number,
): readonly [Section[], Section[]] {
  const columns: [Section[], Section[]] = [[], []];
  const heights: [number, number] = [0, 0];
  for (const section of sections) {
    const shorter = heights[1] < heights[0] ? 1 : 0;
    columns[shorter].push(section);
    heights[shorter] += sectionLines(section, signsPerLine);
  }
  return columns;
}

const headingLines = 2.4;

function sectionLines(section: Section, signsPerLine: number): number {
  return section.blocks.reduce(
    (sum, block) => sum + lines[block.type](block as never, signsPerLine),
    headingLines,
  );
}

type Estimate<T extends Block['type']> = (block: Extract<Block, { type: T }>, signsPerLine: number) => number;

const wrapped = (signs: number, perLine: number) => Math.max(1, Math.ceil(signs / perLine));
/** Small type takes less room. */
const small = 0.86;
const length = (text: string | undefined) => text?.length ?? 0;
const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

const lines: { readonly [T in Block['type']]: Estimate<T> } = {
  words: ({ words }, per) => wrapped(length(words) * small, per) * small,
  quote: ({ words }, per) => wrapped(length(words), per * 0.95) + 1.4,
  facts: ({ facts }, per) =>
    sum(facts.map((fact) => wrapped(length(fact.value) + length(fact.origin) * small, per * 0.68) + 0.2)),
  list: ({ items }, per) =>
    sum(
      items.map(
        (item) => wrapped(length(item.lead) + length(item.words) + length(item.origin) * small, per) + 0.15,
      ),
    ),
  trio: ({ parts }) => Math.max(...parts.map((part) => part.lines.length)) * 1.5,
  table: ({ columns, rows }, per) => {
    const shares = sum(columns.map((column) => column.share));
    return (
      1.2 +
      sum(
        rows.map((row) =>
          Math.max(...row.map((cell, i) => cellLines(cell, (per * columns[i]!.share) / shares))),
        ),
      )
    );
  },
  bore: ({ half }) => (half ? 7 : 10),
  joint: () => 9,
  speeds: () => 8,
  pictures: ({ groups }) => groups.length * 4,
  box: ({ items }, per) =>
    2 + sum(items.map((item) => wrapped(length(item.lead) + length(item.words), per * 0.92))),
  signature: ({ words }, per) => 5 + wrapped(length(words) * small, per),
};

function cellLines(cell: Extract<Block, { type: 'table' }>['rows'][number][number], per: number): number {
  const text = wrapped(length(cell.text) + length(cell.sub) * small, per);
  return text + (cell.care ? 1 : 0) + (cell.verdict ? 1 : 0) + 0.2;
}
