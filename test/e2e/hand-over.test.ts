import { expect, test } from 'vitest';
import { hang, visitShop } from './support.js';

/** Who may take a machine away. */
const visit = visitShop();

async function handOver(job: string) {
  const { page, shop } = visit;
  await page.goto(`${shop.address}/job/${job}/hand-over`);
  await page.getByRole('heading', { level: 1 }).waitFor();
  return { page, go: page.getByRole('button', { name: 'Hand over', exact: true }).first() };
}
const machine = { architecture: 'overhead-valve', owner: 'Ola Brandt' };
const decided = (choice: string) =>
  ['decision', { about: 'machine', title: 'decided', choice, reason: 'with the owner' }] as const;

test('a machine that nobody has run up is not handed over, and the sheet says what was not shown', async () => {
  const { page, go } = await handOver(await hang(visit, 41, machine, [decided('repair')]));
  await page.getByRole('heading', { name: 'Not to be handed over yet' }).waitFor();
  await page.getByRole('heading', { name: 'Not shown to be safe yet' }).waitFor();
  await page.getByText('Stop control stops it in each position').first().waitFor();
  expect(await go.isDisabled()).toBe(true);
});

test('what goes to scrap is handed over without a run-up', async () => {
  const { page, go } = await handOver(await hang(visit, 42, machine, [decided('scrap')]));
  // nothing of it was repaired: it is not called ready, it goes back as it is with what is unsafe named
  await page.getByRole('heading', { name: 'To be handed back as it is' }).waitFor();
  expect(await go.isDisabled()).toBe(false);
});
