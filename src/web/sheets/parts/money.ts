export const money = (currency: string, amount: number): string => `${currency}${amount.toFixed(2)}`;

const days = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'] as const;
const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;

/** "2026-11-27" as it is said at the bench: "Fri Nov 27". */
export function dayWords(date: string): string {
  const at = new Date(`${date}T00:00:00Z`);
  return Number.isNaN(at.getTime())
    ? date
    : `${days[at.getUTCDay()]} ${months[at.getUTCMonth()]} ${at.getUTCDate()}`;
}
