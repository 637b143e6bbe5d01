import { expect, test } from 'vitest';
import { desk, deskGroups, findWorksheets } from '../../src/desk/index.js';

test('every worksheet stands in one group of the desk', () => {
  const grouped = deskGroups.flatMap(({ worksheets }) => worksheets.map(({ id }) => id));
  expect([...grouped].sort()).toEqual(desk.map(({ id }) => id).sort());
});

test('every worksheet is found by its own question and by its title', () => {
  for (const worksheet of desk)
    for (const words of [worksheet.question, worksheet.title.replace(/[:;]/g, ' ')])
      expect(findWorksheets(desk, words), words).toContain(worksheet);
});

test.each([
  ['Is this bore worn out?', 'bore-map'],
  ['cylinder worn', 'bore-map'],
  ['tappet', 'valve-clearance-side-valve'],
  ['lash', 'valve-clearance-overhead'],
  ['warped head', 'flatness'],
  ['petrol old', 'fuel-age'],
  ['premix', 'two-stroke-mix'],
  ['rebore', 'bore-oversize'],
  ['timing key', 'spark-shift'],
  ['helical insert', 'thread-repair'],
  ['skim', 'compression-ratio'],
  ['metric', 'convert'],
])('"%s" finds %s', (typed, id) => {
  expect(findWorksheets(desk, typed).map((w) => w.id)).toContain(id);
});

test('what has the word in its question comes before what has it in a field', () => {
  expect(findWorksheets(desk, 'worn bore')[0]!.id).toBe('bore-map');
});

test('a short word is not found inside another', () => {
  expect(findWorksheets(desk, 'rod').map((w) => w.id)).not.toContain('uncertainty-budget');
  expect(findWorksheets(desk, 'zzz')).toEqual([]);
});
