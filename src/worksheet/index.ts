/**
 * How a calculation is defined once and run anywhere. A worksheet is one `worksheet({ … })` in the room that owns the
 * calculation, and one line in the list of that room's `worksheets.ts`; nothing else knows of it by name.
 *
 *     export const boreArea = worksheet({
 *       id: 'bore-area', group: 'Compression and leaks', question: 'How large is the piston’s top?', title, purpose,
 *       fields: { bore: ask.in('mm', 'Bore', 'Diameter.', '65 mm'), rod: ask.in('mm', 'Rod', 'If known.', { optional: true }) },
 *       compute: ({ bore, rod }) => [amount('area', 'Area', Math.PI / 4 * bore ** 2, 'mm²', computed('π/4·d²'))],
 *       names: { boreMm: 'bore' }, // only where the room's own Refusal calls a field otherwise
 *       cautions, sources,
 *       examples: [{ title, given: { bore: '65 mm' }, expect: { area: near(3318.3, 0.1, 'mm²') }, source, mark: 'calculated' }],
 *     });
 *
 * The key of a field is its id, and the field's own type (number in a unit, quantity as written, one of its choices,
 * `undefined` where it may be left out) is what `compute` gets: a misspelt or wrong-kind field does not compile.
 * A field that several sheets ask stands in a constant or a function and is put in by name: `fields: { bore, stroke }`.
 * A room throws its own kind of Refusal, which `run` says by the field's id; no try and catch in a sheet.
 */
export {
  type Answer,
  type AnswerValue,
  amount,
  computed,
  type Extra,
  type ForEach,
  judgement,
  lines,
  number,
  practice,
  ruleOfThumb,
  standard,
  verdict,
  words,
} from './answer.js';
export { boundsOf, Refusal, WorksheetError } from './error.js';
export { type Example, type Expected, isPublished, near } from './example.js';
export { type Ask, ask, type Field, optional } from './field.js';
export { type Group, groups } from './group.js';
export { curve, type Picture, type PictureAxis, type PictureBand, picture, spaced } from './picture.js';
export { type PrintedAnswer, printJson, printText, toldTo } from './print.js';
export { quantityWorksheets } from './quantity-worksheets.js';
export type { Point } from './read-points.js';
export { run, type WrittenFields } from './run.js';
export { describe, type Given, type Worksheet, type WorksheetDescription, worksheet } from './worksheet.js';
