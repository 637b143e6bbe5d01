import { expect, test } from 'vitest';
import { readAmount } from '../../src/web/form/amount.js';
import { allSaved, visitShop } from './support.js';

/** Sums and plain numbers are kept as a person types them, and what cannot be read is never left out silently. */
const visit = visitShop();

test.each([
  ['150', 150],
  ['37.50', 37.5],
  ['$ 1,200', 1200],
  ['.5', 0.5],
  ['150.', undefined],
  ['1,20', undefined],
  ['a hundred', undefined],
  ['-3', undefined],
  ['', undefined],
] as const)('“%s” reads as %s', (text, amount) => {
  expect(readAmount(text, '$')).toBe(amount);
});

test('a limit typed key by key keeps its point, and can be corrected to nothing and to another', async () => {
  const { page } = visit;
  await page.getByRole('button', { name: 'Hang a tag on a machine' }).click();
  await page.getByLabel('What it is').fill('barn blower');
  await page.getByRole('button', { name: 'Hang the tag' }).click();
  await page.waitForURL('**/intake');
  const limit = page.getByRole('textbox', { name: /Call above/ });
  await limit.pressSequentially('150.50');
  expect(await limit.inputValue()).toBe('150.50');
  for (let i = 0; i < 6; i++) await limit.press('Backspace');
  expect(await limit.inputValue()).toBe('');
  await limit.pressSequentially('250');
  await page.getByRole('button', { name: 'Write it down' }).click();
  await page.getByText('Call above: $250').waitFor();
  await allSaved(page);
});

test('what is no number is said under its field and keeps the form from being written', async () => {
  const { page } = visit;
  await page.getByLabel('Consent given by').fill('Ola Brandt');
  await page.getByRole('textbox', { name: /Call above/ }).fill('a hundred');
  await page.getByText('“a hundred” is no sum').waitFor();
  await page.getByRole('button', { name: 'Write it down' }).click();
  expect(await page.getByText('given by Ola Brandt').count()).toBe(0);
  await page.getByRole('textbox', { name: /Call above/ }).fill('100');
  await page.getByRole('button', { name: 'Write it down' }).click();
  await page.getByText('given by Ola Brandt').waitFor();
});

test('a rate an hour that is no number is refused', async () => {
  const { page, shop } = visit;
  await page.goto(`${shop.address}/shop`);
  await page.getByRole('textbox', { name: /Rate an hour/ }).fill('forty');
  await page.getByRole('button', { name: 'Keep', exact: true }).first().click();
  await page.getByRole('alert').filter({ hasText: '“forty” is no sum' }).waitFor();
});
