import { Link } from 'wouter';
import { lineWords, shopLog } from '../../job/index.js';
import { discardRefused, useOutbox } from '../data/outbox.js';
import { drafts } from '../form/drafts.js';
import { useDrafts } from '../form/use-drafts.js';
import { Page } from '../frame/page.js';
import { Button } from '../parts/act.js';

/** Lines of this device that the store has not got, and why. */
export function Unsent() {
  const { waiting, refused, state } = useOutbox();
  return (
    <Page
      title={
        waiting.length + refused.length === 0
          ? 'Everything has reached the shop’s store'
          : 'Not in the shop’s store yet'
      }
    >
      <Begun />
      {refused.length > 0 && (
        <section className="stack tight">
          <h2>Refused</h2>
          <ul className="lines">
            {refused.map(({ entry, reason }) => (
              <li key={entry.id}>
                <div>
                  <b>{lineWords({ entry }).title}</b>
                  <div>{JSON.stringify(entry.body)}</div>
                  <div className="verdict fail wraps">{reason}</div>
                </div>
                <Button onClick={() => void discardRefused(entry.id)}>Take it back</Button>
              </li>
            ))}
          </ul>
        </section>
      )}
      {waiting.length > 0 && (
        <p>
          {waiting.length} lines wait on this device and are sent as soon as{' '}
          {state === 'not paired'
            ? 'it is paired with the shop again: on the bench computer open Shop and choose “Pair a phone”.'
            : 'the store can be reached.'}
        </p>
      )}
    </Page>
  );
}

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
