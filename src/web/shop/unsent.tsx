import { Link } from 'wouter';
import { type RawEntry, shopLog } from '../../job/index.js';
import { capital } from '../../phrase/index.js';
import { useKeepsFor } from '../data/keeps-for.js';
import type { Refused } from '../data/outbox/rules.js';
import { heldWords, howMuch, isAre } from '../data/outbox/words.js';
import { dropRefused, forgetMissing, type Outbox, sendSmaller, tryAgain, useOutbox } from '../data/outbox.js';
import { wordsOfLine } from '../data/words-of.js';
import { drafts } from '../form/drafts.js';
import { useDrafts } from '../form/use-drafts.js';
import { Page } from '../frame/page.js';
import { Button, useAct, Wrong } from '../parts/act.js';
import { useLocalAddress } from '../parts/picture.js';
import { PlaySound } from '../talk/play-sound.js';

/** What of this device the store has not got, and why. */
export function Unsent() {
  const outbox = useOutbox();
  const { waiting, pictures, sounds, refused, missing, trouble } = outbox;
  const nothing = waiting.length + pictures + sounds + refused.length === 0 && !missing;
  return (
    <Page title={nothing ? 'Nothing waits on this device' : 'Not in the shop’s store yet'}>
      <Wrong words={trouble && `${trouble} Until then a line counts only when the store has answered.`} />
      {missing && <Missing missing={missing} />}
      <Begun />
      {refused.length > 0 && (
        <section className="stack tight">
          <h2>Refused</h2>
          <ul className="lines">
            {refused.map((each) => (
              <RefusedLine key={each.entry?.id ?? each.picture?.sha256} refused={each} />
            ))}
          </ul>
        </section>
      )}
      <Waiting outbox={outbox} />
    </Page>
  );
}

/** A browser that cleared its storage says nothing of it. */
function Missing({ missing }: { missing: NonNullable<Outbox['missing']> }) {
  return (
    <section className="wrong-box stack tight" role="alert">
      <b>
        {capital(heldWords(missing))} waited on this device when it was last used and {isAre(missing)} not
        here now.
      </b>
      <p>
        The browser has cleared its storage, or it was cleared by hand. Read the log of what you did last, and
        write down again what it does not hold.
      </p>
      <div>
        <Button onClick={forgetMissing}>I have looked</Button>
      </div>
    </section>
  );
}

function RefusedLine({ refused }: { refused: Refused }) {
  const { entry, picture, reason } = refused;
  const { wrong, busy, act } = useAct();
  const isSound = picture?.mime === 'audio/wav';
  const title = entry ? titleOf(entry) : `A ${isSound ? 'sound' : 'picture'} without its line`;
  return (
    <li>
      <div className="stack tight">
        <b>{title}</b>
        {entry && !picture && <div>{JSON.stringify(entry.body)}</div>}
        {picture &&
          (isSound ? <PlaySound sound={picture} /> : <HeldPicture sha256={picture.sha256} alt={title} />)}
        <div className="verdict fail wraps">{reason}</div>
        <Wrong words={wrong} />
        <div className="row">
          <Button disabled={busy} onClick={() => void act(() => tryAgain(refused))}>
            Try again
          </Button>
          {picture && entry && !isSound && (
            <Button disabled={busy} onClick={() => void act(() => sendSmaller(refused))}>
              Send a smaller one
            </Button>
          )}
          <Button look="danger" disabled={busy} onClick={() => void act(() => dropRefused(refused))}>
            Take it back
          </Button>
        </div>
      </div>
    </li>
  );
}

/** A picture of which this device has the only copy, and a way to save it elsewhere. */
function HeldPicture({ sha256, alt }: { sha256: string; alt: string }) {
  const url = useLocalAddress(sha256);
  if (!url) return null;
  return (
    <>
      <img className="held" src={url} alt={alt} />
      <a href={url} download={`${sha256.slice(0, 12)}.jpg`}>
        Save a copy of it
      </a>
    </>
  );
}

function Waiting({ outbox }: { outbox: Outbox }) {
  const { waiting, pictures, sounds, refused, reach, said } = outbox;
  const keeps = useKeepsFor();
  const held = { lines: waiting.length, pictures, sounds };
  const when = {
    'not paired':
      'it is paired with the shop again: on the bench computer open Shop and choose “Pair a phone”. Do not clear this browser’s data until then.',
    'out of order': 'the store takes them. It is tried again by itself.',
  } as const;
  return (
    <section className="stack tight">
      {howMuch(held) > 0 && (
        <p>
          {capital(heldWords(held))} {howMuch(held) === 1 ? 'waits' : 'wait'} on this device, to be sent as
          soon as {reach in when ? when[reach as keyof typeof when] : 'the store can be reached.'}
        </p>
      )}
      {said && <p>The store says: {said}</p>}
      {keeps === 'while there is room' && howMuch(held) + refused.length > 0 && (
        <p className="soft">
          This browser may clear what waits here when the device runs short of room. Do not leave lines
          waiting here for days.
        </p>
      )}
      <ul className="lines">
        {waiting.slice(0, 50).map((entry) => (
          <li key={entry.id}>
            <Link href={entry.job === shopLog ? '/shop' : `/job/${entry.job}/intake`}>{titleOf(entry)}</Link>
            <small>{entry.at.slice(0, 16).replace('T', ' ')}</small>
          </li>
        ))}
      </ul>
    </section>
  );
}

const titleOf = (entry: RawEntry) => wordsOfLine(entry).title;

/** Forms that were begun on this device: each keeps what was typed until it is written down or given up. */
function Begun() {
  const begun = [...useDrafts()];
  if (begun.length === 0) return null;
  return (
    <section className="stack tight">
      <h2>Begun, not written down</h2>
      <ul className="lines">
        {begun.map(([key, { job, title }]) => (
          <li key={key}>
            <Link href={job === shopLog ? '/shop' : `/job/${job}/intake`}>{title}</Link>
            <Button look="quiet" aria-label={`Give up: ${title}`} onClick={() => void drafts.drop(key)}>
              Give it up
            </Button>
          </li>
        ))}
      </ul>
    </section>
  );
}
