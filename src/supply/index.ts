export {
  type Alternatives,
  alternatives,
  type Basket,
  type BasketOptions,
  basket,
  exactMoney,
  type IntegerSolver,
} from './basket.js';
export type { BasketProblem } from './basket-problem.js';
export { SupplyError, type SupplyErrorCode } from './error.js';
export { type CsvOffer, type CsvProblem, offersSample, readOffersCsv } from './offers-csv.js';
