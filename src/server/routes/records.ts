import { type Context, Hono } from 'hono';
import { fold, type Job, localTime } from '../../job/index.js';
import {
  calendar,
  chapters,
  chaptersOfLog,
  labelKinds,
  labelsPdf,
  RecordError,
  type Roll,
  rollLimits,
  type Tables,
  tables,
} from '../../record/index.js';
import { entriesOf, exportJob, printRecord, recordFonts } from '../../shopkeep/index.js';
import { type DoorEnv, originsOf } from '../door.js';
import { ApiError, notFound } from '../error.js';
import type { Parts } from '../parts.js';
import { sendFile } from './send-file.js';

function detailAsked(asked: string | undefined): 'brief' | 'full' | undefined {
  if (asked === undefined || asked === 'brief' || asked === 'full') return asked;
  throw notFound(`There is no record in the form “${asked}”; there are brief and full.`);
}

/** `paper=letter`, `a4` or `roll`; a roll's labels have `width` and `length` in millimetres. */
function labelPaper({ paper = 'letter', width, length }: Record<string, string>): 'letter' | 'a4' | Roll {
  if (paper === 'letter' || paper === 'a4') return paper;
  if (paper !== 'roll') throw notFound(`There are no labels on “${paper}”; there are letter, a4 and roll.`);
  return { width: millimetres('width', width), length: millimetres('length', length) };
}

function millimetres(side: keyof Roll, typed = ''): number {
  const [least, most] = rollLimits[side];
  const mm = Number(typed);
  if (typed.trim() === '' || !(mm >= least && mm <= most))
    throw new ApiError(422, 'bad-request', `${side}: ${least} to ${most} mm.`, side);
  return mm;
}

function chaptersWhile(...asked: Parameters<typeof chaptersOfLog>): string {
  try {
    return chaptersOfLog(...asked);
  } catch (error) {
    if (!(error instanceof RecordError)) throw error;
    throw new ApiError(422, 'bad-request', error.message, error.field);
  }
}

/** What can be taken away from a job: the record to print, labels, calendar, chapters, tables, the whole bundle. */
export function recordRoutes({ store, fonts, clock, network }: Parts): Hono<DoorEnv> {
  const app = new Hono<DoorEnv>();
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
  for (const kind of labelKinds)
    app.get(`/:job/${kind}-labels.pdf`, async (c) => {
      const paper = labelPaper(c.req.query());
      const job = await jobOf(c);
      const printedAt = localTime(clock());
      const port = c.env.incoming.socket.localPort!;
      const address = network && originsOf(network, port)[0];
      const bytes = await labelsPdf(job, kind, {
        fonts: await recordFonts(fonts),
        printedAt,
        paper,
        address,
      });
      return sendFile(c, bytes, `${kind}-labels-tag-${job.tag}.pdf`, 'inline');
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
  app.get('/:job/chapters.vtt', async (c) => {
    const job = await jobOf(c);
    const { from = '', to } = c.req.query();
    return sendFile(c, chaptersWhile(job, { from, to }), `film-tag-${job.tag}.vtt`, 'attachment');
  });
  app.get('/:job/bundle.zip', async (c) => {
    const { bytes, missing } = await exportJob(store, c.req.param('job'));
    c.header('Wristpin-Missing-Pictures', String(missing.length));
    return sendFile(c, bytes, `job-${c.req.param('job')}.zip`, 'attachment');
  });
  return app;
}
