export type { BillLine } from './bill.js';
export { type Orders, partName } from './order.js';
