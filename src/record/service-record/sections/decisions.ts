import type { From } from '../../../job/index.js';
import { capital, joined, money, sentence, shortDays } from '../../../phrase/index.js';
import { faultName, outcomeOf } from '../fault-words.js';
import type { Block, Box, Item, Section } from '../section.js';
import { type Sheet, standingDecisions } from '../sheet.js';

/** What was decided and why. Declined and provisional ones stand in boxes of their own, see `open`. */
export function decisions(sheet: Sheet): Section | undefined {
  const { job, detail } = sheet;
  const closed = standingDecisions(job).filter(
    (d) => !isOpen(sheet, d) && !(detail === 'brief' && isInSummary(d)),
  );
  if (closed.length === 0) return undefined;
  const block = detail === 'brief' ? decisionList(sheet, closed) : decisionTable(sheet, closed);
  return { id: 'decisions', title: 'Decisions', place: 'column', blocks: [block] };
}

/** A repaired fault stands under "What was wrong", and its evidence under Findings. */
function isInSummary({ about, choice }: From<'decision'>): boolean {
  return about === 'fault' && choice === 'repair';
}

function decisionTable(sheet: Sheet, decisions: readonly From<'decision'>[]): Block {
  return {
    type: 'table',
    columns: [
      { title: 'About', share: 38 },
      { title: 'Decided, and why', share: 62 },
    ],
    rows: decisions.map((d) => [
      { text: faultName(sheet, d) },
      { text: capital(outcomeOf(sheet, d)), strong: true, sub: reasonWords(d) },
    ]),
  };
}

function decisionList(sheet: Sheet, decisions: readonly From<'decision'>[]): Block {
  const items = decisions.map(
    (d): Item => ({ lead: `${faultName(sheet, d)}:`, words: outcomeOf(sheet, d), origin: reasonWords(d) }),
  );
  return { type: 'list', items };
}

function reasonWords(decision: From<'decision'>): string {
  return joined([decision.reason, amountWords(decision)]) || 'no reason written down';
}

/** What is not finished with this record: put back for now, or declined by the owner. */
export function open(sheet: Sheet): Section | undefined {
  const blocks = [declinedBox(sheet), apartBox(sheet), provisionalBox(sheet)].filter(
    (box) => box !== undefined,
  );
  return blocks.length > 0 ? { id: 'open', title: 'Still open', place: 'full', blocks } : undefined;
}

function isOpen(sheet: Sheet, decision: From<'decision'>): boolean {
  return decision.choice === 'declined' || isForNow(sheet, decision);
}

/** A part put back for now whose new one was fitted since is a decision like any other. */
function isForNow({ answers }: Sheet, { entry }: From<'decision'>): boolean {
  return answers.provisionals.some(({ decision }) => decision.entry === entry);
}

function provisionalBox(sheet: Sheet): Box | undefined {
  const { answers } = sheet;
  const items = answers.provisionals.map(
    ({ decision: d, comesBack }): Item => ({
      lead: `${faultName(sheet, d)}:`,
      words: joined([sentence(d.reason), `To be replaced: ${sentence(shortDays(comesBack))}`], ' '),
    }),
  );
  return items.length > 0
    ? { type: 'box', tone: 'care', title: 'Put back for now: these parts are still to be replaced', items }
    : undefined;
}

/** Pieces that are off: the owner takes them along, or they wait in their bags. */
function apartBox({ answers, job }: Sheet): Box | undefined {
  const items = answers.stillOff.map(
    (step): Item => ({ words: joined([step.title, step.bag && `bag ${step.bag}`], ', ') }),
  );
  if (items.length === 0) return undefined;
  const title = job.handOver ? 'Handed back with these pieces off' : 'These pieces are off';
  return { type: 'box', tone: 'care', title, items };
}

function declinedBox(sheet: Sheet): Box | undefined {
  const { job } = sheet;
  const decided = standingDecisions(job)
    .filter((d) => d.choice === 'declined')
    .map((d) => declinedItem(faultName(sheet, d), d.reason));
  const signed = (job.handOver?.declined ?? []).map((line): Item => ({ words: sentence(line) }));
  const items = [...decided, ...signed];
  return items.length > 0
    ? { type: 'box', tone: 'stop', title: 'Unsafe or advised work that the owner declined', items }
    : undefined;
}

/** One colon a line; a name alone where no reason was given. */
function declinedItem(name: string, reason: string): Item {
  if (reason.trim() === '') return { words: sentence(name) };
  return { lead: `${name.replace(': ', ', ')}:`, words: sentence(reason) };
}

function amountWords({ amount }: From<'decision'>): string | undefined {
  return amount && money(amount.currency, amount.amount);
}
