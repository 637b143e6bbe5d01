import { expect, test } from 'vitest';
import { stages } from '../../src/job/index.js';
import { allSaved, hang, openPage, phone, visitShop } from './support.js';

const visit = visitShop();

test('the camera is one touch away on every sheet of a phone, and the picture stands at that sheet', async () => {
  const job = await hang(visit, 46, { machine: 'Pump', architecture: 'overhead-valve' });
  const context = await visit.browser.newContext(phone);
  const { page } = await openPage(context, `${visit.shop.address}/job/${job}/intake`);
  for (const stage of stages) {
    await page.goto(`${visit.shop.address}/job/${job}/${stage}`);
    const camera = page.locator('nav.bottom input[capture]');
    await camera.waitFor({ state: 'attached' });
    const box = await page.locator('nav.bottom label.camera').boundingBox();
    expect(Math.min(box!.width, box!.height), stage).toBeGreaterThanOrEqual(44);
    await camera.setInputFiles({ name: `${stage}.png`, mimeType: 'image/png', buffer: await drawn(stage) });
    await allSaved(page);
    await expect.poll(() => stagesWithPicture(job), { timeout: 45_000 }).toContain(stage);
  }
  await context.close();

  async function drawn(words: string): Promise<Buffer> {
    const base64 = await page.evaluate((text) => {
      const canvas = Object.assign(document.createElement('canvas'), { width: 320, height: 240 });
      const on = canvas.getContext('2d')!;
      on.fillText(text, 20, 120);
      return canvas.toDataURL('image/png').split(',')[1]!;
    }, words);
    return Buffer.from(base64, 'base64');
  }
});

async function stagesWithPicture(job: string): Promise<string[]> {
  const answer = await visit.context.request.get(`${visit.shop.address}/api/jobs/${job}/entries`);
  const { entries } = (await answer.json()) as { entries: { kind: string; body: { stage: string } }[] };
  return entries.filter(({ kind }) => kind === 'photograph').map(({ body }) => body.stage);
}
