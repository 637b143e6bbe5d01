import type { Locator, Page } from 'playwright-core';
import type { Stage } from '../../src/job/index.js';

/** A sheet of the finished demonstration job, and the one tap on it that writes a line. */
interface SheetTap {
  readonly stage: Stage;
  /** all that a person does before, and the button that writes */
  readonly ready: (page: Page) => Promise<Locator>;
}

const button = (within: Page | Locator, name: string | RegExp) =>
  within.getByRole('button', { name, exact: typeof name === 'string' }).first();

/** Opens a dialog, fills it in as far as it needs, and gives its button. */
async function inDialog(
  page: Page,
  opener: string | RegExp,
  keep: string | RegExp,
  fill?: (dialog: Locator) => Promise<void>,
): Promise<Locator> {
  await button(page.locator('main'), opener).click();
  const dialog = page.getByRole('dialog');
  await dialog.waitFor();
  await fill?.(dialog);
  return button(dialog, keep);
}

export const sheetTaps: readonly SheetTap[] = [
  {
    stage: 'intake',
    ready: async (page) => {
      await page.getByLabel('Missing or damaged already').fill('nothing more');
      return button(page, 'Write it down');
    },
  },
  {
    stage: 'findings',
    // the machine has left the shop: nothing is proposed, what is seen all the same is logged from the list
    ready: async (page) => {
      await page.getByLabel('Find a check').fill('Spark across open');
      return inDialog(page, /^(Again|Log it)$/, 'strong');
    },
  },
  {
    stage: 'worth-it',
    ready: (page) =>
      inDialog(page, 'Decide', 'Write the decision down', async (dialog) => {
        await dialog.getByLabel('Repair', { exact: true }).check();
        await dialog.getByLabel('Why').fill('a sound bore');
      }),
  },
  { stage: 'parts', ready: async (page) => button(page, /is no longer offered$/) },
  { stage: 'teardown', ready: async (page) => button(page, /^Drop /) },
  {
    stage: 'measure',
    ready: (page) =>
      inDialog(page, 'Decide', 'Decide', async (dialog) => {
        await dialog.getByRole('radio').first().check();
        await dialog.getByLabel('Why').fill('close to its limit');
      }),
  },
  { stage: 'assembly', ready: (page) => inDialog(page, /^Change/, /^(Keep|Lay it out|Change)/) },
  {
    stage: 'run-up',
    ready: async (page) => {
      await page.locator('main details').evaluateAll((all) => {
        for (const steps of all as HTMLDetailsElement[]) steps.open = true;
      });
      return inDialog(page, /^Again/, /^(In order|Does not apply)$/);
    },
  },
  {
    stage: 'hand-over',
    ready: (page) =>
      inDialog(page, 'Say it anew', 'Handed over', (dialog) =>
        dialog.getByLabel('What they were told').fill('fresh fuel only'),
      ),
  },
];

/** The id of a job of the demonstration by its tag; 17 is finished. */
export async function taggedJob(address: string, tag: number): Promise<string> {
  const answer = await fetch(`${address}/api/jobs`);
  const { jobs } = (await answer.json()) as { jobs: { id: string; summary: { tag: number } }[] };
  const found = jobs.find((job) => job.summary.tag === tag);
  if (!found) throw new Error(`no tag ${tag} hangs in the shop`);
  return found.id;
}

/** Waits until the screen stands in place of the word that it is being opened. */
export async function opened(page: Page): Promise<void> {
  await page
    .getByRole('heading', { name: /^(?!Opening|One moment)/ })
    .or(page.getByRole('img'))
    .first()
    .waitFor();
  await page.getByRole('heading', { name: /^(Opening|One moment)/ }).waitFor({ state: 'detached' });
}

/** Waits until the page asks nothing more and has drawn what came. */
export async function settled(page: Page): Promise<void> {
  await opened(page);
  await page.getByRole('status').filter({ hasText: 'all saved' }).first().waitFor({ state: 'attached' });
  await page.locator('[aria-busy="true"]').first().waitFor({ state: 'detached' });
}
