import aruco from 'js-aruco2';
import sharp from 'sharp';
import { beforeAll, describe, expect, test } from 'vitest';
import { dice } from '../../bench/sight/random.js';
import { eyeOf, photograph, seenAt } from '../../bench/sight/render.js';
import { baseScene } from '../../bench/sight/scenes.js';
import { cameraOf, onPlane, project, standpoint, tiltDegrees } from '../../src/sight/camera/camera.js';
import { erf } from '../../src/sight/camera/crossing.js';
import { findMat, type SeenMat } from '../../src/sight/camera/find-tags.js';
import { across, homography } from '../../src/sight/camera/homography.js';
import { type SolvedCamera, solveCamera } from '../../src/sight/camera/solve.js';
import type { Picture } from '../../src/sight/index.js';

test('a perspective takes the four corners of a square where they were seen, and its middle to where the diagonals meet', () => {
  const square = [
    { x: 0, y: 0 },
    { x: 1, y: 0 },
    { x: 1, y: 1 },
    { x: 0, y: 1 },
  ];
  const seen = [
    { x: 10, y: 20 },
    { x: 110, y: 30 },
    { x: 90, y: 95 },
    { x: 22, y: 80 },
  ];
  const h = homography(square, seen);
  for (const [i, corner] of square.entries()) {
    const at = across(h, corner);
    expect(Math.hypot(at.x - seen[i]!.x, at.y - seen[i]!.y)).toBeLessThan(1e-9);
  }
  // perspective keeps straight lines straight: Euclid's crossing of the two diagonals, worked by hand
  const t =
    ((22 - 10) * (30 - 80) - (80 - 20) * (110 - 22)) / ((90 - 10) * (30 - 80) - (95 - 20) * (110 - 22));
  const middle = across(h, { x: 0.5, y: 0.5 });
  expect(middle.x).toBeCloseTo(10 + t * 80, 9);
  expect(middle.y).toBeCloseTo(20 + t * 75, 9);
});

test('the error function is that of the tables', () => {
  // Abramowitz and Stegun, table 7.1
  expect(erf(0.5)).toBeCloseTo(0.5204998778, 6);
  expect(erf(-1)).toBeCloseTo(-0.8427007929, 6);
  expect(erf(2)).toBeCloseTo(0.995322265, 6);
});

describe('a camera', () => {
  const camera = cameraOf([1500, 760, 980, -0.06, 0.01, 0.2, -0.3, 1.4, 12, -20, 420]);

  test('sees a spot where onPlane finds it again', () => {
    for (const spot of [
      { x: 0, y: 0, z: 0 },
      { x: 60, y: -90, z: 15 },
      { x: -96, y: 126, z: 0 },
    ]) {
      const back = onPlane(camera, project(camera, spot), spot.z);
      expect(Math.hypot(back.x - spot.x, back.y - spot.y)).toBeLessThan(1e-9);
    }
  });

  test('straight above looks down its own foot', () => {
    const above = cameraOf([1500, 750, 1000, 0, 0, 0, 0, 0, 0, 0, 400]);
    expect(standpoint(above)).toEqual({ x: -0, y: 0, z: 400 });
    expect(tiltDegrees(above)).toBeCloseTo(0, 9);
    // a pinhole by hand: 40 mm up at 400 mm away is a tenth of the focal length
    expect(project(above, { x: 0, y: 40, z: 0 })).toEqual({ x: 750, y: 850 });
  });
});

describe('from a rendered photograph of the bare mat', () => {
  const scene = { ...baseScene(dice(77), 77, { size: [1050, 1400] }), tilt: 24, flash: 0.7, blur: 0.8 };
  let picture: Picture;
  let seen: SeenMat;
  let solved: SolvedCamera;
  beforeAll(async () => {
    const { data, info } = await sharp(await photograph(scene))
      .raw()
      .toBuffer({ resolveWithObject: true });
    picture = { data, width: info.width, height: info.height, channels: 3 };
    seen = findMat(picture)!;
    solved = solveCamera(picture, seen.mat, seen.tags)!;
  });

  test('the tags are found where an independent reader finds them', () => {
    expect(seen.mat.paper).toBe(scene.paper);
    const rgba = new Uint8Array(picture.width * picture.height * 4);
    for (let i = 0; i < rgba.length / 4; i += 1) rgba.set(picture.data.subarray(3 * i, 3 * i + 3), 4 * i);
    const reader = new aruco.AR.Detector({ dictionaryName: 'ARUCO_MIP_36h12', maxHammingDistance: 2 });
    const theirs = reader.detectImage(picture.width, picture.height, rgba);
    expect(theirs.length).toBeGreaterThan(20);
    for (const { id, corners } of theirs) {
      const own = seen.tags.find(({ tag }) => tag.id === id);
      if (!own) continue;
      for (const [i, corner] of own.corners.entries())
        expect(Math.hypot(corner.x - corners[i]!.x, corner.y - corners[i]!.y), `tag ${id}`).toBeLessThan(6);
    }
  });

  test('every place of the mat is known to a hundredth of a millimetre', () => {
    expect(solved.crossings.length).toBeGreaterThan(60);
    for (let x = -66; x <= 66; x += 33)
      for (let y = -96; y <= 96; y += 48) {
        const back = onPlane(solved.camera, seenAt(scene, { x, y, z: 0 }), 0);
        expect(Math.hypot(back.x - x, back.y - y)).toBeLessThan(0.01);
      }
  });

  test('the lens and where the camera stood come out within their own ±', () => {
    const eye = eyeOf(scene).at;
    const stand = standpoint(solved.camera);
    expect(Math.hypot(stand.x - eye.x, stand.y - eye.y, stand.z - eye.z)).toBeLessThan(6);
    const spread = Math.sqrt(solved.covariance.get(0, 0));
    expect(Math.abs(solved.camera.focal - scene.lens.focal)).toBeLessThan(
      4 * spread + 0.002 * scene.lens.focal,
    );
    expect(Math.abs(solved.tilt - 24)).toBeLessThan(0.5);
  });
});
