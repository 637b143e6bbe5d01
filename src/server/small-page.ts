import { html } from 'hono/html';

const look = html`<style>
  /* paper and ink as in web/look/tokens.css, which a device that is not let in is not given; a test holds them together */
  :root {
    color-scheme: light dark;
    --paper: light-dark(#f4efe4, #14171b);
    --sheet: light-dark(#fffdf7, #1c2025);
    --ink: light-dark(#20242a, #efe9db);
    --soft: light-dark(#575e68, #a9adb3);
    --rule: light-dark(#d8d0bf, #343a42);
    --accent: light-dark(#1d5c70, #83cadf);
    --accent-ink: light-dark(#ffffff, #0d1a1f);
    font: 1.0625rem / 1.5 system-ui, sans-serif;
    background: var(--paper);
    color: var(--ink);
  }
  body {
    margin: 0;
  }
  main {
    max-width: 34rem;
    margin: 0 auto;
    padding: 1.5rem 1rem 3rem;
  }
  h1 {
    margin: 0 0 0.75rem;
    font-size: 1.6rem;
    line-height: 1.2;
  }
  h2 {
    margin: 0 0 0.5rem;
    font-size: 1.0625rem;
  }
  a {
    color: var(--accent);
  }
  label,
  input,
  button,
  .button {
    display: block;
    box-sizing: border-box;
    width: 100%;
    font: inherit;
  }
  label {
    font-weight: 600;
  }
  input,
  button,
  .button {
    min-height: 3rem;
    margin: 0.5rem 0 0.75rem;
    padding: 0.65rem 0.875rem;
    border: 1.5px solid var(--ink);
    border-radius: 9px;
  }
  input {
    background: var(--sheet);
    color: var(--ink);
  }
  button,
  .button {
    border-color: var(--accent);
    background: var(--accent);
    color: var(--accent-ink);
    font-weight: 600;
    text-align: center;
    text-decoration: none;
  }
  .plain {
    border-color: var(--ink);
    background: none;
    color: var(--ink);
  }
  :focus-visible {
    outline: 3px solid var(--accent);
    outline-offset: 2px;
  }
  code {
    overflow-wrap: anywhere;
  }
  .soft {
    color: var(--soft);
  }
  figure,
  .card {
    margin: 1rem 0;
    padding: 1rem;
    border: 1px solid var(--rule);
    border-radius: 12px;
    background: var(--sheet);
  }
  figure svg {
    display: block;
    width: 100%;
    max-height: 9rem;
    margin-bottom: 0.5rem;
  }
  .opens {
    display: grid;
    grid-template-columns: 1fr 1fr;
    gap: 0.75rem;
    margin: 0 0 0.75rem;
    padding: 0;
    list-style: none;
  }
  .opens li {
    display: flex;
    gap: 0.6rem;
    align-items: center;
    line-height: 1.25;
  }
  .opens svg {
    flex: none;
    width: 2rem;
    height: 2rem;
  }
</style>`;

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
        ${look}
      </head>
      <body>
        <main>
          <h1>${title}</h1>
          ${body}
        </main>
      </body>
    </html>`;
}
