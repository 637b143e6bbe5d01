import { expect, test } from 'vitest';
import { expectAccessible, hang, openPage, phone, visitShop } from './support.js';

const visit = visitShop();

const bowlRing = {
  part: 'bowl-ring',
  name: 'Bowl ring',
  count: 1,
  state: 'ordered',
  number: 'OX-195-32',
};

test('typed words find a job and the line; a touch leads to it, and Back to what was found', async () => {
  await hang(visit, 41, { machine: 'Tiller', owner: 'O. Finch' }, [['part', bowlRing]]);
  await hang(visit, 42, { machine: 'Blower', owner: 'P. Amadi' });
  const { page } = visit;
  await page.goto(visit.shop.address);
  const field = page.getByLabel('Find in all jobs');
  await field.fill('ox-195');
  const found = page.getByRole('region', { name: 'What is found' });
  await found.getByRole('link', { name: /Bowl ring: ordered/ }).waitFor();
  await found.getByRole('status').filter({ hasText: '1 job' }).waitFor();
  await expectAccessible(page, 'what is found');
  await found.getByRole('link', { name: /Bowl ring: ordered/ }).click();
  await page.locator('.line.looked-for').filter({ hasText: 'OX-195-32' }).waitFor();
  expect(new URL(page.url()).pathname).toMatch(/\/parts$/);
  await page.goBack();
  await found.getByRole('link', { name: /Bowl ring: ordered/ }).waitFor();
  expect(await field.inputValue()).toBe('ox-195');
  await page.getByRole('link', { name: 'Bench', exact: true }).click();
  await page.getByRole('link', { name: 'Tag 42: Blower' }).waitFor();
  expect(await field.inputValue()).toBe('');
});

test('nothing found says so, and without the store what is known here is looked through', async () => {
  const { page } = visit;
  await page.goto(visit.shop.address);
  const field = page.getByLabel('Find in all jobs');
  await field.fill('gearbox');
  await page.getByText('Nothing found. Fewer letters').waitFor();
  await page.route('**/api/find*', (route) => route.abort());
  await field.fill('blow');
  await page.getByText('cannot be reached: only tag').waitFor();
  await page.getByRole('link', { name: 'Tag 42: Blower' }).waitFor();
  await page.unroute('**/api/find*');
});

test('on a phone the line that was looked for is in sight', async () => {
  const context = await visit.browser.newContext(phone);
  const { page } = await openPage(context, `${visit.shop.address}/?find=finch`);
  await page.getByRole('link', { name: /Owner: O\. Finch/ }).click();
  await page.locator('.line.looked-for').filter({ hasText: 'Finch' }).waitFor({ state: 'visible' });
  await context.close();
});
