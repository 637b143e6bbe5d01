/**
 * The six head bolts, in millimeters, seen from the wrench with the exhaust side below. Hole 1 is the upper left one,
 * and they count clockwise; the picture of the tightened head shows the same places.
 */
export const headHoles = [
  { xMm: -44, yMm: 28.5 },
  { xMm: 0, yMm: 31.5 },
  { xMm: 44, yMm: 28.5 },
  { xMm: 44, yMm: -28.5 },
  { xMm: 0, yMm: -31.5 },
  { xMm: -44, yMm: -28.5 },
];

/** The order of the invented maker's sheet. */
export const headOrder = [2, 5, 1, 4, 3, 6];
