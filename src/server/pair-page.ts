import { Hono } from 'hono';
import { setCookie } from 'hono/cookie';
import { html } from 'hono/html';
import { atMost } from './body.js';
import { type DoorEnv, deviceCookie, notPaired } from './door.js';
import type { Pairing } from './pairing.js';

const aYearS = 365 * 24 * 3600;
const longestName = 60;
/** bytes, with room for what a browser makes of a name */
const longestForm = 4096;

/**
 * The page behind a code, and its answer. A page that is looked at changes nothing, so that a camera that looks ahead
 * does not use up the code; whoever has no open code learns no more than that.
 */
export function pairPage(pairing: Pairing): Hono<DoorEnv> {
  const app = new Hono<DoorEnv>();
  app.use(async (c, next) => {
    await next();
    c.res.headers.set('Cache-Control', 'no-store');
  });
  app.get('/:code', (c) => {
    if (!pairing.isOpen(c.req.param('code'))) throw notPaired();
    return c.html(form);
  });
  app.post('/:code', atMost(longestForm, 'The name'), async (c) => {
    const code = c.req.param('code');
    if (!pairing.isOpen(code)) throw notPaired(); // before anything that was sent is read
    const given = String((await c.req.parseBody()).name ?? '').trim();
    const token = await pairing.pair(code, given.slice(0, longestName) || 'A phone');
    if (token === undefined) throw notPaired();
    setCookie(c, deviceCookie, token, { httpOnly: true, sameSite: 'Strict', path: '/', maxAge: aYearS });
    return c.redirect('/', 303);
  });
  app.all('*', () => {
    throw notPaired();
  });
  return app;
}

/** What an unpaired device is shown where it asks for a page. */
export const shutPage = (message: string) => page('Not paired', html`<p>${message}</p>`);

const form = page(
  'Pair this device',
  html`<p>It will see and write the shop’s jobs until the bench computer shuts it out.</p>
    <form method="post">
      <label for="name">What is it called?</label>
      <input id="name" name="name" value="Phone in the apron" maxlength="60" autocomplete="off" />
      <button>Pair it</button>
    </form>`,
);

function page(title: string, body: ReturnType<typeof html>) {
  return html`<!doctype html>
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <!-- without a referrer a form would call itself of no origin, and be refused -->
        <meta name="referrer" content="same-origin" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <link rel="icon" href="data:," />
        <title>${title} · Wristpin</title>
        <style>
          :root {
            color-scheme: light dark;
            font: 1.125rem / 1.5 system-ui, sans-serif;
          }
          main {
            max-width: 32rem;
            margin: 3rem auto;
            padding: 0 1rem;
          }
          label,
          input,
          button {
            display: block;
            box-sizing: border-box;
            width: 100%;
            margin: 0.5rem 0;
            font: inherit;
          }
          input,
          button {
            min-height: 3rem;
            padding: 0.5rem 0.75rem;
          }
        </style>
      </head>
      <body>
        <main>
          <h1>${title}</h1>
          ${body}
        </main>
      </body>
    </html>`;
}
