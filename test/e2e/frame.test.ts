import { expect, test } from 'vitest';
import { hang, visitShop } from './support.js';

/** What stands round every sheet. */
const visit = visitShop();

test('a job’s page is as tall as its window: the sheet and the log scroll, the page does not', async () => {
  const job = await hang(visit, 31, { architecture: 'overhead-valve' });
  for (const stage of ['intake', 'findings', 'run-up']) {
    await visit.page.goto(`${visit.shop.address}/job/${job}/${stage}`);
    await visit.page.getByRole('heading', { level: 1 }).waitFor();
    const over = await visit.page.evaluate(() => document.documentElement.scrollHeight - window.innerHeight);
    expect(over, stage).toBeLessThanOrEqual(0);
  }
});
