import type { IntakeFacts } from '../../../job/index.js';
import type { Item, Section } from '../section.js';
import type { Sheet } from '../sheet.js';

interface Advice {
  readonly lead: string;
  readonly words: string;
  /** a published source; without one the line is common practice or trade judgement */
  readonly source?: string;
  readonly applies?: (intake: IntakeFacts) => boolean;
}

/** What the owner must know before pulling the rope. Where it comes from stands below it. */
const advice: readonly Advice[] = [
  {
    lead: 'The maker’s manual comes first.',
    words: 'It and local rules go before this page.',
  },
  {
    lead: 'Run it outdoors only.',
    words:
      'The exhaust holds carbon monoxide: no smell, and it can overcome a person within minutes. Open doors and fans are not enough.',
    source: 'Carbon monoxide: NIOSH 96-118a',
  },
  {
    lead: 'Fresh fuel.',
    words:
      'Fill a cold engine, outdoors. Do not store it with fuel in: drain it, or run it dry, before it stands for more than a month.',
  },
  {
    lead: 'Two-stroke: oil in the fuel.',
    words: 'Use the mixture that the maker names. Fuel without oil destroys the engine in one run.',
    applies: ({ architecture }) => architecture === 'two-stroke',
  },
  {
    lead: 'Oil before every run.',
    words: 'Look at the level with the machine standing level. No oil in the fuel.',
    applies: ({ architecture }) => architecture === 'side-valve' || architecture === 'overhead-valve',
  },
];

export function cautions({ job, answers }: Sheet): Section {
  const { use, alsoUses = [] } = answers.engine.facts;
  const driven = answers.catalog.uses.filter(({ id }) => id === use || alsoUses.includes(id));
  const ofUses = new Map(driven.flatMap((each) => each.advice ?? []).map((line) => [line.lead, line]));
  const lines: Advice[] = [
    ...advice.filter((line) => line.applies?.(job.intake) ?? true),
    ...ofUses.values(),
  ];
  return {
    id: 'advice',
    title: 'Cautions and advice',
    place: 'column',
    blocks: [
      { type: 'list', items: lines.map(({ lead, words }): Item => ({ lead, words })) },
      { type: 'words', words: sourceWords(lines), soft: true },
    ],
  };
}

/** "Sources: carbon monoxide, NIOSH …; the rest common practice and trade judgement" */
function sourceWords(lines: readonly Advice[]): string {
  const cited = lines.filter((line) => line.source).map((line) => line.source);
  return `${[...cited, 'the rest is common practice and trade judgement'].join('; ')}.`;
}
