import { QuantityError } from './error.js';
import { spellingHint } from './hint.js';
import type { Kind } from './quantity.js';
import type { Unit } from './unit.js';

/** The refusals of parsing: each says what was written, what was wanted and how to write it. */

export function emptyText(want: Kind | undefined): QuantityError {
  return new QuantityError('empty', `nothing written${want ? ` where ${want} is wanted` : ''}`, {
    text: '',
    wanted: want,
    hint: spellingHint(want),
  });
}

/** Longer than any quantity, range or marking; keeps the reading of pasted pages from taking time. */
const longestText = 200;

/** The text without the blanks around it. Throws QuantityError when it is no quantity by its mere length. */
export function tidy(text: string, want?: Kind): string {
  const written = text.trim();
  if (written.length <= longestText) return written;
  const start = `${written.slice(0, 40)}…`;
  throw new QuantityError(
    'not-a-number',
    `${text.length} characters are no ${want ?? 'quantity'} ("${start}")`,
    {
      text: start,
      wanted: want,
      hint: spellingHint(want),
    },
  );
}

export function notANumber(text: string, want: Kind | undefined): QuantityError {
  return new QuantityError('not-a-number', `"${text}" does not begin with a number I can read`, {
    text,
    wanted: want,
    hint: spellingHint(want),
  });
}

export function noUnit(text: string, want: Kind | undefined): QuantityError {
  return new QuantityError('no-unit', `"${text}" has no unit`, {
    text,
    wanted: want,
    hint: spellingHint(want),
  });
}

export function percentOrTimes(text: string): QuantityError {
  return new QuantityError('ambiguous', `"${text}" may be ${text} % or ${text}:1`, {
    text,
    wanted: 'ratio',
    hint: `write ${text} % or ${text}:1`,
  });
}

export function twoNumbers(text: string, want: Kind | undefined): QuantityError {
  const thread = /^\s*#?[\d/]+\s*-\s*\d+\s*(UN\w*)?\s*$/i.test(text) ? '; this looks like a thread' : '';
  return new QuantityError(
    'ambiguous',
    `one ${want ?? 'quantity'} wanted, more than one number written in "${text}"${thread}`,
    {
      text,
      wanted: want,
      hint: 'write one number and its unit',
    },
  );
}

export function thousandsOrDecimal(text: string, thousands: number, decimals: number): QuantityError {
  return new QuantityError('ambiguous', `the comma in "${text}" may mean ${thousands} or ${decimals}`, {
    text,
    hint: `write ${thousands} or ${decimals}`,
  });
}

const ofWhat = {
  inch: 'inches of what? water and mercury differ 13.6 times',
  metric: 'millimeters of what? water and mercury differ 13.6 times',
} as const;

/** A unit of another kind than the one wanted. */
export function kindMismatch(text: string, want: Kind, unit: Unit): QuantityError {
  const detail = { text, wanted: want, given: unit.kind };
  if (want === 'pressure' && (unit.id === 'in' || unit.id === 'mm' || unit.id === 'cm')) {
    const column = unit.id === 'in' ? 'in' : unit.id;
    return new QuantityError(
      'ambiguous',
      `pressure wanted, "${text}" given: ${ofWhat[unit.id === 'in' ? 'inch' : 'metric']}`,
      {
        ...detail,
        hint: `write ${column}H2O or ${column}Hg`,
      },
    );
  }
  if (want === 'temperature' && unit.id === '°') {
    return new QuantityError('ambiguous', `temperature wanted, "${text}" given: degrees of which scale?`, {
      ...detail,
      hint: 'write °C or °F',
    });
  }
  return new QuantityError('kind-mismatch', `${want} wanted, ${unit.kind} given (${text})`, {
    ...detail,
    hint: mismatchHint(want, unit),
  });
}

function mismatchHint(want: Kind, unit: Unit): string {
  if (want === 'torque' && (unit.id === 'lb' || unit.id === 'lbf')) {
    return 'pounds on which arm? in-lb and ft-lb differ 12 times';
  }
  return spellingHint(want);
}
