import { type Context, Hono } from 'hono';
import { fold, type Job, localTime } from '../../job/index.js';
import { bagLabelsPdf, calendar, chapters, type Tables, tables } from '../../record/index.js';
import { entriesOf, exportJob, printRecord, recordFonts } from '../../shopkeep/index.js';
import { notFound } from '../error.js';
import type { Parts } from '../parts.js';

const types = {
  pdf: 'application/pdf',
  zip: 'application/zip',
  ics: 'text/calendar; charset=utf-8',
  csv: 'text/csv; charset=utf-8',
  vtt: 'text/vtt; charset=utf-8',
} as const;

/** A document under a name that a download keeps: the tag's number stands in it. */
function sendFile(c: Context, body: Uint8Array | string, name: string, way: 'inline' | 'attachment') {
  const ending = name.slice(name.lastIndexOf('.') + 1) as keyof typeof types;
  const headers = { 'Content-Type': types[ending], 'Content-Disposition': `${way}; filename="${name}"` };
  return typeof body === 'string' ? c.body(body, 200, headers) : c.body(new Uint8Array(body), 200, headers);
}

function detailAsked(asked: string | undefined): 'brief' | 'full' | undefined {
  if (asked === undefined || asked === 'brief' || asked === 'full') return asked;
  throw notFound(`There is no record in the form “${asked}”; there are brief and full.`);
}

/** What can be taken away from a job: the record to print, labels, calendar, chapters, tables, the whole bundle. */
export function recordRoutes({ store, fonts, clock }: Parts): Hono {
  const app = new Hono();
  const jobOf = async (c: Context): Promise<Job> => {
    const id = c.req.param('job') ?? '';
    return fold(id, await entriesOf(store, id));
  };
  app.get('/:job/record.pdf', async (c) => {
    const printedAt = localTime(clock());
    const detail = detailAsked(c.req.query('detail'));
    const { job, bytes } = await printRecord(store, c.req.param('job'), { fonts, printedAt, detail });
    return sendFile(c, bytes, `service-record-tag-${job.tag}.pdf`, 'inline');
  });
  app.get('/:job/bag-labels.pdf', async (c) => {
    const job = await jobOf(c);
    const bytes = await bagLabelsPdf(job, { fonts: await recordFonts(fonts), printedAt: localTime(clock()) });
    return sendFile(c, bytes, `bag-labels-tag-${job.tag}.pdf`, 'inline');
  });
  app.get('/:job/calendar.ics', async (c) => {
    const job = await jobOf(c);
    return sendFile(c, calendar(job, { now: clock().toISOString() }), `tag-${job.tag}.ics`, 'attachment');
  });
  app.get('/:job/tables/:name{[a-z]+\\.csv}', async (c) => {
    const job = await jobOf(c);
    const name = c.req.param('name').replace('.csv', '');
    const all = tables(job);
    if (!Object.hasOwn(all, name))
      throw notFound(`There is no table “${name}”; there are ${Object.keys(all).join(', ')}.`);
    return sendFile(c, all[name as keyof Tables], `${name}-tag-${job.tag}.csv`, 'attachment');
  });
  app.get('/:job/films/:number{[0-9]+}/chapters.vtt', async (c) => {
    const job = await jobOf(c);
    const film = chapters(job)[Number(c.req.param('number')) - 1];
    if (!film) throw notFound(`Tag ${job.tag} names ${chapters(job).length} films.`);
    return sendFile(c, film.text, `film-${c.req.param('number')}-tag-${job.tag}.vtt`, 'attachment');
  });
  app.get('/:job/bundle.zip', async (c) => {
    const { bytes, missing } = await exportJob(store, c.req.param('job'));
    c.header('Wristpin-Missing-Pictures', String(missing.length));
    return sendFile(c, bytes, `job-${c.req.param('job')}.zip`, 'attachment');
  });
  return app;
}
