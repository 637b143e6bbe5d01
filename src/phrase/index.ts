export { capital, lowerFirst, withinSentence } from './case.js';
export { counted, countWord, picturesAndSounds, plural } from './count.js';
export { dayNames, dayWords, monthNames, shortDay, shortDays, timeWords, weekDay, withDays } from './day.js';
export { joined, listed, saidOnce } from './list.js';
export { clockWords, minutesWords, roughHours, roughSpan } from './minutes.js';
export { money, price, roughMoney, thousands } from './money.js';
export { inPercent, percent } from './percent.js';
export { PlacedError } from './placed-error.js';
export { cutShort, sentence } from './sentence.js';
