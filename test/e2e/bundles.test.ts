import { expect, test } from 'vitest';
import { readEntry } from '../../src/job/index.js';
import { writeBundle } from '../../src/record/index.js';
import { expectAccessible, hang, idOf, phone, visitShop } from './support.js';

/** A bundle is looked at before anything of it is taken, and each thing that is here needs a yes of its own. */
const visit = visitShop();

const own = idOf(70, 0);
const entry = (n: number, job: string, kind: string, body: unknown) =>
  readEntry({
    id: idOf(70, n),
    job,
    at: '2026-05-03T09:00:00.000+00:00',
    by: 'their bench',
    kind,
    v: 1,
    body,
  });

test('a bundle of another shop is looked through, refused a yes, given one, and found known the second time', async () => {
  const mine = await hang(visit, 7, { complaint: 'starts and dies' });
  const bytes = await writeBundle({
    entries: [
      entry(1, own, 'open', { tag: 70, title: 'Water pump' }),
      entry(2, own, 'note', { words: 'their words' }),
      entry(3, mine, 'intake', { owner: 'Somebody else' }),
      entry(4, 'shop', 'setting', { key: 'shop-name', value: 'Another’s name' }),
    ],
    pictures: [],
  });
  const { page, shop } = visit;
  await page.setViewportSize(phone.viewport!);
  await page.goto(`${shop.address}/shop`);
  const box = page.getByRole('region', { name: 'Jobs from another shop' });
  const choose = (name: string, buffer: Buffer) =>
    box.locator('input[type=file]').setInputFiles({ name, mimeType: 'application/zip', buffer });
  const kept = async (log: string) => {
    const answer = await visit.context.request.get(`${shop.address}/api/jobs/${log}/entries`);
    return answer.ok() ? ((await answer.json()) as { entries: unknown[] }).entries.length : 0;
  };
  const before = await kept(mine);

  await choose('letter.zip', Buffer.from('no bundle at all'));
  await box.getByRole('alert').waitFor();
  await choose('pump.zip', Buffer.from(bytes));
  await box.getByText('pump.zip: 2 jobs, 0 pictures').waitFor();
  await box.getByText('New: 2 lines.').waitFor();
  await box.getByText('1 line would be added.').waitFor();
  await box.getByText('1 line that would change your own').waitFor();
  expect(await box.getByRole('alert').count()).toBe(0);
  await expectAccessible(page, 'a bundle that is looked through');
  expect([await kept(own), await kept(mine), await kept('shop')]).toEqual([0, before, 0]);

  await box.getByRole('button', { name: 'Take in 1 new job' }).click();
  await box.getByText('Taken in: 2 lines').waitFor();
  await box.getByText('Left out: 1 line for the shop itself.').waitFor();
  await box.getByRole('link', { name: 'Tag 70 · Water pump' }).waitFor();
  expect([await kept(own), await kept(mine), await kept('shop')]).toEqual([2, before, 0]);

  await choose('pump.zip', Buffer.from(bytes));
  await box.getByText('the very ones that were kept here').waitFor();
  await box.getByText('Nothing is chosen to be taken.').waitFor();
  await box.getByLabel('Add 1 line to it').check();
  await box.getByRole('button', { name: 'Take in lines for 1 job of yours' }).click();
  await box.getByText('Taken in: 1 line').waitFor();
  expect([await kept(mine), await kept('shop')]).toEqual([before + 1, 0]);
  expect(visit.errors.filter((words) => !/status of 4\d\d/.test(words))).toEqual([]);
});
