import { useState } from 'react';
import { Link } from 'wouter';
import { applies, byId, type Check } from '../../../catalog/index.js';
import { type Job, type JobFindings, type OwnSay, ownSayWords, shopCatalog } from '../../../job/index.js';
import { capital } from '../../../phrase/index.js';
import { useCatalog } from '../../data/answers.js';
import { useShop } from '../../data/queries.js';
import { usePrimary } from '../../frame/job-frame.js';
import { Sheet, type SheetProps } from '../../frame/sheet.js';
import { Evidence } from './evidence.js';
import { Faults } from './faults.js';
import { FirstLooks } from './first-looks.js';
import { LogCheck } from './log-check.js';
import { Moves } from './moves.js';
import { BestNext, ThenChecks } from './next-checks.js';
import { NotNow, Stop } from './not-now.js';
import { OtherChecks } from './other-checks.js';
import { OwnersWords } from './owners-words.js';
import { SafetyQuestions } from './safety-questions.js';
import { Together } from './together.js';

const advised = 5;

/**
 * What is wrong, what to check next. Every answer is worked out from the log as it stands; a line logged or struck
 * changes all of it at once.
 */
export function Findings({ answers, job, gate }: SheetProps) {
  const [logging, setLogging] = useState<Check | 'own'>();
  usePrimary({ label: 'Log something seen', act: () => setLogging('own') });
  const catalog = useCatalog();
  const checks = catalog.checks.filter((c) => applies(c.when, answers.engine.facts) !== 'no');
  const { findings: answer, lastMove: move, ownSay: own } = answers;
  const logById = (id: string) => setLogging(byId(catalog.checks).get(id));
  const found = answer.state === 'answered' ? answer : undefined;
  const order = found?.next?.best ?? [];
  return (
    <Sheet job={job} gate={gate} headline={headline(job, answer)} say={say(answer)}>
      {!job.handOver && <Stop />}
      <Standing own={own} />
      <OwnersWords job={job} />
      {found && (
        <div className="findings">
          <div className="best stack">
            {found.next && <BestNext job={job} next={order[0]} enough={found.enough} onLog={logById} />}
            <Moves move={move} />
          </div>
          <div className="them stack">
            <Faults job={job} findings={found.findings} move={move} own={own} onLog={logById} />
            {job.observations.length > 0 && <Together job={job} findings={found.findings} />}
          </div>
          <div className="then stack">
            <ThenChecks job={job} next={order.slice(1, advised)} onLog={logById} />
            {!job.handOver && <SafetyQuestions questions={found.findings.safety} onLog={logById} />}
          </div>
        </div>
      )}
      {!job.handOver && (
        <FirstLooks job={job} checks={checks} advised={order.map((n) => n.id)} onLog={setLogging} />
      )}
      {found && <Evidence lines={answers.evidence} onLog={logById} />}
      {!job.handOver && <NotNow />}
      <OtherChecks job={job} checks={checks} onLog={setLogging} />
      <LogCheck job={job} check={logging} onClose={() => setLogging(undefined)} />
    </Sheet>
  );
}

/** What else the figures rest on: the shop's own jobs, and packs that are left out. */
function Standing({ own }: { own: OwnSay | undefined }) {
  const left = shopCatalog(useShop()).packs.filter((p) => p.problems.length > 0);
  if (!own && left.length === 0) return null;
  return (
    <p className="soft">
      {own && <Link href="/shop#own-frequencies">{ownSayWords(own)}</Link>}
      {own && left.length > 0 && ' · '}
      {left.length > 0 && (
        <Link href="/shop#own-packs">
          Without {left.map((p) => p.head?.title ?? p.pack).join(', ')}: it does not fit this version
        </Link>
      )}
    </p>
  );
}

function headline(job: Job, answer: JobFindings): string {
  if (answer.state === 'cannot') return 'The log contradicts itself';
  const nothingYet = job.observations.length === 0 && job.decisions.length === 0;
  return nothingYet ? 'Nothing is looked at yet' : headOf(answer.findings.headline)[0];
}

function say(answer: JobFindings): string {
  if (answer.state === 'cannot') return answer.words;
  const which = headOf(answer.findings.headline)[1];
  const bounded = answer.findings.exact
    ? []
    : ['So much was seen that each figure is the middle of sure bounds'];
  return [which, ...bounded, 'A neglected engine usually has several faults: go on looking after the first.']
    .filter((sentence) => sentence !== '')
    .join('. ');
}

/** "Two faults explain what you saw: a and b" → the headline, and which ones as a sentence of its own. */
function headOf(headline: string): [string, string] {
  const at = headline.indexOf(': ');
  return at < 0 ? [headline, ''] : [headline.slice(0, at), capital(headline.slice(at + 2))];
}
