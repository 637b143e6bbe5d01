import { Hono } from 'hono';
import { localTime } from '../../job/index.js';
import { exportJob } from '../bundle.js';
import type { Parts } from '../parts.js';
import { printRecord } from '../record.js';

/** What can be taken away from a job: the record to print, the bundle to keep or to send. */
export function recordRoutes({ store, fonts, clock }: Parts): Hono {
  const app = new Hono();
  app.get('/:job/record.pdf', async (c) => {
    const printedAt = localTime(clock());
    const { job, bytes } = await printRecord(store, c.req.param('job'), { fonts, printedAt });
    return c.body(new Uint8Array(bytes), 200, {
      'Content-Type': 'application/pdf',
      'Content-Disposition': `inline; filename="service-record-tag-${job.tag}.pdf"`,
    });
  });
  app.get('/:job/bundle.zip', async (c) => {
    const { bytes, missing } = await exportJob(store, c.req.param('job'));
    return c.body(new Uint8Array(bytes), 200, {
      'Content-Type': 'application/zip',
      'Content-Disposition': `attachment; filename="job-${c.req.param('job')}.zip"`,
      'Wristpin-Missing-Pictures': String(missing.length),
    });
  });
  return app;
}
