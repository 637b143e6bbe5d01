import { useState } from 'react';
import { Route, Switch } from 'wouter';
import { type Shop, shopLog } from '../../job/index.js';
import { api } from '../data/api.js';
import { changeDevice, useDevice } from '../data/device.js';
import { write } from '../data/outbox.js';
import { queries, useJobs, useShop } from '../data/queries.js';
import { Page } from '../frame/page.js';
import { Button, useAct, Wrong } from '../parts/act.js';
import { amountIn } from '../parts/amount.js';
import { Choices, TextField } from '../parts/field.js';
import { BenchSetup } from './bench-setup.js';
import { Frequencies } from './frequencies.js';
import { Packs } from './packs.js';
import { Phones } from './phones.js';
import { Suppliers } from './suppliers.js';
import { Instruments, Wrenches } from './tools.js';
import { Unsent } from './unsent.js';

/** Tools, instruments, the shop's name and units, this device, backups. The shop is a log of the same form. */
export function ShopPage() {
  return (
    <Switch>
      <Route path="/shop/unsent">
        <Unsent />
      </Route>
      <Route>
        <ShopSheet />
      </Route>
    </Switch>
  );
}

function ShopSheet() {
  const shop = useShop();
  return (
    <Page title={shop.settings['shop-name'] ?? 'The shop'}>
      <Settings shop={shop} key={JSON.stringify(shop.settings)} />
      <Wrenches shop={shop} />
      <Instruments shop={shop} />
      <Suppliers shop={shop} />
      <BenchSetup shop={shop} />
      <Frequencies />
      <Packs shop={shop} />
      <ThisDevice />
      <Phones />
      <Keeping />
      <DemoJobs />
    </Page>
  );
}

function Settings({ shop }: { shop: Shop }) {
  const s = shop.settings;
  const [name, setName] = useState(s['shop-name'] ?? '');
  const [address, setAddress] = useState(s['shop-address'] ?? '');
  const [currency, setCurrency] = useState(s.currency ?? '$');
  const [rate, setRate] = useState(s['hour-rate'] ?? '');
  const { wrong, act } = useAct();
  const keep = (key: keyof typeof s, value: string) =>
    value.trim() === (s[key] ?? '') ? undefined : write(shopLog, 'setting', { key, value: value.trim() });
  const save = () =>
    act(async () => {
      if (rate.trim() !== '') amountIn('Rate an hour', rate, currency);
      await keep('shop-name', name);
      await keep('shop-address', address);
      if (currency.trim() !== (s.currency ?? '$')) await keep('currency', currency);
      await keep('hour-rate', rate);
    });
  return (
    <form
      className="stack tight"
      onSubmit={(e) => {
        e.preventDefault();
        void save();
      }}
    >
      <div className="fields">
        <TextField
          label="Shop’s name"
          value={name}
          onChange={setName}
          help="Stands at the head of every record."
        />
        <TextField label="Address" value={address} onChange={setAddress} />
        <TextField label="Currency sign" value={currency} onChange={setCurrency} />
        <TextField label={`Rate an hour, ${currency}`} value={rate} onChange={setRate} inputMode="decimal" />
      </div>
      <Choices
        label="Which units come first"
        value={s.units === 'metric' ? 'metric' : 'inch'}
        onChange={(units) => void act(() => write(shopLog, 'setting', { key: 'units', value: units }))}
        choices={[
          { id: 'inch', label: 'inch, in-lb, psi' },
          { id: 'metric', label: 'mm, N·m, kPa' },
        ]}
      />
      <Wrong words={wrong} />
      <div>
        <Button type="submit" look="go">
          Keep
        </Button>
      </div>
    </form>
  );
}

function ThisDevice() {
  const { by, theme } = useDevice();
  return (
    <section className="section stack tight">
      <h2>This device</h2>
      <TextField
        label="Who writes here"
        value={by}
        onChange={(v) => changeDevice({ by: v || 'bench' })}
        help="Stands beside every line written on this device."
      />
      <Choices
        label="Light"
        value={theme}
        onChange={(t) => changeDevice({ theme: t })}
        choices={[
          { id: 'auto', label: 'as the device' },
          { id: 'day', label: 'day' },
          { id: 'night', label: 'night' },
        ]}
      />
    </section>
  );
}

function Keeping() {
  return (
    <section className="section stack tight">
      <h2>Backups</h2>
      <p>
        One file is the whole memory of the shop. On the bench computer: <code>wristpin backup FILE</code>{' '}
        copies it, <code>wristpin restore FILE</code> brings it back into an empty store,{' '}
        <code>wristpin verify</code> checks every line and every picture.
      </p>
    </section>
  );
}

/** The invented jobs come and go in one act and never count in the shop's own figures. */
function DemoJobs() {
  const { data: jobs } = useJobs();
  const { wrong, busy, act } = useAct();
  const invented = (jobs ?? []).filter((j) => j.invented).length;
  const change = (work: () => Promise<unknown>) =>
    act(async () => {
      await work();
      await queries.invalidateQueries();
    });
  return (
    <section className="section stack tight">
      <h2>The invented machine</h2>
      <p>For looking round: every stage filled in, nothing in it real.</p>
      <div>
        {invented === 0 ? (
          <Button disabled={busy} onClick={() => void change(api.loadDemo)}>
            Open the invented machine
          </Button>
        ) : (
          <Button look="danger" disabled={busy} onClick={() => void change(api.removeDemo)}>
            Remove the invented machine
          </Button>
        )}
      </div>
      <Wrong words={wrong} />
    </section>
  );
}
