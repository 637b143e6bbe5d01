import { type KeyboardEvent, useRef, useState, useSyncExternalStore } from 'react';
import { Button } from '../../parts/act.js';
import { wrongLength } from './reading-fields.js';

export interface Cell {
  readonly row: string;
  readonly column: string;
}
export const cellKey = ({ row, column }: Cell) => `${row} · ${column}`;

/** What was typed into each cell, by its key. */
export type Typed = Readonly<Record<string, string>>;

interface Grid {
  readonly rows: readonly string[];
  readonly columns: readonly string[];
  readonly typed: Typed;
  readonly unit: string;
  readonly onChange: (typed: Typed) => void;
  /** more than the parse: a reading that does not belong to the others */
  readonly doubt?: (key: string) => string | undefined;
}

/** Many readings in one go: a table on a bench computer, one at a time in large type on a phone. Enter moves on. */
export function GridEntry(props: Grid) {
  return useNarrow() ? <OneAtATime {...props} /> : <TableEntry {...props} />;
}

const narrow = matchMedia('(max-width: 620px)');

const useNarrow = (): boolean =>
  useSyncExternalStore(
    (tell) => {
      narrow.addEventListener('change', tell);
      return () => narrow.removeEventListener('change', tell);
    },
    () => narrow.matches,
  );

/** After the last cell Enter goes on to the button that keeps them all. */
const toKeep = ({ currentTarget }: KeyboardEvent<HTMLInputElement>) =>
  currentTarget.form?.querySelector<HTMLElement>('.go[type="submit"]')?.focus();

const cellsOf = ({ rows, columns }: Grid): Cell[] =>
  rows.flatMap((row) => columns.map((column) => ({ row, column })));

function wrongIn(grid: Grid, key: string): string | undefined {
  const text = grid.typed[key] ?? '';
  return wrongLength(text, grid.unit) ?? (text.trim() ? grid.doubt?.(key) : undefined);
}

function TableEntry(grid: Grid) {
  const box = useRef<HTMLTableElement>(null);
  const cells = cellsOf(grid);
  const wrongs = cells.flatMap((cell) => {
    const wrong = wrongIn(grid, cellKey(cell));
    return wrong ? [`${cellKey(cell)}: ${wrong}`] : [];
  });
  const enter = (event: KeyboardEvent<HTMLInputElement>, index: number) => {
    if (event.key !== 'Enter') return;
    event.preventDefault();
    const next = box.current?.querySelectorAll('input')[index + 1];
    if (next) next.focus();
    else toKeep(event);
  };
  return (
    <div className="scroll-x">
      <table className="grid-entry" ref={box}>
        <thead>
          <tr>
            <td />
            {grid.columns.map((column) => (
              <th key={column} scope="col">
                {column}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {grid.rows.map((row, r) => (
            <tr key={row}>
              <th scope="row">{row}</th>
              {grid.columns.map((column, c) => {
                const key = cellKey({ row, column });
                return (
                  <td key={key}>
                    <CellInput
                      grid={grid}
                      name={key}
                      onKeyDown={(e) => enter(e, r * grid.columns.length + c)}
                    />
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
      <div aria-live="polite">
        {wrongs.map((words) => (
          <p key={words} className="wrong-line">
            {words}
          </p>
        ))}
      </div>
    </div>
  );
}

function CellInput(props: {
  grid: Grid;
  name: string;
  large?: boolean;
  onKeyDown: (event: KeyboardEvent<HTMLInputElement>) => void;
}) {
  const { grid, name } = props;
  return (
    <input
      className={props.large ? 'large' : undefined}
      aria-label={name}
      aria-invalid={wrongIn(grid, name) !== undefined}
      value={grid.typed[name] ?? ''}
      inputMode="decimal"
      autoComplete="off"
      spellCheck={false}
      onKeyDown={props.onKeyDown}
      onChange={(e) => grid.onChange({ ...grid.typed, [name]: e.target.value })}
    />
  );
}

function OneAtATime(grid: Grid) {
  const cells = cellsOf(grid);
  const [at, setAt] = useState(0);
  const index = Math.min(at, cells.length - 1);
  const cell = cells[index]!;
  const key = cellKey(cell);
  const wrong = wrongIn(grid, key);
  const last = index === cells.length - 1;
  return (
    <div className="one-at-a-time stack tight">
      <p className="soft">
        {index + 1} of {cells.length}, {grid.unit === 'in' ? 'inches' : grid.unit}
      </p>
      <p className="cell-name">
        <b>{cell.row}</b>
        <br />
        {cell.column}
      </p>
      <CellInput
        grid={grid}
        name={key}
        large
        onKeyDown={(e) => {
          if (e.key !== 'Enter') return;
          e.preventDefault();
          if (last) toKeep(e);
          else setAt(index + 1);
        }}
      />
      <div aria-live="polite">{wrong && <p className="wrong-line">{wrong}</p>}</div>
      <div className="row apart">
        <Button disabled={index === 0} onClick={() => setAt(index - 1)}>
          Back
        </Button>
        {!last && (
          <Button look="go" onClick={() => setAt(index + 1)}>
            Next
          </Button>
        )}
      </div>
      <ol className="cells-so-far" aria-label="What is entered">
        {cells.map((c, i) => (
          <li key={cellKey(c)} aria-current={i === index ? 'step' : undefined}>
            <button type="button" onClick={() => setAt(i)} aria-label={`Go to ${cellKey(c)}`}>
              {grid.typed[cellKey(c)]?.trim() || '–'}
            </button>
          </li>
        ))}
      </ol>
    </div>
  );
}
