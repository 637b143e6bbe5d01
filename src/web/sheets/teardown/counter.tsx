import { useState } from 'react';
import type { Fastener, StepFastener } from '../../../job/index.js';
import { Button } from '../../parts/act.js';
import { TextField } from '../../parts/field.js';
import { fastenerWords } from './words.js';

/** One kind of fastener being counted. */
export interface Count {
  readonly count: number;
  readonly what: string;
  readonly size: string;
  readonly length: string;
  readonly hole: string;
  /** what is usual, in words */
  readonly usual?: string;
  /** so many there usually are, where it is not certain: each number is one touch */
  readonly between?: readonly [from: number, to: number];
}

/** What is to be counted out: as counted on this engine, else as usual, with the number where it is certain. */
export function countsFor(fasteners: readonly StepFastener[]): Count[] {
  return fasteners
    .filter((f) => !f.stays)
    .map((f) => ({
      count: f.countTo === undefined && !f.note?.startsWith('per ') ? (f.count ?? 0) : 0,
      what: f.what,
      size: f.known === 'this engine' || !f.size?.includes(' or ') ? (f.size ?? '') : '',
      length: f.length ?? '',
      hole: f.hole ?? '',
      ...(f.known === 'usual' && !isCertain(f) && { usual: fastenerWords(f) }),
      ...(f.count !== undefined &&
        f.countTo !== undefined &&
        f.countTo - f.count < mostOffered && { between: [f.count, f.countTo] as const }),
    }));
}

const mostOffered = 8;

/** One number and one size: nothing more is to be said than the line itself says. */
const isCertain = (f: StepFastener) =>
  f.count !== undefined && f.countTo === undefined && f.note === undefined && !f.size?.includes(' or ');

export function countedFasteners(counts: readonly Count[]): Fastener[] {
  return counts
    .filter((c) => c.count > 0)
    .map(({ count, what, size, length, hole }) => ({
      what: what.trim() || 'fastener',
      count,
      ...(size.trim() && { size: size.trim() }),
      ...(length.trim() && { length: length.trim() }),
      ...(hole.trim() && { hole: hole.trim() }),
    }));
}

/**
 * Bolts and screws counted from their photograph take the place of those counted or asked for by hand; nuts, clips and the
 * like do not lie on the mat and stay.
 */
export const countedFromMat = (
  counts: readonly Count[],
  seen: readonly Pick<Count, 'count' | 'size' | 'length'>[],
): Count[] => [
  ...counts.filter(({ what }) => !/bolt|screw/i.test(what)),
  ...seen.map((bolts) => ({ ...bolts, what: 'bolt', hole: '' })),
];

const numbers = (from: number, to: number) => Array.from({ length: to - from + 1 }, (_, i) => from + i);

const labelOf = ({ what, size, length, hole }: Count) =>
  [[size, length].filter(Boolean).join(' × '), what, hole && `(${hole})`].filter(Boolean).join(' ');

/** Fasteners counted out with + and −; a line of its own for each size, length or hole. */
export function CountOut({
  counts,
  onChange,
}: {
  counts: readonly Count[];
  onChange: (counts: Count[]) => void;
}) {
  const [editing, setEditing] = useState<number>();
  const change = (i: number, part: Partial<Count>) =>
    onChange(counts.map((c, j) => (j === i ? { ...c, ...part } : c)));
  return (
    <>
      {counts.map((c, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a line has no identity but its place
        <div className="act-row" key={i}>
          <div>
            <b>{labelOf(c)}</b>
            {c.usual && <div className="soft">usual: {c.usual}</div>}
            {editing === i ? (
              <Details count={c} onChange={(part) => change(i, part)} />
            ) : (
              <Button look="quiet" onClick={() => setEditing(i)}>
                Size, length, hole
              </Button>
            )}
          </div>
          {c.between && c.count === 0 && (
            <fieldset className="choices">
              <legend className="hidden">How many: {labelOf(c)}</legend>
              {numbers(...c.between).map((count) => (
                <Button key={count} onClick={() => change(i, { count })}>
                  {count}
                </Button>
              ))}
            </fieldset>
          )}
          <Stepper name={labelOf(c)} value={c.count} onChange={(count) => change(i, { count })} />
        </div>
      ))}
      <Button
        look="quiet"
        onClick={() => {
          onChange([...counts, { count: 1, what: 'bolt', size: '', length: '', hole: '' }]);
          setEditing(counts.length);
        }}
      >
        + Another size or length
      </Button>
    </>
  );
}

function Details({ count, onChange }: { count: Count; onChange: (part: Partial<Count>) => void }) {
  return (
    <div className="fields">
      <TextField label="What" value={count.what} onChange={(what) => onChange({ what })} />
      <TextField
        label="Size"
        value={count.size}
        onChange={(size) => onChange({ size })}
        placeholder="5/16-18"
      />
      <TextField
        label="Length"
        value={count.length}
        onChange={(length) => onChange({ length })}
        placeholder="1-1/2 in"
      />
      <TextField
        label="Hole"
        value={count.hole}
        onChange={(hole) => onChange({ hole })}
        placeholder="if lengths differ"
      />
    </div>
  );
}

/** − number +, each as large as a thumb in a glove. */
export function Stepper(props: {
  name: string;
  value: number;
  of?: number;
  onChange: (value: number) => void;
}) {
  const { name, value, of, onChange } = props;
  return (
    <fieldset className="stepper" data-quick>
      <legend className="hidden">{name}</legend>
      <Button aria-label={`One ${name} less`} disabled={value === 0} onClick={() => onChange(value - 1)}>
        −
      </Button>
      <output aria-live="polite">
        {value}
        {of !== undefined && <small> of {of}</small>}
      </output>
      <Button aria-label={`One ${name} more`} onClick={() => onChange(value + 1)}>
        +
      </Button>
    </fieldset>
  );
}
