export {
  type Alternatives,
  alternatives,
  type Basket,
  type BasketOptions,
  basket,
  type IntegerSolver,
} from './basket.js';
export { type BasketProblem, readBasketProblem } from './basket-problem.js';
export { SupplyError, type SupplyErrorCode } from './error.js';
