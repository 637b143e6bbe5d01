/** A number at the head of what a person wrote. */
export interface WrittenNumber {
  readonly value: number;
  /** the number as written, without what follows */
  readonly text: string;
  readonly form: 'decimal' | 'fraction';
  /** digits after the decimal point; undefined for a fraction */
  readonly decimals: number | undefined;
  /** set for "1,250", which is 1250 to one reader and 1.250 to another; `value` is the first */
  readonly asDecimalComma?: number;
}

export interface ReadNumber {
  readonly number: WrittenNumber;
  readonly rest: string;
}

const vulgar: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

const words: readonly (readonly [RegExp, string])[] = [
  [/^three[- ]quarters?( of)?( an?)?\b/i, '3/4'],
  [/^(an? |one )?half( of)?( an?)?\b/i, '1/2'],
  [/^(an? |one )?quarter( of)?( an?)?\b/i, '1/4'],
];

/**
 * The number a text begins with and what is left after it: decimals ("140", ".030", "1.2e3"), groups ("3,600"),
 * a decimal comma ("0,76"), fractions ("3/64", "1-1/4", "1 1/4", "1½"), "half a". Undefined when there is none.
 *
 * A comma before exactly three digits is doubtful and says so in `asDecimalComma`; with a leading zero, with more
 * than one group or with another count of digits it can only be read one way.
 * Groups of three set off by a no-break or thin space are one number; by a plain space they are two.
 */
export function readNumber(text: string): ReadNumber | undefined {
  const plain = spellOut(text.trimStart());
  const [, sign = '', body = ''] = /^([-+−–]?)\s*(.*)$/s.exec(plain) ?? [];
  const read = readFraction(body) ?? readGrouped(body) ?? readDecimalComma(body) ?? readDecimal(body);
  // "1.2.3" and "1,234,5" are no numbers, nor the beginnings of one
  if (!read || /^([.,]\d|[/⁄])/.test(read.rest)) return undefined;
  return sign === '-' || sign === '−' || sign === '–' ? negated(read, sign) : read;
}

function spellOut(text: string): string {
  const said = words.reduce((t, [from, into]) => t.replace(from, `${into} `), text);
  return said.replace(/[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]/g, (sign) => ` ${vulgar[sign]}`).trimStart();
}

function negated({ number, rest }: ReadNumber, sign: string): ReadNumber {
  const { asDecimalComma } = number;
  return {
    number: {
      ...number,
      value: -number.value,
      text: sign + number.text,
      ...(asDecimalComma !== undefined && { asDecimalComma: -asDecimalComma }),
    },
    rest,
  };
}

function readFraction(body: string): ReadNumber | undefined {
  const mixed = /^(\d+)(?:\s*[-‐‑–]\s*|\s+(?:and\s+)?)(\d+)\s*[/⁄∕]\s*(\d+)(?![\d.,/⁄]*\d)/.exec(body);
  if (mixed && Number(mixed[2]) < Number(mixed[3])) {
    return fraction(mixed[0], Number(mixed[1]), Number(mixed[2]), Number(mixed[3]), body);
  }
  const simple = /^(\d+)\s*[/⁄∕]\s*(\d+)(?![\d.,/⁄]*\d)/.exec(body);
  if (!simple || Number(simple[2]) === 0) return undefined;
  return fraction(simple[0], 0, Number(simple[1]), Number(simple[2]), body);
}

function fraction(text: string, whole: number, over: number, under: number, body: string): ReadNumber {
  const value = (whole * under + over) / under;
  return { number: { value, text, form: 'fraction', decimals: undefined }, rest: body.slice(text.length) };
}

/** "3,600", "1,234.5", "1.234,5", and groups set off by a no-break, thin or narrow space. */
function readGrouped(body: string): ReadNumber | undefined {
  const comma = /^[1-9]\d{0,2}(?:,\d{3})+(\.\d+)?(?![\d,])/.exec(body);
  if (comma) return groupedByComma(comma[0], comma[1], body);
  const dots = /^[1-9]\d{0,2}(?:\.\d{3})+,(\d+)(?![\d,.])/.exec(body);
  if (dots) return decimal(dots[0], dots[0].replaceAll('.', '').replace(',', '.'), body);
  const spaces = /^[1-9]\d{0,2}(?:[\u00a0\u2009\u202f]\d{3})+([.,]\d+)?(?!\d)/.exec(body);
  if (spaces)
    return decimal(spaces[0], spaces[0].replace(/[\u00a0\u2009\u202f]/g, '').replace(',', '.'), body);
  return undefined;
}

function groupedByComma(text: string, point: string | undefined, body: string): ReadNumber {
  const read = decimal(text, text.replaceAll(',', ''), body);
  const commas = text.split(',').length - 1;
  if (commas > 1 || point) return read;
  return { ...read, number: { ...read.number, asDecimalComma: Number(text.replace(',', '.')) } };
}

function readDecimalComma(body: string): ReadNumber | undefined {
  const found = /^\d*,\d+(?![\d,.]*\d)/.exec(body);
  return found ? decimal(found[0], found[0].replace(',', '.'), body) : undefined;
}

function readDecimal(body: string): ReadNumber | undefined {
  const found = /^(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?/.exec(body);
  return found ? decimal(found[0], found[0], body) : undefined;
}

function decimal(text: string, figures: string, body: string): ReadNumber {
  const [mantissa = '', exponent = '0'] = figures.toLowerCase().split('e');
  const places = (mantissa.split('.')[1] ?? '').length - Number(exponent);
  const number = { value: Number(figures), text, form: 'decimal', decimals: Math.max(0, places) } as const;
  return { number, rest: body.slice(text.length) };
}
