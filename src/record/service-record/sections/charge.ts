import { joined, minutesWords, money, price } from '../../../phrase/index.js';
import type { Fact, Section } from '../section.js';
import type { Sheet } from '../sheet.js';

/** Hours, parts and the total, by the list that a quote stands on; the money where the shop's rate is written down. */
export function charge({ answers }: Sheet): Section | undefined {
  const sum = answers.charge;
  if (!sum) return undefined;
  const { currency, minutes, parts, unpriced, ratePerHour, labor, total, quoted } = sum;
  const looked =
    sum.lookedMinutes > 0 && `the checks made, ${minutesWords(sum.lookedMinutes)}, are not in it`;
  const facts: (Fact | undefined)[] = [
    {
      label: 'Hours',
      value: joined([minutesWords(minutes), labor !== undefined && price(currency, labor)], ', '),
      origin: joined([
        sum.by === 'repairs'
          ? 'by the list of minutes'
          : 'taking off and putting back, by the list of minutes',
        ratePerHour !== undefined && `${money(currency, ratePerHour)} an hour`,
        looked,
      ]),
    },
    {
      label: 'Parts',
      value: answers.partsUsed.length > 0 ? price(currency, parts) : 'none fitted',
      ...(unpriced > 0 && { origin: `${unpriced} without a price in ${currency}` }),
    },
    total === undefined
      ? undefined
      : { label: 'Total', value: price(currency, total), origin: 'labor and parts' },
    quoted && {
      label: 'Quoted',
      value: money(quoted.currency, quoted.amount),
      origin: 'as agreed when it was decided',
    },
  ];
  const known = facts.filter((fact) => fact !== undefined);
  return {
    id: 'charge',
    title: 'Hours, parts, total',
    place: 'column',
    blocks: [{ type: 'facts', facts: known }],
  };
}
