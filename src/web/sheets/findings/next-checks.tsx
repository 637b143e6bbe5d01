import { type RefObject, useRef, useState } from 'react';
import { byId, type Check } from '../../../catalog/index.js';
import { accessFor, type Enough, type NextCheck, saidOfAnyCheck } from '../../../diagnose/index.js';
import { spokenForms } from '../../../hear/index.js';
import type { Answers, Job } from '../../../job/index.js';
import { capital, listed, lowerFirst } from '../../../phrase/index.js';
import { useAnswers, useCatalog } from '../../data/answers.js';
import { write } from '../../data/outbox.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { useInHand } from '../../parts/in-hand.js';
import { type Choice, toldAloud } from '../../talk/answers/choice.js';
import { ChoiceButton } from '../../talk/answers/choice-button.js';
import { phrases } from '../../talk/answers/phrases.js';
import { AnswerByVoice } from './answer-by-voice.js';
import { AskedNow } from './asked-now.js';
import { spoiledBy } from './spoils.js';
import { TypedNumber } from './typed-number.js';
import { plainId } from './words.js';

/** The check that earns most for its minutes, with why; one tap answers it. */
export function BestNext(props: {
  job: Job;
  next: NextCheck | undefined;
  enough: Enough | undefined;
  onLog: (check: string) => void;
}) {
  const { job, next, enough, onLog } = props;
  const check = byId(useCatalog().checks).get(next?.id ?? '');
  const top = useRef<HTMLHeadingElement>(null);
  useInHand(check && lowerFirst(check.title));
  return (
    <section className="stack tight" aria-label="Check next">
      <h2 ref={top} tabIndex={-1}>
        Check next
      </h2>
      {enough && <EnoughWords enough={enough} />}
      {next && check ? (
        <BestCheck key={next.id} job={job} next={next} check={check} onLog={() => onLog(next.id)} top={top} />
      ) : (
        <p className="empty">No check that can be made now would tell more.</p>
      )}
    </section>
  );
}

/** The next best after it. */
export function ThenChecks(props: { job: Job; next: readonly NextCheck[]; onLog: (check: string) => void }) {
  const { job, next, onLog } = props;
  const { checks } = useCatalog();
  if (next.length === 0) return null;
  return (
    <section className="stack tight" aria-label="Or check">
      <h2>Or check</h2>
      {next.map((n) => {
        const check = byId(checks).get(n.id);
        return check && <NextCard key={n.id} job={job} next={n} check={check} onLog={() => onLog(n.id)} />;
      })}
    </section>
  );
}

/** Whether enough is seen, in a sentence; what stopping here would risk, on request or at once when it is enough. */
function EnoughWords({ enough }: { enough: Enough }) {
  const end = enough.words.indexOf('. ') + 1;
  const [first, rest] =
    end > 0 ? [enough.words.slice(0, end), enough.words.slice(end + 1)] : [enough.words, ''];
  if (enough.enough) {
    return (
      <div className="card first" role="status">
        <p>
          <b>{first}</b>
        </p>
        {rest && <p>{rest}</p>}
      </div>
    );
  }
  return (
    <div>
      <p>{first}</p>
      {rest && (
        <details>
          <summary>If you stopped looking here</summary>
          <p className="soft">{rest}</p>
        </details>
      )}
    </div>
  );
}

interface CardProps {
  readonly job: Job;
  readonly next: NextCheck;
  readonly check: Check;
  readonly onLog: () => void;
}

function BestCheck({ top, ...card }: CardProps & { top: RefObject<HTMLHeadingElement | null> }) {
  return (
    <article className="card first">
      <CardHead next={card.next} />
      <p className="soft">{card.next.why}</p>
      <Circumstances {...card} />
      <AskedNow job={card.job} check={card.check} />
      {/* another check takes this card's place: a keyboard goes on from the head of the list */}
      <Outcomes {...card} inHand onLogged={() => top.current?.focus({ preventScroll: true })} />
    </article>
  );
}

function NextCard(card: CardProps) {
  return (
    <article className="card">
      <CardHead next={card.next} />
      <Circumstances {...card} />
      <details>
        <summary>
          Log it, and what it would tell<span className="hidden">: {card.next.title}</span>
        </summary>
        <p className="soft">{card.next.why}</p>
        <AskedNow job={card.job} check={card.check} />
        <Outcomes {...card} />
      </details>
    </article>
  );
}

