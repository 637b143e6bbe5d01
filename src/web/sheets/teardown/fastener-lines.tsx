import type { Fastener } from '../../../job/index.js';
import { Button } from '../../parts/act.js';
import { TextField } from '../../parts/field.js';

/** One kind of fastener as it is typed in. */
export interface FastenerLine {
  readonly count: string;
  readonly size: string;
  readonly length: string;
  readonly what: string;
  readonly hole: string;
}

export const emptyLine: FastenerLine = { count: '', size: '', length: '', what: 'bolt', hole: '' };

export function FastenerLines({
  lines,
  onChange,
}: {
  lines: readonly FastenerLine[];
  onChange: (lines: FastenerLine[]) => void;
}) {
  const change = (i: number, part: Partial<FastenerLine>) =>
    onChange(lines.map((l, j) => (j === i ? { ...l, ...part } : l)));
  return (
    <div className="stack tight">
      <h3>Fasteners, one line a size and length</h3>
      {lines.map((l, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a line has no identity but its place
        <div className="fastener" key={i}>
          <TextField
            label="Count"
            value={l.count}
            inputMode="numeric"
            onChange={(count) => change(i, { count })}
          />
          <TextField
            label="Size"
            value={l.size}
            onChange={(size) => change(i, { size })}
            placeholder="5/16-18"
          />
          <TextField
            label="Length"
            value={l.length}
            onChange={(length) => change(i, { length })}
            placeholder="1-1/2 in"
          />
          <TextField label="What" value={l.what} onChange={(what) => change(i, { what })} />
          <TextField
            label="Hole"
            value={l.hole}
            onChange={(hole) => change(i, { hole })}
            placeholder="if lengths differ"
          />
        </div>
      ))}
      <div>
        <Button look="quiet" onClick={() => onChange([...lines, emptyLine])}>
          Another kind of fastener
        </Button>
      </div>
    </div>
  );
}

/** Only lines with a whole count are fasteners; an empty count means that nothing of it was found. */
export function fastenersIn(lines: readonly FastenerLine[]): Fastener[] {
  return lines.flatMap((l) => {
    if (l.count.trim() === '') return [];
    const count = Number(l.count);
    if (!Number.isInteger(count) || count < 1)
      throw new Error(`A count is a whole number; “${l.count}” is not.`);
    const optional = (key: 'size' | 'length' | 'hole') => (l[key].trim() ? { [key]: l[key].trim() } : {});
    return [
      {
        what: l.what.trim() || 'fastener',
        count,
        ...optional('size'),
        ...optional('length'),
        ...optional('hole'),
      },
    ];
  });
}
