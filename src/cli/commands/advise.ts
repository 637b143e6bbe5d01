import { byId, type Catalog, problemWords } from '../../catalog/index.js';
import type { Findings, NextCheck } from '../../diagnose/index.js';
import {
  answersFor,
  type Job,
  type JobFindings,
  type OwnSay,
  ownSayWords,
  shopCatalog,
  type WorthVerdict,
} from '../../job/index.js';
import { percent, roughHours, roughMoney } from '../../phrase/index.js';
import { findJob, JobNotes, PastJobs, shopNow } from '../../shopkeep/index.js';
import type { Store } from '../../store/index.js';
import { estimateOf, restWords, worthWords } from '../../worth/index.js';
import { type Command, Failed, flag, text, WronglyCalled } from '../command.js';
import { adviseOnCase, caseExample } from './advise-case.js';
import { sayBehind } from './reindex.js';
import { storeOptions, withStore } from './store-options.js';

export const advise: Command = {
  usage:
    'wristpin advise JOB [--json] [options]   (JOB: the number on the tag, or the job’s id)\n       wristpin advise --case FILE [--json]',
  options: {
    case: {
      type: 'string',
      value: 'FILE',
      help: 'advise on a machine told in a JSON file, in the catalog’s ids; no store is needed',
    },
    json: { type: 'boolean', help: 'print faults, explanations, checks and the worth-it spread as JSON' },
    ...storeOptions,
  },
  examples: ['wristpin advise 12', 'wristpin advise 12 --json', 'wristpin advise --case mower.json --json'],
  file: caseExample,
  takes: { least: 0, most: 1 },
  run: async (call, around) => {
    const file = text(call, 'case');
    if (file !== undefined) return adviseOnCase(file, call, around);
    if (call.positionals.length === 0) throw new WronglyCalled('Say which job, or --case FILE.');
    await withStore(call, around, 'must-exist', async ({ store }) => {
      const advice = await adviceFor(store, await findJob(store, call.positionals[0]!), sayBehind(around));
      around.out(flag(call, 'json') ? JSON.stringify(asJson(advice), null, 2) : asText(advice).join('\n'));
    });
  },
};

interface Advice {
  readonly findings: Extract<JobFindings, { state: 'answered' }>;
  readonly worth: WorthVerdict;
  readonly catalog: Catalog;
  /** set while the shop's own finished jobs shift the frequencies */
  readonly own?: OwnSay;
  /** packs of the shop that do not fit this version, with the reasons */
  readonly leftOut: readonly string[];
}

async function adviceFor(store: Store, job: Job, tell: ReturnType<typeof sayBehind>): Promise<Advice> {
  const { shop, catalog } = await shopNow(store);
  const notes = new JobNotes(store);
  await notes.bringUp(tell);
  const jobs = await new PastJobs(store, notes).tell(job.id);
  const { findings: said, ownSay: own, worth } = answersFor({ job, catalog, shop, jobs });
  if (said.state === 'cannot') throw new Failed(said.words);
  const leftOut = shopCatalog(shop).packs.flatMap((p) => p.problems.slice(0, 1).map(problemWords));
  return { findings: said, worth, catalog, leftOut, ...(own && { own }) };
}

function asJson({ findings: { findings, next, enough }, worth, own, leftOut }: Advice) {
  const { headline, faults, explanations, unexplained, safety, exact } = findings;
  return {
    headline,
    exact,
    ownJobs: own?.jobs ?? 0,
    packsLeftOut: leftOut,
    faults,
    explanations,
    unexplained,
    checks: next?.best.slice(0, mostChecks) ?? [],
    enough: enough ?? null,
    safety,
    worth,
  };
}

const mostFaults = 8;
const mostChecks = 5;

function asText({ findings: { findings, next, enough }, worth, own, catalog, leftOut }: Advice): string[] {
  return [
    `${findings.headline}.`,
    ...(own ? [`${ownSayWords(own)}.`] : []),
    ...leftOut.map((why) => `A pack of the shop is left out: ${why}`),
    '',
    ...faultLines(findings),
    ...section('Taken together', togetherLines(findings)),
    ...section('Check next', (next?.best ?? []).slice(0, mostChecks).map(checkLine)),
    ...(enough ? ['', enough.words] : []),
    ...section('Asked for outright, and open', openSafety(findings)),
    ...section('Worth it?', worthLines(worth, catalog)),
  ];
}

function togetherLines({ explanations }: Findings): string[] {
  return explanations.map(
    ({ faults, probability }) =>
      `${percent(probability)}: ${faults.map((f) => f.name).join('; ') || 'none of those in question'}`,
  );
}

function worthLines(verdict: WorthVerdict, catalog: Catalog): string[] {
  if (verdict.state === 'cannot') return [verdict.words];
  const { worth, currency, value, limit } = verdict;
  const money = (amount: number): string => roughMoney(currency, amount);
  const said = worthWords(worth, {
    ...(value !== undefined && { value }),
    ...(limit !== undefined && { limit }),
    money,
  });
  const names = byId(catalog.faults);
  const drivers = worth.drivers.map((d) => {
    const name = names.get(d.fault)?.name ?? d.fault;
    return d.present === 1 ? name : `${name} (${percent(d.present)} likely)`;
  });
  const { total, minutes, parts } = estimateOf(worth);
  const figures = `${roughHours(minutes.low)} to ${roughHours(minutes.high)} at the bench, parts ${money(parts.low)} to ${money(parts.high)}`;
  return [
    `${said.headline}. ${said.chance}`,
    ...(drivers.length > 0
      ? [
          `It will take ${total ? `about ${money(total.median)} (${money(total.low)} to ${money(total.high)}): ` : ''}${figures}.`,
          `For: ${drivers.join('; ')}.`,
        ]
      : []),
    restWords(worth, worth.cost && money),
    ...(said.stop ? [said.stop] : []),
    ...worth.lacks.map((lack) =>
      lack === 'rate'
        ? 'The shop’s rate an hour is not written down: no money without it.'
        : 'What the machine is worth when it runs is not written down: no verdict without it.',
    ),
    ...verdict.leftOut.map((words) => `Left out: ${words}.`),
  ];
}

function faultLines({ faults, unexplained }: Findings): string[] {
  return [
    ...faults.slice(0, mostFaults).map((f) => `  ${f.sentence}`),
    ...section(
      'Not explained',
      unexplained.map((u) => u.what),
    ),
  ];
}

const checkLine = ({ title, minutes, why, lacking }: NextCheck): string =>
  [
    `${title}, ${Math.round(minutes)} min. ${why}`,
    ...(lacking.length > 0 ? [`Not on the shop’s list: ${lacking.join(', ')}.`] : []),
  ].join(' ');

const mostAsked = 6;

function openSafety({ safety }: Findings): string[] {
  const open = safety.filter((s) => s.state === 'open' || s.state === 'found');
  const more = open.length - mostAsked;
  return [
    ...open.slice(0, mostAsked).map((s) => `${s.name}: ${s.why}`),
    ...(more > 0 ? [`and ${more} more; --json lists them all`] : []),
  ];
}

function section(title: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : ['', `${title}:`, ...lines.map((line) => `  ${line}`)];
}
