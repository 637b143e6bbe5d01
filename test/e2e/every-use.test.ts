import { describe, expect, test } from 'vitest';
import { builtInCatalog } from '../../src/catalog/index.js';
import { engineNow } from '../../src/diagnose/index.js';
import { fold, type RawEntry } from '../../src/job/index.js';
import { door } from '../job/door.js';
import { FindingsSheet } from './findings-support.js';
import { hang, type Line, send, visitShop } from './support.js';

/** Each use of the catalog from what its owner says to a machine that may leave; what no machine has of its own is written as lines. */
const visit = visitShop();
const catalog = builtInCatalog();
const handheld = new Set(['saw', 'trimmer', 'blower']);

const factsOf = (use: string): Record<string, string> => ({
  architecture: handheld.has(use) ? 'two-stroke' : 'overhead-valve',
  ignition: 'solid-state',
  fuelSystem: handheld.has(use) ? 'diaphragm' : 'float-bowl',
  shaft: use === 'mower' ? 'vertical' : 'horizontal',
  starter: 'rope',
  use,
});

/** A complaint of this use, a usual fault behind it that only this use has, and the look that shows it. */
function storyOf(use: string) {
  const own = catalog.faults.filter(({ when }) => when?.use?.includes(use)).map(({ id }) => id);
  const complaints = catalog.complaints.filter(({ when }) => when?.use?.includes(use));
  for (const complaint of complaints)
    for (const fault of complaint.commonFaults.map((each) => each.fault).filter((id) => own.includes(id)))
      for (const check of catalog.checks.filter(({ when }) => when?.use?.includes(use)))
        for (const link of check.links)
          if (link.fault === fault && link.strength === 'seen')
            return { complaint: complaint.id, fault, check, outcome: link.outcomes[0]! };
  throw new Error(`no complaint of ${use} leads to a fault of its own`);
}

const stage = (name: string) =>
  visit.page
    .getByRole('navigation', { name: 'Stages' })
    .getByRole('link', { name: new RegExp(`^${name}`) })
    .click();

async function shown() {
  const { page } = visit;
  await page.getByRole('button', { name: 'Next step', exact: true }).first().click();
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('button', { name: 'In order', exact: true }).click();
  await dialog.waitFor({ state: 'hidden' });
}

/** What the server holds of the job, folded: why it may not leave. */
async function barredBy(job: string): Promise<readonly string[]> {
  const answer = await visit.context.request.get(`${visit.shop.address}/api/jobs/${job}/entries`);
  const { entries } = (await answer.json()) as { entries: RawEntry[] };
  return door(fold(job, entries)).gates.find((g) => g.stage === 'hand-over')!.blocks;
}

describe('from the complaint to a machine that may leave', () => {
  test.each(catalog.uses.map(({ id }, n) => [id, 200 + n] as const))('%s', async (use, tag) => {
    const { page, shop } = visit;
    const facts = factsOf(use);
    const { complaint, fault, check, outcome } = storyOf(use);
    const job = await hang(visit, tag, { machine: 'Invented', complaints: [complaint], ...facts });
    await page.goto(`${shop.address}/job/${job}/findings`);
    const sheet = new FindingsSheet(page);
    const name = catalog.faults.find(({ id }) => id === fault)!.name;
    await sheet.see(check.title, check.outcomes.find(({ id }) => id === outcome)!.words);
    expect(await sheet.likely(name)).toBeGreaterThan(70);
    await sheet.decide(name, 'Repaired');

    const now = engineNow(catalog, { facts, seen: [] });
    const steps = catalog.runUp.filter((step) => now.concerns(step));
    const left = steps.filter(
      ({ barsHandOver, answer, when }) =>
        barsHandOver && answer === 'done' && (when?.pieces ?? []).some((id) => isOnlyOf(use, id)),
    );
    expect(left.length, 'safety points of the tool').toBeGreaterThan(0);
    const about = { about: 'machine', title: 'decided', choice: 'repair', reason: 'with the owner' };
    const others: Line[] = steps
      .filter((step) => !left.includes(step))
      .map((step) => ['run-up', { item: step.id, title: step.title, result: 'ok', words: 'shown' }]);
    await send(visit, job, tag + 1000, [['decision', about], ...others], '2026-05-20T09:00:00.000+00:00');
    await page.reload();
    await stage('Hand-over');
    for (const { title } of left) await page.getByText(`not shown to be safe: ${title}`).first().waitFor();
    await stage('Run-up');
    for (const _ of left) await shown();
    await stage('Hand-over');
    await page.getByText(/not shown to be safe/i).waitFor({ state: 'detached' });
    await expect.poll(() => barredBy(job)).toEqual([]);
    expect(visit.errors).toEqual([]);
  });
});

const isOnlyOf = (use: string, piece: string): boolean =>
  catalog.components.some((c) => c.id === piece && c.onlyOn?.use?.includes(use));
