import { useState } from 'react';
import { Link, Route, Switch } from 'wouter';
import { desk, findWorksheet } from '../../desk/index.js';
import type { Worksheet } from '../../worksheet/index.js';
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

const textOf = (w: Worksheet) =>
  `${w.question} ${w.title} ${w.purpose} ${w.fields.map((f) => f.label).join(' ')}`.toLowerCase();

function DeskList() {
  const [find, setFind] = useState('');
  const words = find.trim().toLowerCase().split(/\s+/).filter(Boolean);
  const found = desk.filter((w) => words.every((word) => textOf(w).includes(word)));
  return (
    <Page title="Reference desk">
      <p className="say">
        What do you want to know? Each answer says where its numbers come from and what it was checked
        against.
      </p>
      <input
        aria-label="Find a worksheet"
        placeholder="find: torque, thread, wrench, in-lb …"
        value={find}
        onChange={(e) => setFind(e.target.value)}
      />
      {found.length === 0 && <p className="empty">No worksheet has these words.</p>}
      <ul className="lines">
        {found.map((w) => (
          <li key={w.id}>
            <div>
              <Link href={`/desk/${w.id}`}>
                <b>{w.question}</b>
              </Link>
              <div className="soft">{w.purpose}</div>
            </div>
          </li>
        ))}
      </ul>
    </Page>
  );
}
