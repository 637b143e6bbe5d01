import type { SpecValue } from './value.js';

/** What one line of a maker's sheet was understood to say. */
export interface SpecLine extends SpecValue {
  /** the line as pasted */
  readonly line: string;
  /** the part of it that names the thing */
  readonly label: string;
  /** the spec, where the label is exactly one that the vocabulary knows */
  readonly spec?: string;
  /** spec ids that may be meant, the nearest first, where none is exact */
  readonly candidates: readonly string[];
}

/** A place at which a line may be cut into label and value. */
export interface Cut {
  readonly label: string;
  readonly value: string;
}

/** Longer than any line of a sheet. */
export const longestLine = 400;

/** Dot leaders, tabs and rows of underscores become one separator; a list mark in front goes. */
export function tidyLine(line: string): string {
  return line
    .replace(/[\t\v\f\u00a0\u2000-\u200a\u202f]+/g, ' ')
    .replace(/(?:\s*\.){3,}|\s*\.{2,}(?=\s|\d|$)|…+|_{2,}|\|/g, ' : ')
    .replace(/^\s*(?:[-*•·–]\s+|\d{1,2}[.)]\s+(?=\p{L}))/u, '')
    .replace(/\s+/g, ' ')
    .trim();
}

/** Every cut between two words, the longest label first. */
export function cutsOf(line: string): Cut[] {
  const cuts = [...line.matchAll(/(?<=[\s:=])(?=[^\s:=])/g)].map(({ index }) => ({
    label: line.slice(0, index).replace(/[\s:=,;–-]+$/, ''),
    value: line.slice(index).trim(),
  }));
  return cuts.filter(({ label }) => /\p{L}/u.test(label)).toReversed();
}

/** The cut a reader would make: at the separator, else before the first number. */
export function likelyCut(line: string): Cut {
  const cuts = cutsOf(line);
  const atSeparator = cuts.findLast(({ label }) => /^\s*[:=]/.test(line.slice(label.length)));
  const atNumber = cuts.findLast(({ value }) => /^[<>≤≥±~]?\s*[.\d½¼¾⅛]/.test(value));
  return atSeparator ?? atNumber ?? { label: line, value: '' };
}

/** Before a word that leads a number of its own, behind a number with its unit. */
const nextLabel =
  /(?<=\d\s?[\p{L}°%"'·./-]{1,6})\s+(?=(?!to |and |or |through |max|min|at |over |under |up )\p{L}[\p{L} ]*\.?\s+[.\d])/iu;
const itemBreak = new RegExp(`[;,]\\s+|\\s+\\/\\s+|\\s*[([]|[)\\]]\\s*|${nextLabel.source}`, 'iu');

/**
 * What a value holds: one item, or several after commas, semicolons, brackets, a slash between blanks, or a word
 * that leads a number of its own ("0.10 mm Ex 0.15 mm", but not "to 160 in-lb").
 */
export function itemsOf(value: string): string[] {
  return value
    .split(itemBreak)
    .map((item) => item.trim())
    .filter((item) => item !== '')
    .slice(0, 6);
}
