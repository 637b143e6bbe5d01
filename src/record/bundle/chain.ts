import { canonicalLine, type RawEntry } from '../../job/index.js';
import { sha256Of } from './form.js';

/**
 * The digest of a job: SHA-256, lower-case hex, over the digest of the lines before and the last line, one after the other
 * in the order in which the store took them in. Whoever has it can be shown that a log handed over later, or its first
 * lines, are the ones that were kept: another sign in any of them gives another digest. The first line follows nothing.
 */
export async function jobDigest(entries: readonly RawEntry[]): Promise<string> {
  let digest = '';
  for (const entry of entries)
    digest = await sha256Of(new TextEncoder().encode(`${digest}\n${canonicalLine(entry)}`));
  return digest;
}
