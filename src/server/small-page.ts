import { html } from 'hono/html';

/** A page that stands by itself, for a device that may have nothing else of ours. */
export function page(title: string, body: ReturnType<typeof html>) {
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
          figure {
            margin: 1.5rem 0;
          }
          figure svg {
            display: block;
            width: 100%;
            max-height: 14rem;
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
