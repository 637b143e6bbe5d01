import { loadSteps } from '../../../listen/index.js';
import { inPercent } from '../../../phrase/index.js';
import type { Body } from '../../entry.js';
import type { From, Job } from '../../job.js';

type Recording = From<'recording'>;

/** The mark under which a load is told from other marks. */
export const loadOn = 'Load on';

/** One thing that a recording tells, before and after the work, in words. */
export interface HeardRow {
  readonly what: string;
  readonly before?: string;
  readonly after?: string;
}

/** What was heard of this machine: the latest recording of each side that tells of each thing. */
export function heardOf(job: Job): HeardRow[] {
  const all = [...job.recordings.values()].toSorted((a, b) => Date.parse(a.at) - Date.parse(b.at));
  const said = (phase: Recording['phase'], tell: Tell) =>
    all
      .filter((r) => r.phase === phase)
      .map(tell)
      .findLast((words) => words !== undefined);
  return tells.flatMap(([what, tell]) => {
    const before = said('before', tell);
    const after = said('after', tell);
    if (before === undefined && after === undefined) return [];
    return [{ what, ...(before !== undefined && { before }), ...(after !== undefined && { after }) }];
  });
}

type Tell = (recording: Recording) => string | undefined;
type ToolTell = (recording: Body<'recording'>) => string | undefined;

/** What a recording tells of what the engine drives. */
const tellsOfTheTool: readonly (readonly [what: string, tell: ToolTell])[] = [
  [
    'From letting go until it stood',
    ({ stop }) => stop && `${stop.seconds.toFixed(2)} ± ${(2 * stop.u).toFixed(2)} s`,
  ],
  ['Beat once a turn while it ran down', beatWords],
  [
    'Belt loses',
    ({ shaft }) =>
      shaft && `${inPercent(shaft.slip, 1)} ± ${inPercent(2 * shaft.u, 1)}, at ${Math.round(shaft.rpm)} rpm`,
  ],
];

const tells: readonly (readonly [what: string, tell: Tell])[] = [
  ['Pulls until it caught, cold', (r) => (r.temperature === 'cold' ? pullWords(r) : undefined)],
  ['Pulls until it caught, hot', (r) => (r.temperature === 'hot' ? pullWords(r) : undefined)],
  ['Pulls until it caught', (r) => (r.temperature === 'unknown' ? pullWords(r) : undefined)],
  [
    'From the first pull to a steady run',
    ({ starts }) =>
      starts?.secondsToSteady === undefined ? undefined : `${starts.secondsToSteady.toFixed(1)} s`,
  ],
  ['Speed', speedWords],
  ['Hunting', huntingWords],
  ['Missed beats, at least', missedWords],
  ['Droop under load', droopWords],
  ...tellsOfTheTool,
];

/** What one recording tells of what the engine drives, in words: its stop, its beat, its belt. */
export function toolHeard(recording: Body<'recording'>): { readonly what: string; readonly words: string }[] {
  return tellsOfTheTool.flatMap(([what, tell]) => {
    const words = tell(recording);
    return words === undefined ? [] : [{ what, words }];
  });
}

function beatWords({ beat }: Body<'recording'>): string | undefined {
  if (!beat) return undefined;
  return beat.beats
    ? `${beat.share.toFixed(1)} ± ${(2 * beat.u).toFixed(1)} times that of its two ends`
    : 'none heard';
}

function pullWords({ starts }: Recording): string | undefined {
  if (!starts || starts.attempts === 0) return undefined;
  return starts.caught ? `${starts.attempts}` : `${starts.attempts}, did not catch`;
}

/** An ambiguous speed is said with its rivals, never as one number. */
function speedWords({ mean, rivalsRpm }: Recording): string | undefined {
  if (!mean) return undefined;
  if (rivalsRpm.length > 0) return `${[mean.rpm, ...rivalsRpm].map((v) => Math.round(v)).join(' or ')} rpm`;
  return `${Math.round(mean.rpm)} ± ${Math.ceil(2 * mean.u)} rpm`;
}

const longest = ({ segments }: Recording) => segments.toSorted((a, b) => b.to - b.from - (a.to - a.from))[0];

function huntingWords(recording: Recording): string | undefined {
  const steady = longest(recording);
  if (!steady) return undefined;
  const { huntingHz, huntingRpm } = steady;
  if (huntingHz === undefined || huntingRpm === undefined) return 'none heard';
  return `± ${Math.round(huntingRpm)} rpm, ${huntingHz.toFixed(1)} a second`;
}

function missedWords(recording: Recording): string | undefined {
  const share = longest(recording)?.missedShare;
  return share === undefined ? undefined : share === 0 ? 'none heard' : `${(100 * share).toFixed(1)} in 100`;
}

/** The first load that was put on; the marks of the live mode say when. */
function droopWords({ track, marks }: Recording): string | undefined {
  const loads = marks.filter(({ what }) => what === loadOn).map(({ t }) => ({ t, kind: 'load on' as const }));
  const [step] = loadSteps(
    track.map((point) => ({ ...point, confidence: 1 })),
    loads,
  );
  if (!step) return undefined;
  const back = step.recoveryS === null ? 'does not settle' : `settles in ${step.recoveryS.toFixed(1)} s`;
  return `${step.droopPercent.toFixed(1)} %, ${back}`;
}
