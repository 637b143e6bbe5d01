import type { Fastener } from '../../entry.js';
import type { From, Job } from '../../job.js';

/** What lies in the bags and what is plugged, counted from the done steps. Nothing may be left over at the end. */
export interface Tally {
  /** by kind of fastener: how many came out, how many went back */
  readonly fasteners: readonly FastenerCount[];
  /** openings plugged and not yet opened again, with the step that plugged them */
  readonly stillPlugged: readonly { readonly port: string; readonly step: string; readonly title: string }[];
  /** done teardown steps that nothing has put back */
  readonly notPutBack: readonly From<'step'>[];
  /** of what is back on: fasteners that did not go in with it */
  readonly leftOver: readonly Uneven[];
  /** of what is back on: fasteners that went in and never came out */
  readonly tooMany: readonly Uneven[];
  /** plugs in openings whose piece is back on: nobody will see them again */
  readonly plugsForgotten: Tally['stillPlugged'];
}

/** Fasteners of one kind that do not balance, and the pieces that they belong to. */
export interface Uneven {
  readonly label: string;
  readonly count: number;
  readonly from: readonly string[];
}

export interface FastenerCount {
  readonly label: string;
  readonly out: number;
  readonly in: number;
}

/** "5/16-18 × 1-1/2 in bolt, hole 3" */
export function fastenerLabel(f: Omit<Fastener, 'count'>): string {
  const size = [f.size, f.length].filter(Boolean).join(' × ');
  return [size ? `${size} ${f.what}` : f.what, f.hole].filter(Boolean).join(', ');
}

export function doneSteps(job: Job, stage: 'teardown' | 'assembly'): From<'step'>[] {
  return [...job.steps.values()].filter((s) => s.stage === stage && s.state === 'done');
}

export function tally(job: Job): Tally {
  const out = doneSteps(job, 'teardown');
  const back = doneSteps(job, 'assembly');
  const returned = new Map(back.map((s) => [s.putsBack, s]));
  const plugged = stillPlugged([...out, ...back]);
  const uneven = unevenOf(
    out.filter((s) => returned.has(s.step)),
    returned,
  );
  return {
    fasteners: countFasteners(out, back),
    stillPlugged: plugged,
    notPutBack: out.filter((s) => !returned.has(s.step)),
    leftOver: uneven.filter((u) => u.count > 0),
    tooMany: uneven.filter((u) => u.count < 0).map((u) => ({ ...u, count: -u.count })),
    plugsForgotten: plugged.filter((p) => returned.has(p.step)),
  };
}

/** What came out less what went in, by kind of fastener, over the pieces that are back on. */
function unevenOf(
  out: readonly From<'step'>[],
  returned: ReadonlyMap<string | undefined, From<'step'>>,
): Uneven[] {
  const sums = new Map<string, { count: number; from: Set<string> }>();
  for (const off of out) {
    for (const [label, count] of differences(off, returned.get(off.step)!)) {
      const sum = sums.get(label) ?? { count: 0, from: new Set() };
      sums.set(label, { count: sum.count + count, from: sum.from.add(off.title) });
    }
  }
  return [...sums]
    .filter(([, { count }]) => count !== 0)
    .map(([label, { count, from }]) => ({ label, count, from: [...from] }));
}

function differences(off: From<'step'>, back: From<'step'>): [string, number][] {
  return countFasteners([off], [back]).flatMap(({ label, out, in: into }): [string, number][] =>
    out === into ? [] : [[label, out - into]],
  );
}

function countFasteners(out: readonly From<'step'>[], back: readonly From<'step'>[]): FastenerCount[] {
  const counts = new Map<string, { out: number; in: number }>();
  const add = (steps: readonly From<'step'>[], side: 'out' | 'in') => {
    for (const f of steps.flatMap((s) => s.fasteners ?? [])) {
      const label = fastenerLabel(f);
      const count = counts.get(label) ?? { out: 0, in: 0 };
      count[side] += f.count;
      counts.set(label, count);
    }
  };
  add(out, 'out');
  add(back, 'in');
  return [...counts].map(([label, c]) => ({ label, ...c }));
}

function stillPlugged(steps: readonly From<'step'>[]): Tally['stillPlugged'] {
  const plugged = new Map<string, { port: string; step: string; title: string }>();
  for (const s of [...steps].sort((a, b) => Date.parse(a.at) - Date.parse(b.at))) {
    for (const port of s.unplugged ?? []) plugged.delete(port);
    for (const port of s.plugged ?? []) plugged.set(port, { port, step: s.step, title: s.title });
  }
  return [...plugged.values()];
}
