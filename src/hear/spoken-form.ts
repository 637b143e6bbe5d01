/** So many phrases are told apart of each other in a shop, see bench/hear.ts; more are confused. */
export const mostPhrases = 8;
/** One word is too little to be told from noise. */
const fewestWords = 2;
const mostWords = 4;
/** short, without what comes after a comma, whole */
const mostForms = 3;

/** What stands on a button and what the question is about, as they are read. */
export interface ToSay {
  /** of the whole question: "Spark across open tester gap at pull speed" */
  readonly about: string;
  /** "strong", "thin, smells of gasoline" */
  readonly answers: readonly string[];
}

/**
 * What is said for each answer of a question, in the order in which they stand; nothing for one that cannot be told by its
 * words. It is the answer's own words up to its first comma, four at most, and more only where two would be said alike; a
 * single word is said of what the question is about ("spark strong", "no spark"), or of "it".
 */
export function spokenForms({ about, answers }: ToSay): (string | undefined)[] {
  const subject = subjectOf(about);
  const forms = answers.map((answer) => formsOf(answer, subject));
  let said = forms.map((each) => each[0]);
  for (let n = 1; n < mostForms; n += 1) {
    const before = said;
    said = before.map((phrase, i) => (isTwice(before, phrase) ? (forms[i]![n] ?? phrase) : phrase));
  }
  return said.map((phrase) => (isTwice(said, phrase) ? undefined : phrase));
}

const isTwice = (said: readonly (string | undefined)[], phrase: string | undefined): boolean =>
  said.filter((each) => each === phrase).length > 1;

/** From the shortest that may be said to the whole; none where a sign stands in it that nobody says. */
function formsOf(answer: string, subject: string | undefined): string[] {
  const plain = answer.replace(/\(.*?\)/g, '');
  const whole = wordsOf(plain.replace(/[,;:]/g, ' '));
  if (!whole?.[0]) return [];
  if (whole.length < fewestWords) return [ofSubject(whole[0], subject)];
  const first = beforeOr(wordsOf(plain.split(/[,;:]/)[0]!) ?? []);
  const part = first.length < fewestWords ? whole : first;
  return [part.length > mostWords ? withoutLooseEnd(part.slice(0, mostWords)) : part, part, whole].map(
    (words) => words.join(' '),
  );
}

/** "shroud or baffle missing", and "stuck in its seat" of "stuck in its seat or worn" */
function beforeOr(words: readonly string[]): readonly string[] {
  const at = words.indexOf('or');
  return at < fewestWords ? words : words.slice(0, at);
}

/** "the intake valve stays" and not "the engine holds its" */
function withoutLooseEnd(words: readonly string[]): string[] {
  const kept = words.findLastIndex((word) => !looseEnds.has(word)) + 1;
  return words.slice(0, Math.max(fewestWords, kept));
}
const looseEnds = new Set('a an the its their of at in on to by with and or as is'.split(' '));

/** One word alone is said of what the question is about. */
function ofSubject(word: string, subject: string | undefined): string {
  if (word === 'yes') return 'yes it does';
  if (word === 'no') return 'no it does not';
  if (word === 'none' && subject) return `no ${subject}`;
  if (subject) return `${subject} ${word}`;
  return /[^s]s$/.test(word) ? `it ${word}` : `it is ${word}`;
}

/** "Oil level as received" → "oil level"; nothing where it is longer than two words. */
function subjectOf(about: string): string | undefined {
  const head = about.split(
    /[,:(?]| (?:across|after|as|at|before|by|during|from|held|in|into|of|running|through|while|with|and|again|to) /,
  )[0]!;
  const words = wordsOf(head);
  return words && words.length > 0 && words.length <= 2 ? words.join(' ') : undefined;
}

/** Small letters and numbers in words; nothing where a sign is left that nobody says. */
function wordsOf(text: string): string[] | undefined {
  const spelled = text
    .toLowerCase()
    .replaceAll('’', "'")
    .replace(/(\d)\.(\d)/g, '$1 point $2')
    .replace(/(\d\s*)(mm|in|v|s)\b/g, (_, n: string, unit: string) => `${n} ${units[unit]}`)
    .replace(
      /(\d+)(½)?/g,
      (_, digits: string, half?: string) => ` ${numberWords(Number(digits))}${half ? ' and a half' : ''} `,
    )
    .replace(/½/g, ' one half ')
    .replace(/°c/g, ' degrees ')
    .replace(/%/g, ' percent ')
    .replace(/[-–—/.]/g, ' ');
  const words = spelled.split(/\s+/).filter((word) => word !== '');
  return words.every((word) => /^[a-z']+$/.test(word)) ? words : undefined;
}

const units: Readonly<Record<string, string>> = { mm: 'millimeters', in: 'inches', v: 'volts', s: 'seconds' };

const small =
  'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(
    ' ',
  );
const tens = 'twenty thirty forty fifty sixty seventy eighty ninety'.split(' ');

/** 0 to 999; beyond, digit by digit. */
function numberWords(n: number): string {
  if (n < 20) return small[n]!;
  if (n < 100) return [tens[Math.floor(n / 10) - 2], n % 10 > 0 && small[n % 10]].filter(Boolean).join(' ');
  if (n < 1000)
    return [small[Math.floor(n / 100)], 'hundred', n % 100 > 0 && numberWords(n % 100)]
      .filter(Boolean)
      .join(' ');
  return [...String(n)].map((digit) => small[Number(digit)]).join(' ');
}
