import { expect, test } from 'vitest';
import { findWorksheet } from '../../../src/desk/index.js';
import { isPublished } from '../../../src/worksheet/index.js';
import { phone } from '../support.js';
import { expectFits, openShowroom, visitRoom } from './showroom.js';

const room = openShowroom();

test('every worksheet of the reference desk answers its example within its window, and calls it published only where it is', () =>
  visitRoom(room, phone, async (page) => {
    await page.goto(`${room.shop.address}/desk`);
    await page.locator('main li a').first().waitFor();
    const addresses = await page
      .locator('main li a')
      .evaluateAll((links) => links.map((a) => (a as HTMLAnchorElement).href));
    expect(addresses.length).toBeGreaterThanOrEqual(40);
    for (const address of addresses) {
      await page.locator(`main li a[href="${new URL(address).pathname}"]`).click();
      const [example] = findWorksheet(address.split('/').at(-1)!)!.examples;
      const kind = isPublished(example!) ? 'published' : 'worked';
      await page.getByRole('button', { name: `Fill in a ${kind} example`, exact: true }).click();
      await page.locator('.answers li, .wrong-box').first().waitFor();
      await expectFits(page, address);
      await page.goBack();
    }
  }));
