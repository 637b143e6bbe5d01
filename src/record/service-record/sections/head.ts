import { byId } from '../../../catalog/index.js';
import type { Job } from '../../../job/index.js';
import { cutShort, dayWords, joined, listed, timeWords } from '../../../phrase/index.js';
import { architectureLabels } from '../labels.js';
import type { Fact, Foot, Head } from '../section.js';
import type { Sheet } from '../sheet.js';

export function head(sheet: Sheet): Head {
  const { job, shop } = sheet;
  return {
    tag: job.tag,
    title: job.title || machineName(job) || 'Machine without a name',
    machine: machineWords(sheet),
    shopName: shop.settings['shop-name'] ?? '',
    shopAddress: shop.settings['shop-address'] ?? '',
    facts: headFacts(job),
    invented: job.invented,
  };
}

export function foot(sheet: Sheet): Foot {
  return {
    tag: joined([`Tag ${sheet.job.tag}`, cutShort(sheet.job.title, 44)]),
    printed: `printed ${timeWords(sheet.printedAt)}`,
  };
}

function machineName(job: Job): string {
  return job.intake.machine ?? '';
}

/** The machine and its engine in a line; what nobody knew is left out rather than guessed. */
function machineWords({ job, answers }: Sheet): string {
  const { machine, use, architecture, shaft } = job.intake;
  return joined([
    machine ?? nameOfUse(answers, use),
    architecture && architecture !== 'unknown' ? architectureLabels[architecture] : undefined,
    shaft && shaft !== 'unknown' ? `${shaft} shaft` : undefined,
  ]);
}

function nameOfUse({ catalog }: Sheet['answers'], use: string | undefined): string | undefined {
  if (use === undefined) return undefined;
  const known = byId(catalog.uses).get(use);
  return known?.title ?? known?.name ?? 'Machine';
}

function headFacts(job: Job): Fact[] {
  const { owner } = job.intake;
  return [
    { label: 'Received', value: job.opened ? dayWords(job.opened) : 'not written down' },
    { label: 'Handed over', value: job.handOver ? dayWords(job.handOver.at) : 'not handed over yet' },
    { label: 'Owner', value: owner || 'not written down' },
    { label: 'Worked on by', value: listed(people(job)) || 'not written down' },
  ];
}

/** Everyone who wrote a line that stands. */
function people(job: Job): string[] {
  const standing = job.log.filter((line) => !line.struck && line.known?.kind !== 'strike');
  return [...new Set(standing.map((line) => line.entry.by))];
}
