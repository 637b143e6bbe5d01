import type { Catalog, PlateScheme } from '../catalog.js';
import { readDateCode } from './date-code.js';

export interface PlatePart {
  /** what the figures stand for: "date code" */
  readonly part: string;
  /** the figures as they stand on the plate */
  readonly value: string;
  readonly meaning: string;
  /** false where the scheme gives no meaning to the value */
  readonly known: boolean;
}

export interface PlateReading {
  readonly scheme: string;
  readonly name: string;
  readonly maker?: string;
  readonly invented?: true;
  readonly parts: readonly PlatePart[];
  /** 0 to 1: the scheme's weight, times the share of the text it explains, times the share of parts with a meaning */
  readonly fit: number;
  /** what the scheme does not explain */
  readonly leftOver: string;
  readonly note?: string;
}

/** Longer than any plate; keeps a pattern of a foreign pack from taking time. */
const longestPiece = 200;

/**
 * The ways in which the catalog's schemes read a plate, the best fit first. Letter case, line breaks and the width
 * of spaces do not count. Nothing is invented: a value to which a scheme gives no meaning is said to be unknown,
 * and a code that can mean several days says all of them. Text that no scheme fits gives no reading.
 *
 * Example: "MODEL 094512 TYPE 0312-02 CODE 87031405" → model-type-code, date code "made 14 March 1987".
 */
export function readPlate(catalog: Catalog, text: string): readonly PlateReading[] {
  const pieces = piecesOf(text);
  const whole = lengthOf(pieces[0] ?? '');
  return catalog.plateSchemes
    .flatMap((scheme) => bestReading(scheme, pieces, whole) ?? [])
    .toSorted((a, b) => b.fit - a.fit);
}

/** The whole text, then each of its lines. */
function piecesOf(text: string): string[] {
  const tidy = (piece: string) =>
    piece
      .toUpperCase()
      .replace(/[‐‑‒–−]/g, '-')
      .replace(/\s+/g, ' ')
      .trim();
  const pieces = [tidy(text), ...text.split(/\r?\n/).map(tidy)];
  return [...new Set(pieces)].filter((piece) => piece !== '' && piece.length <= longestPiece).slice(0, 20);
}

const lengthOf = (text: string) => text.replaceAll(' ', '').length;

function bestReading(
  scheme: PlateScheme,
  pieces: readonly string[],
  whole: number,
): PlateReading | undefined {
  const pattern = new RegExp(scheme.pattern);
  const readings = pieces.flatMap((piece) => read(scheme, pattern, piece, whole) ?? []);
  return readings.toSorted((a, b) => b.fit - a.fit)[0];
}

function read(scheme: PlateScheme, pattern: RegExp, piece: string, whole: number): PlateReading | undefined {
  const match = pattern.exec(piece);
  if (!match) return undefined;
  // a part with fixed words says the same of every value: it does not speak for the scheme
  const parts = scheme.parts.flatMap((part) => {
    const value = match.groups?.[part.group]?.trim();
    return value
      ? [{ part: part.name, value, ...meaningOf(part, value), fixed: part.words !== undefined }]
      : [];
  });
  const known = parts.filter((part) => part.known).length;
  if (parts.every((part) => !part.known || part.fixed)) return undefined;
  return {
    scheme: scheme.id,
    name: scheme.name,
    ...(scheme.maker !== undefined && { maker: scheme.maker }),
    ...(scheme.invented && { invented: scheme.invented }),
    parts: parts.map(({ fixed: _fixed, ...part }) => part),
    fit: scheme.weight * (lengthOf(match[0]) / whole) * (known / parts.length),
    leftOver: `${piece.slice(0, match.index)} ${piece.slice(match.index + match[0].length)}`.trim(),
    ...(scheme.note !== undefined && { note: scheme.note }),
  };
}

function meaningOf(part: PlateScheme['parts'][number], value: string): { meaning: string; known: boolean } {
  if (part.words !== undefined) return { meaning: part.words, known: true };
  if (part.number) return { meaning: `${counted(value, part.number.times)} ${part.number.of}`, known: true };
  if (part.date) {
    const { words, known } = readDateCode(value, part.date);
    return { meaning: words, known };
  }
  const meaning = part.table && Object.hasOwn(part.table, value) ? part.table[value] : undefined;
  return meaning === undefined
    ? { meaning: `unknown: this scheme gives no meaning to “${value}”`, known: false }
    : { meaning, known: true };
}

function counted(value: string, times: number | undefined): string {
  return times === undefined ? String(Number(value)) : String(Number((Number(value) * times).toPrecision(6)));
}
