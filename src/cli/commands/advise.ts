import { builtInCatalog } from '../../catalog/index.js';
import type { Findings, NextCheck } from '../../diagnose/index.js';
import {
  findingsOf,
  fold,
  foldShop,
  type JobFindings,
  shopLog,
  type WorthVerdict,
  worthOf,
} from '../../job/index.js';
import type { Store } from '../../store/index.js';
import { type Command, Failed, flag } from '../command.js';
import { findJob } from './find-job.js';
import { storeOptions, withStore } from './store-options.js';

export const advise: Command = {
  usage: 'wristpin advise JOB [--json] [options]   (JOB: the number on the tag, or the job’s id)',
  options: {
    json: { type: 'boolean', help: 'print faults, explanations, checks and the worth-it spread as JSON' },
    ...storeOptions,
  },
  examples: ['wristpin advise 12', 'wristpin advise 12 --json'],
  takes: { least: 1, most: 1 },
  run: async (call, around) => {
    await withStore(call, around, 'must-exist', async ({ store }) => {
      const { id } = await findJob(store, call.positionals[0]!);
      const advice = await adviceFor(store, id);
      around.out(flag(call, 'json') ? JSON.stringify(asJson(advice), null, 2) : asText(advice).join('\n'));
    });
  },
};

interface Advice {
  readonly findings: Extract<JobFindings, { state: 'answered' }>;
  readonly worth: WorthVerdict;
}

async function adviceFor(store: Store, id: string): Promise<Advice> {
  const catalog = builtInCatalog();
  const job = fold(id, await store.entries(id));
  const shop = foldShop(await store.entries(shopLog));
  const said = findingsOf(job, catalog);
  if (said.state === 'cannot') throw new Failed(said.words);
  return { findings: said, worth: worthOf(job, catalog, shop) };
}

function asJson({ findings: { findings, next, enough }, worth }: Advice) {
  const { headline, faults, explanations, unexplained, safety, exact } = findings;
  return {
    headline,
    exact,
    faults,
    explanations,
    unexplained,
    checks: next?.best ?? [],
    enough: enough ?? null,
    safety,
    worth,
  };
}

const mostFaults = 8;

function asText({ findings: { findings, next, enough }, worth }: Advice): string[] {
  return [
    `${findings.headline}.`,
    '',
    ...faultLines(findings),
    ...section('Check next', (next?.best ?? []).map(checkLine)),
    ...(enough ? ['', enough.words] : []),
    ...section('Asked for outright, and open', openSafety(findings)),
    ...(worth.state === 'cannot' ? ['', worth.words] : []),
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

const checkLine = (c: NextCheck): string => `${c.title}, ${Math.round(c.minutes)} min. ${c.why}`;

function openSafety({ safety }: Findings): string[] {
  return safety.filter((s) => s.state === 'open' || s.state === 'found').map((s) => `${s.name}: ${s.why}`);
}

function section(title: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : ['', `${title}:`, ...lines.map((line) => `  ${line}`)];
}
