import type { Column, Content } from 'pdfmake/interfaces.js';
import type { PictureGroup, PicturesBlock, RecordedPicture } from '../../service-record/index.js';
import { bare, color } from '../theme.js';
import type { Typesetter } from '../typesetter.js';
import type { Setting } from './setting.js';

/** Height to width: landscape, as a phone is held over a bench. */
const pictureShape = 0.68;
/** Large while there are few. */
const perRow = (pictures: number) => (pictures <= 4 ? 4 : 6);
const pictureGap = 8;

export function pictureRows({ groups, more }: PicturesBlock, setting: Setting): Content {
  const columns = perRow(groups.reduce((sum, group) => sum + group.pictures.length, 0));
  const width = (setting.width - (columns - 1) * pictureGap) / columns;
  const rows = inRows(groups, columns).map((row) => pictureRow(row, width, setting));
  const note = more ? [setting.type.text(more, setting.type.small)] : [];
  return { stack: [...rows, ...note] };
}

/** A pair is never split over two rows. */
function inRows(groups: readonly PictureGroup[], columns: number): PictureGroup[][] {
  const rows: PictureGroup[][] = [];
  let free = 0;
  for (const group of groups) {
    if (group.pictures.length > free) {
      rows.push([]);
      free = columns;
    }
    rows.at(-1)?.push(group);
    free -= group.pictures.length;
  }
  return rows;
}

function pictureRow(row: readonly PictureGroup[], width: number, setting: Setting): Content {
  const columns = row
    .flatMap((group) => group.pictures)
    .map((picture) => pictureColumn(picture, width, setting));
  return { unbreakable: true, columns, columnGap: pictureGap, margin: [0, 1, 0, 2] };
}

function pictureColumn(picture: RecordedPicture, width: number, setting: Setting): Column {
  return { width, stack: [pictureContent(picture, width, setting), captionText(picture, setting.type)] };
}

function pictureContent(picture: RecordedPicture, width: number, { pictures, type }: Setting): Content {
  const height = width * pictureShape;
  const found = pictures.get(picture.sha256) ?? { problem: 'it was not handed over' };
  if ('name' in found) return { image: found.name, fit: [width, height] };
  const words = type.text(`This picture cannot be printed: ${found.problem}.`, {
    ...type.small,
    alignment: 'center',
    margin: [8, height / 2 - 14, 8, 0],
  });
  return { layout: frame, table: { widths: [width - 1], heights: [height - 1], body: [[words]] } };
}

const frame = {
  ...bare,
  hLineWidth: () => 0.5,
  vLineWidth: () => 0.5,
  hLineColor: () => color.rule,
  vLineColor: () => color.rule,
};

function captionText({ label, caption }: RecordedPicture, type: Typesetter): Content {
  const lead = type
    .runs(caption ? `${label}: ` : label)
    .map((run) => ({ ...run, ...type.small, bold: true }));
  const words = type.runs(caption).map((run) => ({ ...run, ...type.small }));
  return { text: [...lead, ...words], margin: [0, 2, 0, 0] };
}
