/** A set of phrases that cannot be listened for: which line, and why. */
export class PhraseError extends Error {
  override readonly name = 'PhraseError';
}

/** More than these are confused with each other, see bench/hear.ts. */
const most = 40;

/**
 * The phrases of a list, one a line, in small letters and single spaces; empty lines and those after "#" are left out.
 * @throws PhraseError for none, one twice, too many, or signs that nobody says
 */
export function readPhrases(text: string): string[] {
  const phrases: string[] = [];
  text.split(/\r?\n/).forEach((line, n) => {
    const phrase = line.replace(/#.*/, '').trim().toLowerCase().replaceAll('’', "'").replace(/\s+/g, ' ');
    if (phrase === '') return;
    if (!/^[a-z']+( [a-z']+)*$/.test(phrase))
      throw new PhraseError(
        `Line ${n + 1}, “${phrase}”: a phrase is words in letters; write numbers as they are said.`,
      );
    if (phrases.includes(phrase)) throw new PhraseError(`Line ${n + 1}: “${phrase}” stands there twice.`);
    phrases.push(phrase);
  });
  if (phrases.length === 0) throw new PhraseError('There is no phrase in it. One stands on each line.');
  if (phrases.length > most)
    throw new PhraseError(`There are ${phrases.length} phrases; at most ${most} can be told apart at once.`);
  return phrases;
}
