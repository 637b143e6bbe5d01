import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { allSaved, hang, phone, visitShop } from './support.js';

/** Pictures are chosen several at once, and each of them stands or falls alone. */
const visit = visitShop();

test('of four files the second is no picture, and the store refuses the third for good: the others are in the store, the third is on the device with the reason until the person decides', async () => {
  const job = await hang(visit, 44, { architecture: 'overhead-valve' });
  const { page, shop, context } = visit;
  await page.setViewportSize(phone.viewport!);
  await page.goto(`${shop.address}/job/${job}/intake`);
  const files = readdirSync('demo/pictures')
    .slice(0, 3)
    .map((name) => ({ name, mimeType: 'image/jpeg', buffer: readFileSync(`demo/pictures/${name}`) }));
  const [first, third, fourth] = files.map(({ name }) => name.replace('.jpg', ''));
  const reason = 'The store has no room for this one.';
  await page.route(`**/api/pictures/${third}/parts*`, (route) =>
    route.request().method() === 'PUT'
      ? route.fulfill({ status: 413, json: { error: { code: 'too-large', message: reason } } })
      : route.continue(),
  );
  const noPicture = { name: 'torn.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('half a picture') };
  await page
    .locator('main input[type=file]')
    .first()
    .setInputFiles([files[0]!, noPicture, files[1]!, files[2]!]);
  await page.getByRole('alert').filter({ hasText: 'torn.jpg: This picture cannot be read' }).waitFor();
  await page.getByRole('status').filter({ hasText: '1 refused: look' }).first().waitFor();
  const inStore = async (sha256: string | undefined) =>
    (await context.request.get(`${shop.address}/api/pictures/${sha256}`)).status();
  await expect.poll(async () => [await inStore(first), await inStore(fourth)]).toEqual([200, 200]);
  expect(await inStore(third)).toBe(404);

  await page.goto(`${shop.address}/shop/unsent`);
  await page.getByText(reason).waitFor();
  expect(
    await page.locator('img.held').evaluate((img) => (img as HTMLImageElement).naturalWidth),
  ).toBeGreaterThan(0);
  await page.unroute(`**/api/pictures/${third}/parts*`);
  await page.getByRole('button', { name: 'Try again' }).click();
  await allSaved(page);
  await expect.poll(() => inStore(third)).toBe(200);
  const answer = await context.request.get(`${shop.address}/api/jobs/${job}/entries`);
  const { entries } = (await answer.json()) as { entries: { kind: string }[] };
  expect(entries.filter(({ kind }) => kind === 'photograph')).toHaveLength(3);
});
