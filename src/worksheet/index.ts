export {
  amount,
  computed,
  type Extra,
  judgement,
  lines,
  number,
  practice,
  refusingAs,
  ruleOfThumb,
  standard,
  verdict,
  words,
} from './answers.js';
export { type Check, checkExample } from './checks.js';
export { describe, type WorksheetDescription } from './describe.js';
export { ask, choice, optional, standing } from './fields.js';
export { curve, type Picture, type PictureAxis, type PictureBand, picture, spaced } from './picture.js';
export { type PrintedAnswer, printJson, printText } from './print.js';
export { quantityWorksheets } from './quantity-worksheets.js';
export { run, type WrittenFields } from './run.js';
export {
  type Answer,
  type AnswerValue,
  type Example,
  type Expected,
  type Field,
  type Given,
  type Point,
  type Worksheet,
  WorksheetError,
} from './worksheet.js';
