import { byId, type Memory } from '../../../catalog/index.js';
import { listed, lowerFirst } from '../../../phrase/index.js';
import type { From } from '../../job.js';
import type { Answers } from '../answers.js';
import { viewsOf } from '../steps/coverage.js';
import { piecesOf } from '../steps/taken.js';

/** Something that must be known to put a piece back and that nobody kept. */
export interface MissingMemory {
  /** the piece that it belongs to, as it was logged */
  readonly of: string;
  /** "how it sat: spring hooks, both ends" */
  readonly what: string;
  /** where to get it again, the surest first; never empty */
  readonly ways: readonly string[];
}

/**
 * What is not known any more of the pieces that are off: views that no picture shows, a bag that was not named, bolts
 * that nobody counted. Views that tell only how something was found are left out: nothing goes together by them.
 */
export function missingMemories(answers: Answers): MissingMemory[] {
  const drawing = makersDrawing(answers);
  return answers.stillOff.flatMap((step) => [
    ...missingViews(answers, step, drawing),
    ...missingBag(answers, step),
    ...missingCount(answers, step, drawing),
  ]);
}

/** The memory of the catalog that goes for a view, by the words of its name: the first that fits. */
export function memoryOf(view: string, memories: readonly Memory[]): Memory | undefined {
  const named = memories.filter(({ says }) => says !== undefined);
  return named.find(({ says }) => says!.some((word) => beginsAWord(view, word)));
}

const beginsAWord = (text: string, word: string): boolean => ` ${text.toLowerCase()}`.includes(` ${word}`);

function missingViews(answers: Answers, step: From<'step'>, drawing: string): MissingMemory[] {
  const { memories } = answers.catalog;
  const always = memories.flatMap(({ says, ways = [] }) => (says ? [] : ways));
  const views = viewsOf(answers, { ...step, components: piecesOf(answers, step), done: step });
  const gone = views
    .filter((view) => view.gone)
    .map((view) => ({ ...view, memory: memoryOf(view.view, memories) }))
    .filter(({ memory }) => !memory?.onlyFound);
  if (gone.length === 0) return [];
  const ways = gone.flatMap(({ of, memory }) => [...ownWays(answers, of), ...(memory?.ways ?? [])]);
  return [
    {
      of: step.title,
      what: `how it sat: ${listed(gone.map(({ view }) => view))}`,
      ways: [...new Set([...ways, drawing, ...always])],
    },
  ];
}

/** What is known of the piece by its kind: which way round it goes, and by what it is told from what looks like it. */
function ownWays({ components, catalog }: Answers, of: string): string[] {
  const piece = components.get(of);
  const alike = byId(catalog.lookAlikes);
  const tells = (piece?.lookAlikes ?? []).flatMap((id) => alike.get(id)?.tell ?? []);
  return [
    ...(piece?.wayRound && !/photographed|found/.test(piece.wayRound)
      ? [`As a rule: ${lowerFirst(piece.wayRound)}.`]
      : []),
    ...tells.filter((tell) => !/photograph/.test(tell)),
  ];
}

function makersDrawing({ job }: Answers): string {
  const plate = job.identities.findLast((identity) => identity.how === 'plate');
  return plate?.how === 'plate'
    ? `The maker’s parts drawing for “${plate.written}”: it shows the order and the side.`
    : 'The maker’s parts drawing shows the order and the side; read the plate first, or measure bore and stroke.';
}

function missingBag(answers: Answers, step: From<'step'>): MissingMemory[] {
  if (step.bag !== undefined || isAct(answers, step)) return [];
  const near = neighbours(answers, step).map((bag) => `bag ${bag}`);
  return [
    {
      of: step.title,
      what: 'where it lies: no bag was named',
      ways: [
        ...(near.length > 0
          ? [`It came off between ${listed(near)}: look beside ${near.length > 1 ? 'them' : 'it'} first.`]
          : []),
        ...(step.fasteners?.length
          ? [
              `Look for ${listed(step.fasteners.map((f) => [`${f.count} ×`, f.size, f.what].filter(Boolean).join(' ')))} together.`,
            ]
          : []),
        'What is too large for a bag stands on the shelf or with the machine.',
      ],
    },
  ];
}

/** Draining and the like leaves nothing to lay anywhere. */
function isAct(answers: Answers, step: From<'step'>): boolean {
  const pieces = piecesOf(answers, step);
  return pieces.length > 0 && pieces.every((id) => answers.components.get(id)?.comesOffAs === 'action');
}

function neighbours({ takenOff }: Answers, step: From<'step'>): string[] {
  const place = takenOff.indexOf(step);
  const before = takenOff.slice(0, place).findLast((s) => s.bag !== undefined)?.bag;
  const after = takenOff.slice(place + 1).find((s) => s.bag !== undefined)?.bag;
  return [...new Set([before, after].flatMap((bag) => bag ?? []))];
}

/** Bolts that such a piece has and that nobody counted out. */
function missingCount(answers: Answers, step: From<'step'>, drawing: string): MissingMemory[] {
  if ((step.fasteners ?? []).length > 0) return [];
  const usual = piecesOf(answers, step).flatMap((id) =>
    (answers.components.get(id)?.fasteners ?? []).filter(
      ({ count, what }) => count !== undefined && /\b(bolt|nut|screw)\b/.test(what),
    ),
  );
  if (usual.length === 0) return [];
  const words = usual.map(
    ({ count, countTo, what }) => `${countTo ? `${count} to ${countTo}` : count} × ${what}`,
  );
  return [
    {
      of: step.title,
      what: 'how many fasteners came out: nobody counted them',
      ways: [
        `Usual on such an engine: ${listed([...new Set(words)])}.`,
        'Count the empty holes of the piece, and the shiny rings where heads sat.',
        drawing,
      ],
    },
  ];
}
