import { describe, expect, test } from 'vitest';
import {
  examples,
  findUnit,
  kinds,
  parse,
  readUnit,
  siUnitOf,
  units,
  unitsOf,
} from '../../src/quantity/index.js';
import { expectRefusal } from './refusal.js';

describe('the unit table', () => {
  test('every kind has exactly one home for its SI value', () => {
    for (const kind of kinds) expect(siUnitOf(kind)).toMatchObject({ kind, factor: 1, offset: 0 });
  });

  test('every factor is a positive finite number, and only temperatures have an offset', () => {
    for (const unit of Object.values(units)) {
      expect(unit.factor, unit.id).toBeGreaterThan(0);
      expect(Number.isFinite(unit.factor), unit.id).toBe(true);
      if (unit.kind !== 'temperature') expect(unit.offset, unit.id).toBe(0);
    }
  });

  test('a unit is found under its own id and under every one of its spellings', () => {
    for (const unit of Object.values(units)) {
      expect(findUnit(unit.id)).toBe(unit);
      for (const spelling of unit.spellings) expect(readUnit(spelling).id, spelling).toBe(unit.id);
      for (const spelling of unit.whenWanted)
        expect(readUnit(spelling, unit.kind).id, spelling).toBe(unit.id);
    }
  });

  test('every id but the bare 1 is a spelling of itself', () => {
    for (const id of Object.keys(units).filter((each) => each !== '1')) expect(readUnit(id).id).toBe(id);
  });

  test('both systems have a unit wherever a kind is not shared between them', () => {
    for (const kind of kinds) {
      const systems = new Set(unitsOf(kind).map((unit) => unit.system));
      expect(systems.has('both') || (systems.has('inch') && systems.has('metric')), kind).toBe(true);
    }
  });

  test('every example of how a kind is written parses as that kind', () => {
    for (const kind of kinds) for (const each of examples[kind]) expect(parse(each, kind).kind).toBe(kind);
  });

  test('a unit id that is none is refused, inherited names of objects too', () => {
    for (const id of ['foo', '', 'constructor', '__proto__', 'toString']) {
      expectRefusal(() => findUnit(id), 'unknown-unit', `"${id}"`);
      if (id) expectRefusal(() => readUnit(id), 'unknown-unit');
    }
  });
});
