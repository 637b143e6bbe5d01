import type { ReactNode } from 'react';
import { Link, useLocation } from 'wouter';
import { type Answers, localTime, type MissingMemory, stageNames, type WhereWasI } from '../../job/index.js';
import { counted, listed, lowerFirst, sentence, shortDay } from '../../phrase/index.js';
import { usePrimary, WidePrimary } from '../frame/job-frame.js';
import { useNow } from '../parts/now.js';
import { PictureGrid } from '../parts/picture.js';

const minuteMs = 60_000;

/** A job that lay, told in one screen: what was last done, what is next, what is off and where, and what is not known any more. */
export function WhereWasISheet({ answers }: { answers: Answers }) {
  const { job } = answers;
  const [, go] = useLocation();
  const told = answers.whereWasI(localTime(new Date(Math.floor(useNow() / minuteMs) * minuteMs)));
  const [first] = told.next;
  usePrimary(first && { label: 'Go on', act: () => go(`/job/${job.id}/${first.page}`) });
  return (
    <div className="stack rested">
      <header className="sheet-head">
        <h1>Where was I</h1>
        <WidePrimary />
        <Stopped told={told} />
      </header>
      <MindFirst told={told} />
      <div className="told">
        <Next job={job.id} told={told} />
        <div className="told-parts">
          <Told what="Off" short={offWords(told)} count={told.off.length}>
            <OffLines told={told} />
          </Told>
          <Told what="Waits" short={told.waits.join('; ')} count={told.waits.length}>
            <PlainLines lines={told.waits} />
          </Told>
          <Told what="Torques" short={torqueWords(told)} count={told.torques.length}>
            <TorqueLines told={told} />
          </Told>
          <Told what="Not known any more" short={missingWords(told)} count={told.missing.length}>
            <Missing missing={told.missing} />
          </Told>
        </div>
        {told.pictures.length > 0 && (
          <section aria-label="Last pictures">
            <PictureGrid photographs={told.pictures} />
          </section>
        )}
      </div>
    </div>
  );
}

function Stopped({ told: { stopped, rest } }: { told: WhereWasI }) {
  if (!stopped) return <p className="say">Nothing was done on it yet but its tag.</p>;
  const { at, by, stage, words } = stopped;
  const clock = at.slice(11, 16);
  return (
    <p className="say">
      Stopped {shortDay(at)}, {clock}, by {by}, {rest} ago. Last at {stageNames[stage]}: {sentence(words)}
    </p>
  );
}

/** What lying did to it: a word for each, and the whole of it folded below. */
function MindFirst({ told: { mind } }: { told: WhereWasI }) {
  if (mind.length === 0) return null;
  return (
    <details className="caution" role="note">
      <summary>! Mind first: {listed(mind.map(({ word }) => lowerFirst(word)))}</summary>
      <ul>
        {mind.map(({ words }) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
    </details>
  );
}

/** A part that tells itself in its one line and opens for the whole of it. */
function Told(props: { what: string; short: string; count: number; children: ReactNode }) {
  if (props.count === 0) return null;
  return (
    <details className="told-part">
      <summary>
        <span>
          {props.what} <span className="soft">({props.count})</span>
          <small>{props.short}</small>
        </span>
      </summary>
      {props.children}
    </details>
  );
}

function Next({ job, told }: { job: string; told: WhereWasI }) {
  if (told.next.length === 0) return <p>Nothing is open on it.</p>;
  return (
    <section aria-label="Next">
      <h2>Next</h2>
      <ol className="next-things">
        {told.next.map(({ words, page }) => (
          <li key={words}>
            <Link href={`/job/${job}/${page}`}>{words}</Link>
          </li>
        ))}
      </ol>
    </section>
  );
}

const bagWords = (bag: string | undefined) => (bag === undefined ? 'no bag named' : `bag ${bag}`);

/** The first few, the last off first; the rest by their number. */
function offWords({ off }: WhereWasI): string {
  const few = off.slice(0, 3).map(({ title, bag }) => (bag === undefined ? title : `${title}, bag ${bag}`));
  return [...few, ...(off.length > 3 ? [`${off.length - 3} more`] : [])].join('; ');
}

const OffLines = ({ told }: { told: WhereWasI }) => (
  <ul className="lines">
    {told.off.map(({ step, title, bag, fasteners, plugged }) => (
      <li key={step}>
        <div>
          {title}
          <div className="soft">
            {[...fasteners, ...plugged.map((port) => `plug in: ${port}`)].join(' · ')}
          </div>
        </div>
        <b>{bagWords(bag)}</b>
      </li>
    ))}
  </ul>
);

const PlainLines = ({ lines }: { lines: readonly string[] }) => (
  <ul className="lines">
    {lines.map((line) => (
      <li key={line}>{line}</li>
    ))}
  </ul>
);

const torqueWords = ({ torques }: WhereWasI) =>
  listed(torques.slice(0, 3).map(({ name, state }) => `${name} ${state}`)) +
  (torques.length > 3 ? ` and ${torques.length - 3} more` : '');

const TorqueLines = ({ told }: { told: WhereWasI }) => (
  <ul className="lines">
    {told.torques.map(({ name, state, words }) => (
      <li key={`${name} ${words}`}>
        <div>
          {name} <span className="soft">{words}</span>
        </div>
        <span
          className={`verdict ${state === 'tight' ? 'pass' : state === 'not tightened' ? '' : 'cannot-decide'}`}
        >
          {state}
        </span>
      </li>
    ))}
  </ul>
);

const missingWords = ({ missing }: WhereWasI) => {
  const pieces = [...new Set(missing.map(({ of }) => of))];
  return `of ${listed([...pieces.slice(0, 3), ...(pieces.length > 3 ? [counted(pieces.length - 3, 'other piece')] : [])])}; each with where to get it`;
};

/** Each opens for the ways to win it back, the surest first. */
function Missing({ missing }: { missing: readonly MissingMemory[] }) {
  return missing.map(({ of, what, ways }) => (
    <details key={`${of} ${what}`}>
      <summary>
        <span>
          {of} <small>{what}</small>
        </span>
      </summary>
      <ol className="win-back">
        {ways.map((way) => (
          <li key={way}>{way}</li>
        ))}
      </ol>
    </details>
  ));
}
