import type { LogLine } from '../../job.js';
import type { Answers } from '../answers.js';

/** What was done last on the way back together, and which lines say so: the back key takes those back. */
export interface LastAct {
  readonly what: 'piece' | 'bolt' | 'note';
  /** "Fuel hose" */
  readonly words: string;
  /** the lines to strike, the last written first */
  readonly entries: readonly string[];
  /** of a bolt: the joint on whose page it is taken back */
  readonly joint?: string;
}

/** None where nothing went back yet. New parts that went in with a piece are taken back with it: they were said in one touch. */
export function lastActOf({ job }: Pick<Answers, 'job'>): LastAct | undefined {
  const standing = job.log.filter(({ struck, known }) => !struck && known && known.kind !== 'strike');
  const place = standing.findLastIndex(isAct);
  const known = standing[place]?.known;
  switch (known?.kind) {
    case 'spoken-note':
      return { what: 'note', words: known.body.about ?? '', entries: [known.id] };
    case 'torque':
      return { what: 'bolt', words: known.body.joint, entries: [known.id], joint: known.body.joint };
    case 'step': {
      const entries = [known.id, ...fittedWith(standing, place)];
      return { what: 'piece', words: known.body.title.replace(/: (back on|all so)$/, ''), entries };
    }
    default:
      return undefined;
  }
}

function isAct({ known }: LogLine): boolean {
  if (known?.kind === 'torque') return true;
  if (known?.kind === 'spoken-note') return known.body.stage === 'assembly';
  return known?.kind === 'step' && known.body.stage === 'assembly' && known.body.state === 'done';
}

/** Lines of one touch stand beside each other and carry one time. */
function fittedWith(lines: readonly LogLine[], place: number): string[] {
  const { at, by } = lines[place]!.entry;
  const fitted: string[] = [];
  for (let i = place - 1; i >= 0; i -= 1) {
    const { entry, known } = lines[i]!;
    if (known?.kind !== 'part' || known.body.state !== 'fitted' || entry.at !== at || entry.by !== by) break;
    fitted.push(entry.id);
  }
  return fitted;
}
