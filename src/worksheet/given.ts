import { to } from '../quantity/index.js';
import type { FieldValue } from './read-field.js';
import { type Given, WorksheetError } from './worksheet.js';

export interface ReadField {
  readonly value: FieldValue;
  readonly written: string;
}

/** The parsed fields behind the getters a worksheet computes with. */
export function givenOf(fields: ReadonlyMap<string, ReadField>): Given {
  const read = (id: string): ReadField => {
    const found = fields.get(id);
    if (!found) throw new WorksheetError(`${id} is not given`, id);
    return found;
  };
  const value = <T extends FieldValue['type']>(id: string, type: T): Extract<FieldValue, { type: T }> => {
    const { value: found } = read(id);
    if (found.type === type) return found as Extract<FieldValue, { type: T }>;
    throw new WorksheetError(`${id} is a ${found.type}, asked for as a ${type}`, id);
  };
  return {
    has: (id) => fields.has(id),
    quantity: (id) => value(id, 'quantity').quantity,
    si: (id) => value(id, 'quantity').quantity.si,
    in: (id, unit) => to(value(id, 'quantity').quantity, unit),
    thread: (id) => value(id, 'thread').thread,
    choice: (id) => value(id, 'choice').choice,
    number: (id) => value(id, 'number').number,
    text: (id) => value(id, 'text').text,
    points: (id) => value(id, 'points').points,
    list: (id) => value(id, 'list').list,
    written: (id) => read(id).written,
  };
}
