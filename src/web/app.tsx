import { Suspense } from 'react';
import { Link, Route, Switch, useLocation } from 'wouter';
import { Bench } from './bench/bench.js';
import { Bells } from './frame/bells.js';
import { OnlyThis } from './frame/only-this.js';
import { Page } from './frame/page.js';
import { Undo } from './frame/undo.js';
import { later } from './later.js';

const JobPages = later(() => import('./job-pages.js').then((m) => m.JobPages));
const Desk = later(() => import('./desk/desk.js').then((m) => m.Desk));
const Shop = later(() => import('./shop/shop.js').then((m) => m.ShopPage));

export function App() {
  const [here] = useLocation();
  return (
    <>
      <OnlyThis what="This page" of={here}>
        <Suspense fallback={<Page title="One moment">Opening …</Page>}>
          <Pages />
        </Suspense>
      </OnlyThis>
      <Bells />
      <Undo />
    </>
  );
}

function Pages() {
  return (
    <Switch>
      <Route path="/">
        <Bench />
      </Route>
      <Route path="/job/*">
        <JobPages />
      </Route>
      <Route path="/desk/*?">
        <Desk />
      </Route>
      <Route path="/shop/*?">
        <Shop />
      </Route>
      <Route>
        <NoSuchPage />
      </Route>
    </Switch>
  );
}

const NoSuchPage = () => (
  <Page title="There is no such page">
    <p>
      Nothing is lost. <Link href="/">Back to the bench</Link>
    </p>
  </Page>
);
