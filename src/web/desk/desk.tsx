import { useState } from 'react';
import { Link, Route, Switch } from 'wouter';
import { desk, deskGroups, findWorksheet, findWorksheets } from '../../desk/index.js';
import { plural } from '../../phrase/index.js';
import { isPublished, type Worksheet } from '../../worksheet/index.js';
import { Page } from '../frame/page.js';
import { WorksheetPage } from './worksheet-page.js';

/** Every calculation that a person can do alone, listed by what they want to know. */
export function Desk() {
  return (
    <Switch>
      <Route path="/desk/:id">{({ id }) => <OneWorksheet id={id} />}</Route>
      <Route>
        <DeskList />
      </Route>
    </Switch>
  );
}

function OneWorksheet({ id }: { id: string }) {
  const worksheet = findWorksheet(id);
  if (worksheet) return <WorksheetPage key={id} worksheet={worksheet} />;
  return (
    <Page title="There is no such worksheet">
      <p>
        <Link href="/desk">Back to the reference desk</Link>
      </p>
    </Page>
  );
}

/** A group no one typed for, and the answers to what was typed in one list with the nearest first. */
function DeskList() {
  const [typed, setTyped] = useState('');
  const found = findWorksheets(desk, typed);
  return (
    <Page title="Reference desk">
      <p className="say">
        What do you want to know? Each answer says where its numbers come from and what it was checked
        against.
      </p>
      <input
        aria-label="Find a worksheet"
        placeholder="is this bore worn out, stripped thread, in-lb …"
        value={typed}
        onChange={(e) => setTyped(e.target.value)}
      />
      {found.length === 0 && <p className="empty">No worksheet has these words.</p>}
      {typed.trim() ? (
        <WorksheetList worksheets={found} />
      ) : (
        deskGroups.map(({ title, worksheets }) => (
          <section key={title} className="section stack tight">
            <h2>{title}</h2>
            <WorksheetList worksheets={worksheets} />
          </section>
        ))
      )}
    </Page>
  );
}

function WorksheetList({ worksheets }: { worksheets: readonly Worksheet[] }) {
  return (
    <ul className="lines questions">
      {worksheets.map((w) => (
        <li key={w.id}>
          <div>
            <Link href={`/desk/${w.id}`}>
              <b>{w.question}</b>
            </Link>
            <div className="soft">{w.purpose}</div>
          </div>
          <small className="checked">{checkedWords(w)}</small>
        </li>
      ))}
    </ul>
  );
}

/** What outside the program it was checked against, counted; own arithmetic is not counted as outside. */
function checkedWords({ examples }: Worksheet): string {
  const outside = examples.filter(isPublished).length;
  if (outside === 0)
    return `checked by ${examples.length === 1 ? 'a calculation' : `${examples.length} calculations`}`;
  return `checked against ${outside} published ${plural(outside, 'figure')}`;
}
