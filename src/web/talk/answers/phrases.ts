/** What is said in step mode, wherever the same thing is meant. Two words or more each; none sounds like another. */
export const phrases = {
  clicked: 'that one clicked',
  turns: 'keeps turning',
  takeBack: 'cancel the last one',
  whatNext: 'what is next',
  tight: 'how tight',
  again: 'say again',
  next: 'next one',
  back: 'the one before',
  isSo: 'it is so',
  allSo: 'all of it is so',
  notSo: 'something is wrong',
  missing: 'one is missing',
  number: 'take a number',
  higher: 'a higher number',
  lower: 'further down',
  outcomes: 'leave the numbers',
} as const;
