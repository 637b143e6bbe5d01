import { existsSync, readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { desk, findWorksheet } from '../../src/desk/index.js';
import {
  describe as describeWorksheet,
  isPublished,
  run,
  toldTo,
  type Worksheet,
} from '../../src/worksheet/index.js';
import { checkExample } from '../support/check-example.js';

test('no two worksheets of the desk share an id', () => {
  const ids = desk.map(({ id }) => id);
  expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([]);
  for (const id of ids) expect(id).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
});

test('a worksheet is found by its id, and nothing else by another', () => {
  for (const worksheet of desk) expect(findWorksheet(worksheet.id)).toBe(worksheet);
  for (const id of ['', 'constructor', 'none', 'CONVERT']) expect(findWorksheet(id)).toBeUndefined();
});

test('the worksheets of every room that has some are on the desk', async () => {
  const source = resolve(import.meta.dirname, '../../src');
  const rooms = readdirSync(source).filter((room) => existsSync(join(source, room, 'worksheets.ts')));
  expect(rooms).toContain('fasten');
  for (const room of rooms) {
    const { worksheets } = (await import(join(source, room, 'worksheets.ts'))) as { worksheets: Worksheet[] };
    for (const worksheet of worksheets) expect(desk, `${room}: ${worksheet.id}`).toContain(worksheet);
  }
});

test('every worksheet asks a question, names its sources and has an example', () => {
  for (const { id, question, sources, examples } of desk) {
    expect(question, id).toMatch(/\?$/);
    expect(sources.length, id).toBeGreaterThan(0);
    expect(examples.length, id).toBeGreaterThan(0);
  }
});

test('an example that is called published is not our own arithmetic', () => {
  const published = desk.flatMap(({ id, examples }) =>
    examples.filter(isPublished).map(({ source }) => [id, source] as const),
  );
  expect(published.length).toBeGreaterThan(40);
  for (const [id, source] of published)
    expect(source, id).not.toMatch(/\bown\b|arithmetic|computed apart|by definition|^exact/i);
});

test('no two fields of a worksheet share an id, and every choice can be chosen', () => {
  for (const { id, fields } of desk) {
    const names = fields.map((field) => field.id);
    expect(new Set(names).size, id).toBe(names.length);
    for (const field of fields) {
      if (field.kind === 'choice') expect(field.choices?.length, `${id}.${field.id}`).toBeGreaterThan(1);
    }
  }
});

test('every answer, and every curve, mark and band of its picture, says what it is', () => {
  const blank = /^\W*$|undefined|NaN/;
  for (const worksheet of desk)
    for (const { given, title } of worksheet.examples) {
      const answers = answersOf(worksheet, given);
      const ids = answers.map(({ id }) => id);
      expect(new Set(ids).size, `${worksheet.id}: ${title}`).toBe(ids.length);
      const words = answers.flatMap(({ id, label, value, origin, note, picture }) => [
        ...[id, label, origin.from],
        ...(note === undefined ? [] : [note]),
        ...(value.type === 'list'
          ? value.items
          : 'text' in value
            ? [toldTo(value.text, 'inch'), toldTo(value.text, 'metric')]
            : []),
        ...(picture ? [picture.title, picture.says, picture.x.label, picture.y.label] : []),
        ...(picture?.curves ?? []).map((curve) => curve.label),
        ...(picture?.marks ?? []).map((mark) => mark.label ?? 'a mark without words'),
        ...(picture?.bands ?? []).map((band) => band.label),
      ]);
      expect(
        words.filter((each) => blank.test(each)),
        `${worksheet.id}: ${title}`,
      ).toEqual([]);
    }
});

/** What it answers; nothing where the example is one that must be refused. */
function answersOf(worksheet: Worksheet, given: Worksheet['examples'][number]['given']) {
  try {
    return run(worksheet, given);
  } catch {
    return [];
  }
}

test('a description survives the wire unchanged', () => {
  for (const worksheet of desk) {
    const described = describeWorksheet(worksheet);
    expect(JSON.parse(JSON.stringify(described))).toEqual(described);
  }
});

describe.each(desk.map((worksheet) => [worksheet.id, worksheet] as const))('%s', (_id, worksheet) => {
  const examples = worksheet.examples.map(
    (each) => [`${each.title} [${each.source}; ${each.mark}]`, each] as const,
  );
  test.each(examples)('%s', (_title, example) => {
    const checks = checkExample(worksheet, example);
    expect(checks.length).toBeGreaterThan(0);
    expect(checks.filter(({ ok }) => !ok)).toEqual([]);
  });
});
