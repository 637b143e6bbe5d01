import { Route, Switch } from 'wouter';
import { type Shop, shopLog } from '../../job/index.js';
import { api } from '../data/api.js';
import { useClockBehind } from '../data/bench-clock.js';
import { changeDevice, signature, useDevice } from '../data/device.js';
import { write } from '../data/outbox.js';
import { queries, useJobCounts, useShop } from '../data/queries.js';
import { Asked, FormBox } from '../form/form.js';
import { useForm } from '../form/use-form.js';
import { clockWords } from '../frame/bench-contact.js';
import { Page } from '../frame/page.js';
import { Button, useAct, Wrong } from '../parts/act.js';
import { Choices, TextField } from '../parts/field.js';
import { BenchSetup } from './bench-setup.js';
import { Bundles } from './bundles.js';
import { Frequencies } from './frequencies.js';
import { BackupDue, Keeping, PictureOrigin } from './keeping.js';
import { Packs } from './packs.js';
import { Phones } from './phones.js';
import { changedSettings } from './settings.js';
import { Suppliers } from './suppliers.js';
import { Instruments, Wrenches } from './tools.js';
import { Unsent } from './unsent.js';
import { TeachVoice, VoiceSwitches } from './voice.js';

/** Tools, instruments, the shop's name and units, this device, backups. The shop is a log of the same form. */
export function ShopPage() {
  return (
    <Switch>
      <Route path="/shop/unsent">
        <Unsent />
      </Route>
      <Route path="/shop/voice">
        <TeachVoice />
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
      <BackupDue />
      <Settings shop={shop} />
      <Wrenches shop={shop} />
      <Instruments shop={shop} />
      <Suppliers shop={shop} />
      <BenchSetup shop={shop} />
      <Frequencies />
      <Packs shop={shop} />
      <ThisDevice />
      <VoiceSwitches />
      <Phones />
      <PictureOrigin shop={shop} />
      <Bundles />
      <Keeping />
      <DemoJobs />
    </Page>
  );
}

function Settings({ shop }: { shop: Shop }) {
  const s = shop.settings;
  const currency = s.currency ?? '$';
  const { wrong, act } = useAct();
  const form = useForm({
    job: shopLog,
    kind: 'setting',
    handle: 'shop',
    title: 'The shop’s name and rate',
    fields: {
      $name: {
        as: 'text',
        label: 'Shop’s name',
        begin: s['shop-name'] ?? '',
        help: 'Stands at the head of every record.',
      },
      $address: { as: 'text', label: 'Address', begin: s['shop-address'] ?? '' },
      $currency: { as: 'text', label: 'Currency sign', begin: currency },
      $rate: { as: 'number', currency, label: `Rate an hour, ${currency}`, begin: s['hour-rate'] ?? '' },
    },
    lines: (_, given) =>
      changedSettings(shop, {
        'shop-name': String(given.$name),
        'shop-address': String(given.$address),
        ...(given.$currency !== currency && { currency: String(given.$currency) }),
        'hour-rate': String(given.$rate),
      }),
  });
  return (
    <FormBox form={form} keep="Keep" className="stack tight">
      <Asked form={form} />
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
    </FormBox>
  );
}

function ThisDevice() {
  const { by = '', theme } = useDevice();
  const clock = clockWords(useClockBehind());
  return (
    <section className="section stack tight">
      <h2>This device</h2>
      <TextField
        label="Who writes here"
        value={by === 'bench' ? '' : by}
        onChange={(v) => changeDevice({ by: v || undefined })}
        help={`Every line written here is signed “${signature()}”.`}
      />
      {clock && <p>{clock}. Lines are dated by the bench’s clock.</p>}
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

/** The invented jobs come and go in one act and never count in the shop's own figures. */
function DemoJobs() {
  const counts = useJobCounts();
  const { wrong, busy, act } = useAct();
  const invented = counts?.invented ?? 0;
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
