/** "head gasket" → "Head gasket" */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** "Head gasket" → "head gasket": a name within a sentence */
export const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/**
 * A fault as a sentence has it: without what its name explains behind a colon, a semicolon or in parentheses, where two words
 * or more are left.
 *
 * Example: "Control cable seized or mis-set: choke, run or stop not reached" → "control cable seized or mis-set"
 */
export function withinSentence(name: string): string {
  const short = name.split(/[:;]| \(/)[0]!.trim();
  return lowerFirst(short.includes(' ') ? short : name);
}
