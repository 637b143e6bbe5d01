import '@fontsource/atkinson-hyperlegible-next/latin-400.css';
import '@fontsource/atkinson-hyperlegible-next/latin-600.css';
import '@fontsource/atkinson-hyperlegible-next/latin-700.css';
import '@fontsource/atkinson-hyperlegible-next/latin-ext-400.css';
import './look/tokens.css';
import './look/ground.css';
import './look/parts.css';
import './look/rested.css';
import './look/frame.css';
import './look/findings.css';
import './look/joint.css';
import './look/plan.css';
import './look/desk.css';
import './look/measure.css';
import './look/worth.css';
import './look/run-up.css';
import './look/supply.css';
import './look/bench.css';
import './look/mat.css';
import './look/film.css';
import { QueryClientProvider } from '@tanstack/react-query';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app.js';
import { followBells } from './data/bells.js';
import { applyTheme } from './data/device.js';
import { askToKeep } from './data/keeps-for.js';
import { startOutbox, whenBackAgain } from './data/outbox.js';
import { followChanges, queries } from './data/queries.js';
import { drafts } from './form/drafts.js';
import { keepPages } from './keep-pages.js';
import { fetchAhead } from './later.js';
import { steadyHands } from './parts/steady-hands.js';

applyTheme();
steadyHands();
void startOutbox();
void askToKeep();
void drafts.load();
followChanges();
followBells();

const root = document.getElementById('root');
if (!root) throw new Error('the page has no root');
createRoot(root).render(
  <StrictMode>
    <QueryClientProvider client={queries}>
      <App />
    </QueryClientProvider>
  </StrictMode>,
);
const keepAll = () => {
  keepPages();
  fetchAhead();
};
keepAll();
whenBackAgain(keepAll);
