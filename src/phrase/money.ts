/** A price: "$4.00" */
export const price = (currency: string, amount: number): string => `${currency}${amount.toFixed(2)}`;

/** An amount as a person writes it: "$120", "$12.50" */
export const money = (currency: string, amount: number): string =>
  Number.isInteger(amount) ? `${currency}${amount}` : price(currency, amount);

/** An amount that is only about right: "$1,240" */
export const roughMoney = (currency: string, amount: number): string =>
  `${currency}${thousands(Math.round(amount))}`;

/** "20,000" */
export const thousands = (count: number): string => count.toLocaleString('en-US');
