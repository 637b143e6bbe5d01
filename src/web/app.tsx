import { Suspense } from 'react';
import { Link, Route, Switch } from 'wouter';
import { Bench } from './bench/bench.js';
import { Page } from './frame/page.js';
import { later } from './later.js';

const JobPages = later(() => import('./job-pages.js').then((m) => m.JobPages));
const Desk = later(() => import('./desk/desk.js').then((m) => m.Desk));
const Shop = later(() => import('./shop/shop.js').then((m) => m.ShopPage));

export function App() {
  return (
    <Suspense fallback={<Page title="One moment">Opening …</Page>}>
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
    </Suspense>
  );
}

const NoSuchPage = () => (
  <Page title="There is no such page">
    <p>
      Nothing is lost. <Link href="/">Back to the bench</Link>
    </p>
  </Page>
);