/** One tap logs one outcome; said aloud it is logged as well where the check is the one in hand. */
function Outcomes(props: CardProps & { inHand?: boolean; onLogged?: () => void }) {
  const { job, next: n, check, inHand = false, onLog, onLogged } = props;
  const [doubtful, setDoubtful] = useState(false);
  const { wrong, busy, act } = useAct(job);
  const log = async (outcome: string) => {
    const body = { check: n.id, title: n.title, outcomes: [outcome], ...(doubtful && { doubtful }) };
    if (await act(() => write(job.id, 'observation', body))) onLogged?.();
  };
  const said = inHand ? spokenForms({ about: check.title, answers: check.outcomes.map((o) => o.words) }) : [];
  const choiceOf = (words: string, say: string | undefined): Choice => ({
    ...{ label: words, say, writes: true, act: () => log(words), disabled: busy },
  });
  const seen = check.outcomes.map((o, i) => choiceOf(o.words, said[i]));
  const ofAny = saidOfAnyCheck.map((id) => choiceOf(plainId(id), inHand ? plainId(id) : undefined));
  return (
    <>
      <div className="outcomes">
        {seen.map((choice) => (
          <ChoiceButton key={choice.label} choice={choice} />
        ))}
      </div>
      <TypedNumber job={job} check={check} doubtful={doubtful} onLogged={onLogged} />
      <div className="row apart">
        <label className="tick">
          <input type="checkbox" checked={doubtful} onChange={(e) => setDoubtful(e.target.checked)} />
          Doubtful
        </label>
        <Button look="quiet" onClick={onLog}>
          {check.several ? 'Several, or with words' : 'With words'}
        </Button>
      </div>
      <div className="row">
        {ofAny.map((choice) => (
          <ChoiceButton
            key={choice.label}
            choice={{ ...choice, label: capital(choice.label), look: 'quiet' }}
          />
        ))}
      </div>
      {inHand && (
        <AnswerByVoice
          {...{ job, check, doubtful, onLogged }}
          seen={seen}
          ofAny={ofAny}
          told={toldOf(n, seen)}
          act={act}
        />
      )}
      <Wrong words={wrong} />
    </>
  );
}

/** The question again, and its answers. */
const toldOf = ({ title }: NextCheck, seen: readonly Choice[]): Choice =>
  toldAloud(phrases.again, `${title}. ${seen.map(({ label }) => label).join('. ')}.`);

function CardHead({ next: n }: { next: NextCheck }) {
  const spares = Math.round(n.saves);
  return (
    <header>
      <b>{n.title}</b>
      <span className="minutes">
        {Math.round(n.minutes)} min
        {spares >= 1 && <small>spares {spares} min</small>}
      </span>
    </header>
  );
}

/** What stands in its way, what it spoils, what it can do to a person. */
function Circumstances({ job, next: n, check }: CardProps) {
  const catalog = useCatalog();
  const off = offAlready(useAnswers(), check);
  const first = n.before.map((id) => byId(catalog.checks).get(id)?.title ?? id);
  const spoils = spoiledBy(catalog, job, check).map((c) => c.title);
  const later = spoils.filter((title) => !first.includes(title));
  return (
    <>
      {off.length > 0 && <p className="soft">Off already: {listed(off)}.</p>}
      {n.lacking.length > 0 && <p className="soft">Not on the shop’s list: {listed(n.lacking)}.</p>}
      {first.length > 0 && <p className="care">! Before it, because it spoils them: {first.join('; ')}.</p>}
      {later.length > 0 && <Spoils titles={later} />}
      {n.cautions.map((c) => (
        <p className="care" key={c.title}>
          ! {c.title}
        </p>
      ))}
    </>
  );
}

const namedAtOnce = 2;

function Spoils({ titles }: { titles: readonly string[] }) {
  const more = titles.length - namedAtOnce;
  return (
    <p className="care">
      ! Afterwards these read less: {titles.slice(0, namedAtOnce).join('; ')}
      {more > 0 && ` and ${more} more`}.
    </p>
  );
}

/** What the check needs off and what is off now. */
function offAlready({ catalog, engine, offNow: off }: Answers, check: Check): string[] {
  if (off.size === 0) return [];
  const { comesOff } = accessFor(catalog, engine.facts, check, new Set());
  return comesOff.filter((c) => off.has(c.id) && c.comesOffAs !== 'action').map((c) => lowerFirst(c.name));
}
