import type { From } from '../../../job/index.js';
import { capital, counted, joined } from '../../../phrase/index.js';
import type { Detail, PictureGroup, PicturesBlock, RecordedPicture, Section } from '../section.js';
import type { Sheet } from '../sheet.js';
import { briefTitle, handleWords } from '../words.js';

type Photograph = From<'photograph'>;
type Picture = Photograph & { readonly picture: NonNullable<Photograph['picture']> };

/** Before and after of the same thing first, side by side; then single ones, up to the limit. */
export function photographs(sheet: Sheet): Section | undefined {
  const all = sheet.job.photographs;
  if (all.length === 0) return undefined;
  const groups = withinLimit(pictureGroups(all.filter(hasPicture), sheet.detail), sheet.pictureLimit);
  const block: PicturesBlock = { type: 'pictures', groups, more: moreWords(all, shownCount(groups)) };
  return { id: 'photographs', title: 'Photographs', place: 'full', blocks: [block] };
}

function hasPicture(photograph: Photograph): photograph is Picture {
  return photograph.picture !== undefined;
}

function pictureGroups(pictures: readonly Picture[], detail: Detail): PictureGroup[] {
  const pairs = beforeAndAfter(pictures);
  const paired = new Set(pairs.flat());
  const singles = pictures.filter((p) => !paired.has(p)).sort((a, b) => rank[a.when] - rank[b.when]);
  return [...pairs, ...singles.map((p) => [p])].map((group) => pictureGroup(group, detail));
}

const rank: Readonly<Record<Photograph['when'], number>> = { before: 0, after: 1, during: 2 };

/** The first picture before and the last one after of each thing that has both. */
function beforeAndAfter(pictures: readonly Picture[]): Picture[][] {
  const things = new Set(pictures.flatMap((p) => p.about ?? []));
  return [...things].flatMap((about) => {
    const before = pictures.find((p) => p.about === about && p.when === 'before');
    const after = pictures.findLast((p) => p.about === about && p.when === 'after');
    return before && after ? [[before, after]] : [];
  });
}

function pictureGroup(pictures: readonly Picture[], detail: Detail): PictureGroup {
  const about = pictures[0]?.about;
  return {
    about: about ? capital(handleWords(about)) : '',
    pictures: pictures.map((p) => recorded(p, detail)),
  };
}

/** Under a small picture a caption has room for its first part. */
function recorded(p: Picture, detail: Detail): RecordedPicture {
  const { sha256, width, height } = p.picture;
  return {
    sha256,
    width,
    height,
    label: capital(p.when),
    caption: detail === 'brief' ? briefTitle(p.caption) : p.caption,
  };
}

/** Pairs are not torn apart by the limit. */
function withinLimit(groups: readonly PictureGroup[], limit: number): PictureGroup[] {
  const kept: PictureGroup[] = [];
  for (const group of groups) {
    if (shownCount(kept) + group.pictures.length <= limit) kept.push(group);
  }
  return kept;
}

function shownCount(groups: readonly PictureGroup[]): number {
  return groups.reduce((sum, group) => sum + group.pictures.length, 0);
}

function moreWords(all: readonly Photograph[], shown: number): string {
  const more = all.filter(hasPicture).length - shown;
  const clips = all.filter((p) => p.clip).length;
  return joined([
    more > 0 ? `${more} more in the shop’s log` : undefined,
    clips > 0 ? `${counted(clips, 'film clip')} named in the shop’s log` : undefined,
  ]);
}
