import { doneSteps, type From } from '../../../job/index.js';
import { capital, counted, joined, price, sentence, shortDay } from '../../../phrase/index.js';
import type { Block, Cell, Detail, Item, Section } from '../section.js';
import { awaitedParts, type Sheet } from '../sheet.js';
import { briefTitle } from '../words.js';

/** The acts in their order; a colleague finds the fasteners and bags in the shop's log. */
export function work({ job, detail }: Sheet): Section | undefined {
  const apart = doneSteps(job, 'teardown');
  const together = doneSteps(job, 'assembly');
  if (apart.length + together.length === 0) return undefined;
  const blocks = [
    stepWords('Taken apart', apart, detail),
    togetherWords(together, apart.length, detail),
  ].filter((block) => block !== undefined);
  return { id: 'work', title: 'What was done', place: 'column', blocks };
}

function stepWords(title: string, steps: readonly From<'step'>[], detail: Detail): Block | undefined {
  if (steps.length === 0) return undefined;
  const lead = `${title}, ${counted(steps.length, 'step')}.`;
  const named = steps.map((step) =>
    detail === 'brief' ? briefTitle(step.title) : joined([step.title, step.words], ': '),
  );
  return { type: 'list', items: [{ lead, words: named.join(' · ') }] };
}

/** Going back in the reverse order needs no second list: only what was not simply put back is named. */
function togetherWords(steps: readonly From<'step'>[], apart: number, detail: Detail): Block | undefined {
  const besides = steps.filter((step) => !step.putsBack);
  const back = steps.length - besides.length;
  if (detail === 'full' || back < 2) return stepWords('Put together', steps, detail);
  const more = besides.map((step) => briefTitle(step.title)).join(' · ');
  const all =
    back === apart ? 'everything that was taken off is back on' : `${back} put back what was taken off`;
  const words = sentence(joined([capital(all), more && `besides: ${more}`], '; '));
  return { type: 'list', items: [{ lead: `Put together, ${counted(steps.length, 'step')}.`, words }] };
}

/** Parts on the machine and parts still awaited; a part that came and did not fit is said too. */
export function parts(sheet: Sheet): Section | undefined {
  const { job, answers } = sheet;
  // what is not here stands first: it is what the owner waits for
  const shown = [...awaitedParts(job), ...answers.partsUsed, ...hereParts(sheet), ...mismatched(sheet)];
  if (shown.length === 0) return undefined;
  const block = sheet.detail === 'brief' ? partList(sheet, shown) : partTable(sheet, shown);
  return { id: 'parts', title: 'Parts', place: 'column', blocks: [block] };
}

function partTable(sheet: Sheet, shown: readonly From<'part'>[]): Block {
  return {
    type: 'table',
    columns: [
      { title: 'Part', share: 50 },
      { title: 'State', share: 32 },
      { title: 'Price', share: 18, figures: true },
    ],
    rows: shown.map((part) => partRow(sheet, part)),
  };
}

/** The fitted ones in a line by supplier; every other one has a line of its own. */
function partList(sheet: Sheet, shown: readonly From<'part'>[]): Block {
  const fitted = sheet.answers.partsUsed;
  const suppliers = [...new Set(fitted.map((part) => part.supplier))];
  const fittedItems = suppliers.map((supplier): Item => {
    const own = fitted.filter((part) => part.supplier === supplier);
    const lead = supplier ? `Fitted, from ${supplier}:` : 'Fitted:';
    return { lead, words: own.map(pricedName).join(' · ') };
  });
  const others = shown.filter((part) => !fitted.includes(part));
  const otherItems = others.map((part): Item => {
    const care = careOf(sheet, part);
    return { lead: `${partName(part)}:`, words: stateWords(sheet, part), ...(care && { care }) };
  });
  return { type: 'list', items: [...otherItems, ...fittedItems] };
}

function partName(part: From<'part'>): string {
  const count = part.count > 1 ? `${part.count} × ` : '';
  return joined([`${count}${part.name}`, part.number], ', no. ');
}

function isPutBackForNow({ answers }: Sheet, part: From<'part'>): boolean {
  return answers.provisionals.some((p) => p.part?.part === part.part);
}

function mismatched({ job }: Sheet): From<'part'>[] {
  return [...job.parts.values()].filter((part) => part.state === 'mismatch');
}

function partRow(sheet: Sheet, part: From<'part'>): Cell[] {
  const care = careOf(sheet, part);
  const sub = joined([part.number && `no. ${part.number}`, part.supplier, part.words]);
  return [
    { text: `${part.count} × ${part.name}`, ...(sub && { sub }) },
    { text: stateWords(sheet, part), ...(care && { care }) },
    { text: priceOf(part) },
  ];
}

function stateWords({ answers }: Sheet, part: From<'part'>): string {
  if (answers.partsUsed.includes(part)) return 'fitted';
  if (part.state === 'mismatch') return 'did not fit, not used';
  if (part.state === 'arrived') return 'here, not fitted';
  return `${part.state}${part.due ? `, due ${shortDay(part.due)}` : ''}`;
}

/** What must not be overlooked of a part. */
function careOf(sheet: Sheet, part: From<'part'>): string | undefined {
  if (isPutBackForNow(sheet, part)) return 'old one put back for now';
  return part.state === 'wanted' || part.state === 'ordered' ? 'not here' : undefined;
}

/** For all pieces of it; empty where none is written down. */
const priceOf = ({ price: each, count }: From<'part'>): string =>
  each ? price(each.currency, each.amount * count) : '';

const pricedName = (part: From<'part'>): string => joined([partName(part), priceOf(part)], ' ');

function hereParts({ job, answers }: Sheet): From<'part'>[] {
  return [...job.parts.values()].filter((p) => p.state === 'arrived' && !answers.partsUsed.includes(p));
}
