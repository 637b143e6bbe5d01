import { expect, test } from 'vitest';
import { allSaved, expectAccessible, hang, openPage, phone, visitShop } from './support.js';

/** What every form does: what is typed outlives the sheet and the page, Enter writes, Escape closes and keeps the draft. */
const visit = visitShop();

const begun = () => visit.page.getByRole('link', { name: /^\d+ begun/ });

test('fields typed at Intake outlive leaving the sheet and loading the page anew, and are said beside “all saved”', async () => {
  const { page, shop } = visit;
  const job = await hang(visit, 61, { architecture: 'side-valve' }, []);
  await page.goto(`${shop.address}/job/${job}/intake`);
  await page.getByLabel('Owner', { exact: true }).fill('Ola Bra');
  await begun().filter({ hasText: '1 begun' }).waitFor();
  await page.goto(`${shop.address}/job/${job}/findings`);
  await page.goto(`${shop.address}/job/${job}/intake`);
  const owner = page.getByLabel('Owner', { exact: true });
  await expect.poll(() => owner.inputValue()).toBe('Ola Bra');
  await page.getByText('begun earlier, not written down yet').waitFor();
  await expectAccessible(page, 'a form begun earlier');
  await owner.fill('Ola Brandt');
  await owner.press('Enter');
  await page.getByText('Owner: Ola Brandt').waitFor();
  await begun().waitFor({ state: 'detached' });
  await allSaved(page);
});

test('Escape closes a dialog and keeps its draft, focus returns, Enter writes, and giving up drops it', async () => {
  const { page } = visit;
  await page.goto(page.url().replace('intake', 'parts'));
  const add = page.getByRole('button', { name: 'Add a part' }).first();
  const dialog = page.getByRole('dialog');
  await add.click();
  await dialog.getByLabel('Part', { exact: true }).fill('head gasket');
  await page.keyboard.press('Escape');
  await dialog.waitFor({ state: 'hidden' });
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Add a part');
  await page.keyboard.press('Enter');
  await dialog.getByText('Begun earlier and not written down yet.').waitFor();
  expect(await dialog.getByLabel('Part', { exact: true }).inputValue()).toBe('head gasket');
  await dialog.getByLabel('How many').fill('two');
  await page.keyboard.press('Enter');
  await dialog.getByRole('alert').filter({ hasText: '“two” is no whole number' }).waitFor();
  expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-invalid'))).toBe('true');
  await dialog.getByLabel('How many').fill('2');
  await page.keyboard.press('Enter');
  await dialog.waitFor({ state: 'hidden' });
  await page.getByText('2 × head gasket').first().waitFor();
  await add.click();
  expect(await dialog.getByLabel('Part', { exact: true }).inputValue()).toBe('');
  await dialog.getByLabel('Part', { exact: true }).fill('not this');
  await dialog.getByRole('button', { name: 'Leave it' }).click();
  await begun().waitFor({ state: 'detached' });
});

test('a bare number takes the unit of the limit beside it', async () => {
  const { page } = visit;
  await page.goto(page.url().replace('parts', 'measure'));
  await page.getByRole('button', { name: 'Add a reading' }).first().click();
  await page.getByLabel('Find a measurement').fill('ring gap');
  await page
    .getByRole('region', { name: 'What is measured' })
    .getByRole('button', { name: /gap/i })
    .first()
    .click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Not more than').fill('0.030 in');
  await dialog.getByLabel('Where the limit comes from').fill('invented sheet, page 3');
  await dialog.getByLabel('Reading').fill('.035');
  await dialog.getByRole('button', { name: 'in: write another unit' }).first().waitFor();
  await dialog.getByRole('button', { name: 'Keep the reading' }).click();
  await dialog.waitFor({ state: 'hidden' });
  await page.getByText('.035 in').first().waitFor();
});

test('on a phone a dialog opens without bringing up the keyboard', async () => {
  const context = await visit.browser.newContext(phone);
  const { page, errors } = await openPage(context, visit.shop.address);
  await page.goto(visit.page.url().replace('measure', 'parts'));
  await page.getByRole('button', { name: 'Add a part' }).filter({ visible: true }).first().click();
  await page.getByRole('dialog').getByLabel('Part', { exact: true }).waitFor();
  expect(await page.evaluate(() => document.activeElement?.tagName)).toBe('DIALOG');
  expect(errors).toEqual([]);
  await context.close();
});
