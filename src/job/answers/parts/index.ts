export { type BillLine, billOfParts } from './bill.js';
export { basketProblemOf, type Orders, orderEntries, ordersOf, partName, toBuy } from './order.js';
