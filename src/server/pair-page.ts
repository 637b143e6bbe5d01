import { createHash } from 'node:crypto';
import { Hono } from 'hono';
import { getCookie, setCookie } from 'hono/cookie';
import { html, raw } from 'hono/html';
import { atMost } from './body.js';
import { type DoorEnv, deviceCookie, type Network, notPaired, pairedDevice, schemeOf } from './door.js';
import { ApiError } from './error.js';
import { smallPage, withPolicy } from './headers.js';
import type { Pairing } from './pairing.js';
import { page } from './small-page.js';
import { whatItOpens } from './trust-pictures.js';

const aYearS = 365 * 24 * 3600;
const longestName = 60;
/** bytes, with room for what a browser makes of a name */
const longestForm = 4096;

/**
 * The page behind a code, and its answer. A page that is looked at changes nothing, so that a camera that looks ahead
 * does not use up the code; whoever has no open code learns no more than that.
 */
export function pairPage(pairing: Pairing, network: Network | undefined): Hono<DoorEnv> {
  const app = new Hono<DoorEnv>();
  app.use(withPolicy(smallPage));
  app.use(async (c, next) => {
    await next();
    c.res.headers.set('Cache-Control', 'no-store');
  });
  app.get('/over/:code', async (c) => {
    const token = await pairing.steppedOver(c.req.param('code'));
    if (token === undefined) throw notPaired();
    letIn(c, token);
    return c.redirect('/', 303);
  });
  app.get('/:code', async (c) => {
    if (pairing.isOpen(c.req.param('code'))) return c.html(form(network?.trust !== undefined));
    await pairedDevice(c, pairing); // the code is used up and this device is in: the page behind it is the shop
    return c.redirect('/', 303);
  });
  app.post(
    '/:code',
    async (c, next) => {
      if (!pairing.isOpen(c.req.param('code'))) throw notPaired(); // before anything that was sent is read
      await next();
    },
    atMost(longestForm, 'The name'),
    async (c) => {
      const given = await c.req.parseBody().catch(() => {
        throw new ApiError(400, 'bad-form', 'The name cannot be read. Nothing was changed; try again.');
      });
      const name = String(given.name ?? '').trim();
      const before = getCookie(c, deviceCookie);
      const token = await pairing.pair(c.req.param('code'), name.slice(0, longestName) || 'A phone', before);
      if (token === undefined) throw notPaired();
      letIn(c, token);
      return c.redirect('/', 303);
    },
  );
  app.all('*', () => {
    throw notPaired();
  });
  return app;
}

/**
 * Lax: a link to the shop on another page opens it as the paired device; what a page of another site sends by itself goes
 * without it. One that was given over an encrypted line is never sent over another.
 */
function letIn(c: Parameters<typeof schemeOf>[0], token: string): void {
  const secure = schemeOf(c) === 'https';
  setCookie(c, deviceCookie, token, { httpOnly: true, sameSite: 'Lax', secure, path: '/', maxAge: aYearS });
}

/**
 * What an unpaired device is shown where it asks for a page. One that was shut out may still hold what it wrote: its own
 * browser counts that, and nobody is told of it but the person who holds the device.
 */
export const shutPage = (message: string) =>
  page(
    'Not paired',
    html`<p>${message}</p>
      <p id="held" role="status"></p>
      <script>${raw(countHeld)}</script>`,
  );

/** Under the name that the application keeps its outbox by; it is looked at and not made. */
const countHeld = `
indexedDB.databases().then((all) => {
  if (!all.some((each) => each.name === 'wristpin-outbox')) return;
  indexedDB.open('wristpin-outbox').onsuccess = ({ target: { result: db } }) => {
    const tx = db.transaction(['entries', 'pictures']);
    const lines = tx.objectStore('entries').count();
    const pictures = tx.objectStore('pictures').count();
    tx.oncomplete = () => {
      const say = (n, one) => n > 0 && n + ' ' + one + (n === 1 ? '' : 's');
      const held = [say(lines.result, 'line'), say(pictures.result, 'picture')].filter(Boolean);
      if (held.length === 0) return;
      const one = lines.result + pictures.result === 1;
      document.getElementById('held').textContent = held.join(' and ') + (one ? ' is' : ' are') +
        ' still on this device and not in the shop’s store. ' + (one ? 'It is' : 'They are') +
        ' sent as soon as it is paired again. Do not clear this browser’s data until then.';
    };
  };
});
`;

/** Nothing runs on that page but the counting. */
export const shutPagePolicy = [
  "default-src 'none'",
  "style-src 'unsafe-inline'",
  'img-src data:',
  `script-src 'sha256-${createHash('sha256').update(countHeld).digest('base64')}'`,
].join('; ');

const form = (trust: boolean) =>
  page(
    'Pair this device',
    html`<p>It will see and write the shop’s jobs until the bench computer shuts it out.</p>
      <form method="post">
        <label for="name">What is it called?</label>
        <input id="name" name="name" value="Phone in the apron" maxlength="60" autocomplete="off" />
        <button>Pair it</button>
      </form>
      ${trust ? trustToo : ''}`,
  );

const trustToo = html`<section class="card">
  <h2>Once it trusts the bench, it does more</h2>
  ${raw(whatItOpens)}
  <a class="button plain" href="/trust/">How, in four pictures</a>
  <p class="soft">Now or later: on a paired phone it stands under Shop.</p>
</section>`;
