import { type From, seenWords } from '../../../job/index.js';
import { dayWords, joined, shortDay } from '../../../phrase/index.js';
import type { Block, Cell, Item, Section } from '../section.js';
import type { Sheet } from '../sheet.js';
import { briefTitle } from '../words.js';

type Seen = From<'observation'>;

/** Every check as it was read, in the order of the work, with the conditions it was read under. */
export function findings(sheet: Sheet): Section | undefined {
  const all = sheet.answers.sights;
  if (all.length === 0) return undefined;
  const days = [...new Set(all.map((seen) => dayWords(seen.at)))];
  const when = days.length === 1 ? `on ${days[0]}` : `from ${days[0]} to ${days.at(-1)}`;
  const blocks = [sheet.detail === 'brief' ? briefList(all, sheet) : findingTable(all, days.length > 1)];
  return { id: 'findings', title: `Findings ${when}`, place: 'column', blocks };
}

function findingTable(all: readonly Seen[], dated: boolean): Block {
  return {
    type: 'table',
    columns: [
      { title: 'Checked', share: 38 },
      { title: 'Found, and under which conditions where they were noted', share: 62 },
    ],
    rows: all.map((seen) => findingRow(seen, dated)),
  };
}

function findingRow(seen: Seen, dated: boolean): Cell[] {
  return [
    { text: seen.title, ...(dated && { sub: shortDay(seen.at) }) },
    {
      text: outcomeWords(seen),
      strong: true,
      sub: joined([besideOutcomes(seen), seen.conditions]),
      ...(seen.doubtful && { care: doubtfulMark }),
    },
  ];
}

const doubtfulMark = 'doubtful reading';

/** Own words stand where no outcome was chosen, and beside the outcomes where some were. */
const outcomeWords = ({ words, ...seen }: Seen): string =>
  seenWords(seen) || (words ? `“${words}”` : 'looked at, nothing written down');

const besideOutcomes = ({ outcomes, words }: Seen): string | undefined =>
  outcomes.length > 0 && words ? `“${words}”` : undefined;

/** What accuses a fault or is doubtful has a line with its conditions; what was healthy runs on. */
function briefList(all: readonly Seen[], sheet: Sheet): Block {
  const sound = all.filter((seen) => isHealthy(seen, sheet));
  const rest = all.filter((seen) => !sound.includes(seen));
  const items = rest.map(
    (seen): Item => ({
      lead: `${briefTitle(seen.title)}:`,
      words: joined([outcomeWords(seen), besideOutcomes(seen)], ', '),
      ...(seen.conditions && { origin: seen.conditions }),
      ...(seen.doubtful && { care: doubtfulMark }),
    }),
  );
  const mended = (seen: Seen) => rest.some((bad) => bad.check === seen.check && isBefore(bad, seen));
  const [since, always] = [sound.filter(mended), sound.filter((seen) => !mended(seen))];
  return {
    type: 'list',
    items: [...items, ...soundItem('Sound:', always), ...soundItem('Sound since:', since)],
  };
}

function isHealthy(seen: Seen, { healthy }: Sheet): boolean {
  const [only] = seen.outcomes;
  return (
    seen.check !== undefined &&
    !seen.doubtful &&
    !seen.words &&
    seen.outcomes.length === 1 &&
    only === healthy(seen.check)
  );
}

const isBefore = (a: Seen, b: Seen): boolean => Date.parse(a.at) < Date.parse(b.at);

function soundItem(lead: string, sound: readonly Seen[]): Item[] {
  const words = sound.map(({ title, value }) => joined([briefTitle(title), value], ', ')).join(' · ');
  return sound.length > 0 ? [{ lead, words }] : [];
}
