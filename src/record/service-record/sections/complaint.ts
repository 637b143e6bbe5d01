import type { IntakeFacts } from '../../../job/index.js';
import { counted, joined, money } from '../../../phrase/index.js';
import type { Block, Fact, Section } from '../section.js';
import type { Sheet } from '../sheet.js';

/** What the owner said, word for word, and the state the machine came in. */
export function complaint(sheet: Sheet): Section | undefined {
  const { intake } = sheet.job;
  const facts = asFoundFacts(intake);
  const blocks: Block[] = [];
  if (intake.complaint)
    blocks.push({ type: 'quote', words: intake.complaint, by: intake.owner ?? 'the owner' });
  if (facts.length > 0) blocks.push({ type: 'facts', facts });
  if (blocks.length === 0) return undefined;
  const title = intake.complaint ? 'In the owner’s words, and as it came in' : 'As it came in';
  return { id: 'complaint', title, place: 'column', blocks };
}

function asFoundFacts(intake: IntakeFacts): Fact[] {
  const told = 'told by the owner';
  const facts: (Fact | undefined)[] = [
    intake.storedMonths === undefined
      ? undefined
      : { label: 'Stored', value: storedWords(intake.storedMonths), origin: told },
    answersFact(intake),
    intake.tried ? { label: 'Tried before', value: intake.tried, origin: told } : undefined,
    intake.missing ? { label: 'Missing', value: intake.missing, origin: 'seen at intake' } : undefined,
    consentFact(intake),
  ];
  return facts.filter((fact) => fact !== undefined);
}

function storedWords(months: number): string {
  return months >= 24 && months % 12 === 0 ? counted(months / 12, 'year') : counted(months, 'month');
}

/** An unknown is printed as unknown: nobody can later claim that it was asked and denied. */
function answersFact(intake: IntakeFacts): Fact | undefined {
  const asked: [string, string | undefined][] = [
    ['fuel left in', intake.fuelLeftIn],
    ['tipped over', intake.tipped],
    ['struck something', intake.struck],
    ['wrong fuel', intake.wrongFuel],
  ];
  const value = joined(
    asked.map(([question, answer]) => answer && `${question}: ${answer}`),
    ', ',
  );
  return value ? { label: 'Asked', value, origin: 'the owner’s answers' } : undefined;
}

function consentFact({ consent, stopLimit }: IntakeFacts): Fact | undefined {
  const value = joined([
    consent && consentWords(consent),
    stopLimit && `call above ${money(stopLimit.currency, stopLimit.amount)}`,
  ]);
  return value ? { label: 'Consent', value, ...(consent?.how && { origin: consent.how }) } : undefined;
}

const consentWords = ({ given, by }: NonNullable<IntakeFacts['consent']>): string =>
  given ? joined(['given', by && `by ${by}`], ' ') : 'not given';
