import { useState } from 'react';
import { applies, type Measurement } from '../../../catalog/index.js';
import {
  type From,
  factsOf,
  type Job,
  type LimitAnswer,
  limitAnswer,
  quantityOf,
} from '../../../job/index.js';
import { show } from '../../../quantity/index.js';
import { useCatalog, useShop, useUnits } from '../../data/queries.js';
import { usePrimary } from '../../frame/job-frame.js';
import { Sheet, type SheetProps } from '../../frame/sheet.js';
import { Button } from '../../parts/act.js';
import { NumberWithOrigin } from '../../parts/number.js';
import { grouped } from '../grouped.js';
import { DecideReading } from './decide-reading.js';
import { TakeReading } from './take-reading.js';

/** Measure against the right limit, in the right unit, and say honestly when the tool cannot decide. */
export function Measure({ job, gate }: SheetProps) {
  const shop = useShop();
  const [taking, setTaking] = useState<Measurement | 'own'>();
  const [choosing, setChoosing] = useState(false);
  const [deciding, setDeciding] = useState<LimitAnswer>();
  usePrimary({ label: 'Add a reading', act: () => setChoosing(true) });
  const answers = job.measurements.map((m) => limitAnswer(m, shop));
  const groups = grouped(answers, (a) => a.measurement.title);
  return (
    <Sheet
      job={job}
      gate={gate}
      headline={headline(answers)}
      say="Clean and at room temperature; zero the instrument first; each size twice, a third time if they differ by more than the tool can tell. Keep the unit that the instrument shows."
    >
      {answers.length === 0 && (
        <p className="empty">
          No reading yet. Add one, and it is held against its limit with the uncertainty of the instrument:
          pass, fail, or cannot decide with this tool.
        </p>
      )}
      {[...groups].map(([title, group]) => (
        <section key={title} className="section">
          <h2>{title}</h2>
          <ul className="lines">
            {group.map((a) => (
              <ReadingLine key={a.measurement.entry} job={job} answer={a} onDecide={() => setDeciding(a)} />
            ))}
          </ul>
        </section>
      ))}
      {choosing && (
        <ChooseMeasurement job={job} onChoose={(m) => setTaking(m)} onClose={() => setChoosing(false)} />
      )}
      <TakeReading
        job={job}
        measurement={taking}
        onClose={() => {
          setTaking(undefined);
          setChoosing(false);
        }}
      />
      <DecideReading job={job} answer={deciding} onClose={() => setDeciding(undefined)} />
    </Sheet>
  );
}

function headline(answers: readonly LimitAnswer[]): string {
  const count = (verdict: string) => answers.filter((a) => a.decision?.verdict === verdict).length;
  if (answers.length === 0) return 'Nothing is measured yet';
  const said = [
    [count('fail'), 'outside their limits'],
    [count('cannot-decide'), 'too close to call'],
    [count('pass'), 'inside'],
  ] as const;
  const words = said.filter(([n]) => n > 0).map(([n, w]) => `${n} ${w}`);
  return words.length > 0 ? words.join(', ') : `${answers.length} readings, no limits given`;
}

function ReadingLine({ job, answer, onDecide }: { job: Job; answer: LimitAnswer; onDecide: () => void }) {
  const system = useUnits();
  const { measurement: m, decision, instrument, u } = answer;
  const reading = {
    ...quantityOf(m.value),
    ...(u > 0 && { u }),
    origin: { from: 'measured' as const, detail: instrument?.name ?? m.instrument ?? 'instrument not named' },
  };
  const made = job.decisions.findLast((d) => d.about === 'measurement' && d.which === m.measure);
  return (
    <li>
      <div>
        <NumberWithOrigin quantity={reading} what={m.title} />{' '}
        <span className="soft">
          {[m.place, m.direction, m.phase === 'after' ? 'after the work' : undefined]
            .filter(Boolean)
            .join(', ')}
        </span>
        <div className="soft">
          {limitWords(m, (w) => show(quantityOf(w), system))}
          {decision && ` · ${decision.words}`}
        </div>
        {made && (
          <div>
            <span className="chip">decided: {made.title}</span>
          </div>
        )}
      </div>
      <div className="row">
        {decision ? (
          <span className={`verdict ${decision.verdict}`}>{decision.verdict.replace('-', ' ')}</span>
        ) : (
          <span className="soft">no limit</span>
        )}
        {decision && decision.verdict !== 'pass' && (
          <Button look={made ? 'quiet' : 'plain'} onClick={onDecide}>
            {made ? 'Decide again' : 'Decide'}
          </Button>
        )}
      </div>
    </li>
  );
}

function limitWords(
  m: From<'measurement'>,
  say: (w: NonNullable<NonNullable<From<'measurement'>['limit']>['min']>) => string,
): string {
  const { min, max, origin } = m.limit ?? {};
  if (!min && !max) return '';
  const range =
    min && max ? `${say(min)} to ${say(max)}` : max ? `at most ${say(max)}` : `at least ${say(min!)}`;
  return `limit ${range} (${[origin?.from, origin?.detail].filter(Boolean).join(', ')})`;
}

function ChooseMeasurement({
  job,
  onChoose,
  onClose,
}: {
  job: Job;
  onChoose: (m: Measurement | 'own') => void;
  onClose: () => void;
}) {
  const [find, setFind] = useState('');
  const fit = useCatalog()
    .measurements.filter((m) => m.kind !== undefined && applies(m.when, factsOf(job)) !== 'no')
    .filter((m) => m.name.toLowerCase().includes(find.trim().toLowerCase()));
  return (
    <section className="card stack tight" aria-label="What is measured">
      <header>
        <h2>What is measured?</h2>
        <Button look="quiet" onClick={onClose}>
          Close
        </Button>
      </header>
      <input
        aria-label="Find a measurement"
        placeholder="find: bore, ring, clearance …"
        value={find}
        onChange={(e) => setFind(e.target.value)}
      />
      <div className="choices">
        {fit.map((m) => (
          <Button key={m.id} onClick={() => onChoose(m)}>
            {m.name}
          </Button>
        ))}
        <Button look="quiet" onClick={() => onChoose('own')}>
          Something else
        </Button>
      </div>
    </section>
  );
}
