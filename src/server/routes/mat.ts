import { Hono } from 'hono';
import { matPdf } from '../../record/index.js';
import { recordFonts } from '../../shopkeep/index.js';
import { matPapers } from '../../sight/index.js';
import { notFound } from '../error.js';
import type { Parts } from '../parts.js';
import { sendFile } from './send-file.js';

/** The mat on which parts are photographed, for the printer. */
export function matRoutes({ fonts }: Parts): Hono {
  const app = new Hono();
  app.get('/:paper{[a-z0-9]+\\.pdf}', async (c) => {
    const asked = c.req.param('paper').replace('.pdf', '');
    const paper = matPapers.find((each) => each === asked);
    if (!paper) throw notFound(`There is no mat on “${asked}”; there are ${matPapers.join(' and ')}.`);
    return sendFile(c, await matPdf(paper, await recordFonts(fonts)), `mat-${paper}.pdf`, 'inline');
  });
  return app;
}
