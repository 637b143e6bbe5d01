// How well photographed pages of specs and plates are read: `npm run bench pages`. Scenes are rendered anew;
// WRISTPIN_SIGHT=held-out reads others that guided nothing.
import { join } from 'node:path';
import sharp from 'sharp';
import { createWorker, PSM } from 'tesseract.js';
import { asPrinted } from '../src/catalog/index.js';
import { pageRefusal, straightPage } from '../src/sight/index.js';
import { pageLines } from '../src/web/work/page-lines.js';
import { pageScenes } from './sight/pages.js';

const reader = await createWorker('eng', 1, {
  cacheMethod: 'none',
  langPath: join(process.cwd(), 'node_modules', '@tesseract.js-data', 'eng', '4.0.0_best_int'),
});
await reader.setParameters({ tessedit_pageseg_mode: PSM.SINGLE_BLOCK });

interface Count {
  pictures: number;
  refused: number;
  lines: number;
  whole: number;
  figures: number;
  right: number;
  sureAndWrong: number;
}
const fresh = (): Count => ({
  pictures: 0,
  refused: 0,
  lines: 0,
  whole: 0,
  figures: 0,
  right: 0,
  sureAndWrong: 0,
});
const counts = new Map<string, Count>();
const counted = (name: string): Count => {
  const count = counts.get(name) ?? fresh();
  counts.set(name, count);
  return count;
};

async function read(photo: Buffer, isStraightened: boolean) {
  const { data, info } = await sharp(photo).raw().toBuffer({ resolveWithObject: true });
  const { width, height } = info;
  const { picture, hasEdges } = straightPage({ data, width, height, channels: 3 });
  const laid = sharp(Buffer.from(picture.data), {
    raw: { width: picture.width, height: picture.height, channels: 4 },
  });
  const { data: said } = await reader.recognize(
    isStraightened ? await laid.jpeg({ quality: 85 }).toBuffer() : photo,
    {},
    { blocks: true, text: false },
  );
  const lines = pageLines(said);
  return { lines, refused: pageRefusal(lines, hasEdges) };
}

const figuresIn = (text: string) => text.match(/\d[\d.,:-]*\d|\d/g) ?? [];

/** A line that was printed counts once, a figure of it where the line nearest to it has it too. */
function add(
  count: Count,
  printed: readonly string[],
  lines: Awaited<ReturnType<typeof read>>['lines'],
): void {
  for (const [i, line] of printed.entries()) {
    const first = line.split(/[ ,]/)[0]!;
    const found =
      lines.find(({ text }) => asPrinted(text) === line) ??
      lines.find(({ text }) => text.includes(line.slice(0, line.search(/\d/)).trim())) ??
      lines.find(({ text }, k) => text.startsWith(first) && k === i);
    const figures = figuresIn(line);
    count.lines += 1;
    count.figures += figures.length;
    if (!found) continue;
    if (asPrinted(found.text) === line) count.whole += 1;
    const seen = figuresIn(asPrinted(found.text));
    count.right += figures.filter((figure) => (seen as readonly string[]).includes(figure)).length;
    const sure = found.words.filter(({ text, sure: s }) => /^\d[\d.,:-]*$/.test(text) && s >= 85);
    count.sureAndWrong += sure.filter(({ text }) => !line.includes(text.replace(/[.,:]$/, ''))).length;
  }
}

const from = process.env.WRISTPIN_SIGHT === 'held-out' ? 80_000 : 9_000;
for (const scene of pageScenes(from)) {
  const photo = await scene.photo();
  for (const [way, isStraightened] of [
    ['as shot', false],
    ['laid straight', true],
  ] as const) {
    const count = counted(`${scene.name}, ${way}`);
    const { lines, refused } = await read(photo, isStraightened);
    count.pictures += 1;
    if (refused) count.refused += 1;
    else add(count, scene.lines, lines);
  }
}
await reader.terminate();

console.log(
  '                           pictures  refused  lines right   figures right   figures sure and wrong',
);
for (const [name, c] of counts)
  console.log(
    `${name.padEnd(27)}${String(c.pictures).padEnd(10)}${String(c.refused).padEnd(9)}${`${c.whole} of ${c.lines}`.padEnd(14)}${`${c.right} of ${c.figures}`.padEnd(16)}${c.sureAndWrong}`,
  );
