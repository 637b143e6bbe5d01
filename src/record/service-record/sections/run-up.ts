import type { From, Job } from '../../../job/index.js';
import { capital, counted, joined } from '../../../phrase/index.js';
import { say } from '../numbers.js';
import type { Block, Cell, Item, Section, Verdict } from '../section.js';
import type { Sheet } from '../sheet.js';
import { briefTitle } from '../words.js';

type RunUp = From<'run-up'>;

export function runUpCounts(job: Job): { readonly ok: number; readonly notOk: number } {
  const results = [...job.runUp.values()].map((item) => item.result);
  const count = (wanted: RunUp['result']) => results.filter((result) => result === wanted).length;
  return { ok: count('ok'), notOk: count('not-ok') };
}

export function runUp(sheet: Sheet): Section | undefined {
  const items = [...sheet.job.runUp.values()].filter((item) => item.result !== 'not-applicable');
  const brief = sheet.detail === 'brief';
  const said = items.length === 0 ? [] : [brief ? runUpList(items, sheet) : runUpTable(items, sheet)];
  const blocks = [...said, ...notLookedAt(sheet), ...heardBlocks(sheet)];
  if (blocks.length === 0) return undefined;
  return { id: 'run-up', title: 'Run-up: how it started and ran', place: 'column', blocks };
}

/**
 * What nobody looked at, once a run-up was begun or the machine went back repaired: nobody is to think that it was shown.
 * A safety point is named, the rest counted.
 */
function notLookedAt({ answers, job }: Sheet): Block[] {
  const open = answers.runUp.items.filter(({ state }) => state === 'open');
  const wasRun = job.runUp.size > 0 || (job.handOver !== undefined && !answers.asItIs);
  if (!wasRun || open.length === 0) return [];
  const named = open.filter(({ asked }) => asked === 'safety');
  const others = open.length - named.length;
  const words = [
    ...named.map(({ step }) => briefTitle(step.title, titleEnd)),
    ...(others > 0 ? [`${counted(others, `${named.length > 0 ? 'other ' : ''}point`)} of the run-up`] : []),
  ];
  return [{ type: 'list', items: [{ lead: 'Not looked at:', words: words.join(' · ') }] }];
}

/** What recordings of the engine told, before and after the work. */
function heardBlocks({ answers, job, detail }: Sheet): Block[] {
  const rows = answers.heard;
  if (rows.length === 0) return [];
  if (detail === 'brief') {
    const words = rows.map(({ what, before, after }) =>
      before && after ? `${what}: ${after}, before ${before}` : `${what}: ${after ?? `${before} before`}`,
    );
    return [{ type: 'list', items: [{ lead: 'Heard in recordings:', words: words.join(' · ') }] }];
  }
  const table: Block = {
    type: 'table',
    columns: [
      { title: 'Heard in recordings', share: 44 },
      { title: 'Before', share: 28, figures: true },
      { title: 'After', share: 28, figures: true },
    ],
    rows: rows.map(({ what, before, after }) => [
      { text: what },
      { text: before ?? '' },
      { text: after ?? '', strong: true },
    ]),
  };
  return [table, ...speedCurves(job)];
}

/** The longest recording of each side that has a curve. */
function speedCurves(job: Job): Block[] {
  const curves = (['before', 'after'] as const).flatMap((phase) => {
    const longest = [...job.recordings.values()]
      .filter((r) => r.phase === phase && r.track.length > 1)
      .toSorted((a, b) => b.seconds - a.seconds)[0];
    if (!longest) return [];
    const label = `${capital(phase)}: ${longest.name}`;
    return [{ label, seconds: longest.seconds, points: longest.track.map(({ t, rpm }) => ({ t, rpm })) }];
  });
  return curves.length > 0 ? [{ type: 'speeds', curves }] : [];
}

function runUpTable(items: readonly RunUp[], sheet: Sheet): Block {
  return {
    type: 'table',
    columns: [
      { title: 'Checked', share: 60 },
      { title: 'Result', share: 40, figures: true },
    ],
    rows: items.map((item) => runUpRow(item, sheet)),
  };
}

/** What is not in order has a line of its own and comes first; the readings and the rest run on. */
function runUpList(items: readonly RunUp[], sheet: Sheet): Block {
  const bad = items.filter((item) => item.result === 'not-ok');
  const measured = items.filter((item) => item.value);
  const ok = items.filter((item) => item.result === 'ok');
  const lines: (Item | undefined)[] = [
    ...bad.map((item) => ({
      lead: `${item.title}:`,
      words: joined(['not in order', item.words]),
      verdict: notInOrder,
    })),
    runOn(
      'Measured:',
      measured.map((item) => `${briefTitle(item.title, titleEnd)}: ${say(item.value!, sheet.system)}`),
    ),
    okLine(ok, sheet),
  ];
  return { type: 'list', items: lines.filter((line) => line !== undefined) };
}

/** The checks that bar the hand-over are named, the others counted. */
function okLine(ok: readonly RunUp[], { barsHandOver }: Sheet): Item | undefined {
  const named = ok.filter((item) => barsHandOver(item.item));
  const among = named.length > 0 && named.length < ok.length ? ', among them' : '';
  const shown = named.length > 0 ? named : ok;
  const lead = `In order, ${counted(ok.length, 'check')}${among}:`;
  return runOn(
    lead,
    shown.map((item) => briefTitle(item.title, titleEnd)),
    inOrder,
  );
}

/** Not at a comma: "Guards on, load uncoupled, rotor clear" is three checks. */
const titleEnd = /[:(]/;

function runOn(lead: string, words: readonly string[], verdict?: Verdict): Item | undefined {
  return words.length > 0 ? { lead, words: words.join(' · '), ...(verdict && { verdict }) } : undefined;
}

function runUpRow(item: RunUp, sheet: Sheet): Cell[] {
  const value = item.value ? `${say(item.value, sheet.system)}, measured` : '';
  const verdict = verdicts[item.result];
  return [
    { text: item.title, ...(item.words && { sub: item.words }) },
    { text: value, ...(value && { strong: true }), ...(verdict && { verdict }) },
  ];
}

const inOrder: Verdict = { sign: 'pass', word: 'in order' };
const notInOrder: Verdict = { sign: 'fail', word: 'not in order' };

const verdicts: Readonly<Record<RunUp['result'], Verdict | undefined>> = {
  ok: inOrder,
  'not-ok': notInOrder,
  reading: undefined,
  'not-applicable': undefined,
};
