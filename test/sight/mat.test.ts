import aruco from 'js-aruco2';
import { expect, test } from 'vitest';
import { matOf, matPapers, matSvg } from '../../src/sight/index.js';
import { tagBits } from '../../src/sight/mat/mat.js';
import { tagCodes } from '../../src/sight/mat/tag-codes.js';

test('each tag has the bits that the family’s published list gives it', () => {
  // js-aruco2 2.0.0 (MIT), its dictionary ARUCO_MIP_36h12: a copy of the list by others
  const { codeList } = new aruco.AR.Dictionary('ARUCO_MIP_36h12');
  for (const id of tagCodes.keys()) expect(tagBits(id), `tag ${id}`).toBe(codeList[id]);
});

test.each(matPapers)(
  '%s: the ring is two squares wide round 144 × 204 mm, and all of it is on the paper',
  (paper) => {
    const mat = matOf(paper);
    expect(mat.middle).toEqual({ x: -72, y: -102, width: 144, height: 204 });
    expect(mat.tags).toHaveLength(66);
    expect(mat.black).toHaveLength(66);
    expect(mat.crossings).toHaveLength(66);
    for (const { x, y, width, height } of [...mat.black, mat.barAcross, mat.barAlong]) {
      expect(Math.max(Math.abs(x), Math.abs(x + width))).toBeLessThanOrEqual(mat.width / 2 - 4);
      expect(Math.max(Math.abs(y), Math.abs(y + height))).toBeLessThanOrEqual(mat.height / 2 - 4);
    }
    expect([mat.barAcross.width, mat.barAlong.height]).toEqual([100, 200]);
  },
);

test('no tag is on both papers', () => {
  const ids = matPapers.flatMap((paper) => matOf(paper).tags.map(({ id }) => id));
  expect(new Set(ids).size).toBe(132);
});

test('the drawing says its size in millimetres unless told otherwise', () => {
  expect(matSvg(matOf('a4'), {})).toContain('width="210mm" height="297mm" viewBox="0 0 210 297"');
});
