import { doneSteps, type From } from '../../../job/index.js';
import { capital, counted, joined, sentence, shortDay } from '../../../phrase/index.js';
import type { Block, Cell, Detail, Item, Section } from '../section.js';
import { awaitedParts, fittedParts, type Sheet } from '../sheet.js';
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
  const { job } = sheet;
  const shown = [...fittedParts(job), ...awaitedParts(job), ...mismatched(sheet)];
  if (shown.length === 0) return undefined;
  const block = sheet.detail === 'brief' ? partList(sheet, shown) : partTable(sheet, shown);
  return { id: 'parts', title: 'Parts', place: 'column', blocks: [block] };
}

function partTable(sheet: Sheet, shown: readonly From<'part'>[]): Block {
  return {
    type: 'table',
    columns: [
      { title: 'Part', share: 52 },
      { title: 'State', share: 48 },
    ],
    rows: shown.map((part) => partRow(sheet, part)),
  };
}

/** The fitted ones in a line by supplier; every other one has a line of its own. */
function partList(sheet: Sheet, shown: readonly From<'part'>[]): Block {
  const fitted = shown.filter((part) => part.state === 'fitted');
  const suppliers = [...new Set(fitted.map((part) => part.supplier))];
  const fittedItems = suppliers.map((supplier): Item => {
    const own = fitted.filter((part) => part.supplier === supplier);
    const lead = supplier ? `Fitted, from ${supplier}:` : 'Fitted:';
    return { lead, words: own.map(partName).join(' · ') };
  });
  const others = shown.filter((part) => part.state !== 'fitted');
  const otherItems = others.map((part): Item => {
    const old = isPutBackForNow(sheet, part) ? { care: 'old one put back for now' } : {};
    return { lead: `${partName(part)}:`, words: stateWords(part), ...old };
  });
  return { type: 'list', items: [...fittedItems, ...otherItems] };
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
  const sub = joined([part.number && `no. ${part.number}`, part.supplier, part.words]);
  return [
    { text: `${part.count} × ${part.name}`, ...(sub && { sub }) },
    { text: stateWords(part), ...(isPutBackForNow(sheet, part) && { care: 'old one put back for now' }) },
  ];
}

function stateWords(part: From<'part'>): string {
  const due = part.due ? `, due ${shortDay(part.due)}` : '';
  if (part.state === 'fitted') return 'fitted';
  if (part.state === 'mismatch') return 'did not fit, not used';
  return `${part.state}, not fitted${due}`;
}
