import { describe, expect, test } from 'vitest';
import { findWorksheet } from '../../src/desk/index.js';
import { printJson, run, WorksheetError } from '../../src/worksheet/index.js';

/** What must not pass: each of these did. */

const answer = (sheet: string, id: string, given: Record<string, string>) =>
  printJson(run(findWorksheet(sheet)!, given)).find((each) => each.id === id)!;
const verdictOf = (sheet: string, given: Record<string, string>, id = 'verdict') => answer(sheet, id, given);

describe('what does not go together fails, whatever limit is given', () => {
  test('a piston larger than its bore', () => {
    const fit = { hole: '65.00 mm', shaft: '65.03 mm', most: '0.15 mm' };
    expect(verdictOf('piston-clearance', fit)).toMatchObject({ verdict: 'fail' });
    expect(verdictOf('piston-clearance', { hole: '65.00 mm', shaft: '65.03 mm' })).toMatchObject({
      verdict: 'fail',
    });
    expect(verdictOf('piston-clearance', fit).text).toMatch(/the piston is larger than its bore/);
  });

  test('a stem larger than its guide, a crankpin larger than its rod', () => {
    expect(
      verdictOf('guide-clearance', { hole: '0.2500 in', shaft: '0.2520 in', most: '0.0045 in' }),
    ).toMatchObject({ verdict: 'fail' });
    expect(
      verdictOf('crankpin-clearance', { hole: '0.9990 in', shaft: '1.0010 in', most: '0.0025 in' }),
    ).toMatchObject({ verdict: 'fail' });
  });

  test('a shaft without end play binds', () => {
    const bound = { play: '0 in', fitted: '0.015 in', offered: '0.015; 0.020 in', most: '0.008 in' };
    expect(verdictOf('end-play-gasket', bound, 'now')).toMatchObject({ verdict: 'fail' });
    expect(verdictOf('end-play-gasket', bound, 'now').text).toMatch(/binds/);
  });

  test('a ring gap smaller than what heat closes, with only the most given', () => {
    const butting = { gap: '0.002 in', bore: '2.5625 in', most: '0.030 in' };
    expect(verdictOf('ring-end-gap', butting)).toMatchObject({ verdict: 'fail' });
    expect(verdictOf('ring-end-gap', butting).text).toMatch(/heat/);
  });

  test('a valve that no leaf enters under does not pass with only the most given', () => {
    for (const sheet of ['valve-clearance-side-valve', 'valve-clearance-overhead'])
      expect(
        verdictOf(sheet, {
          ...{ valve: 'intake', clearance: '0 mm', most: '0.2 mm' },
          ...(sheet.endsWith('overhead') && { pitch: '0.75 mm' }),
        }).verdict,
      ).not.toBe('pass');
  });
});

test('a ring gap smaller where the bore is worn is taken for readings swapped', () => {
  const swapped = { worn: '0.010 in', unworn: '0.019 in' };
  expect(() => run(findWorksheet('bore-growth-from-gaps')!, swapped)).toThrow(WorksheetError);
  expect(() => run(findWorksheet('bore-growth-from-gaps')!, swapped)).toThrow(/swapped/);
});

describe('a figure of the class decides nothing about one engine', () => {
  test.each([
    ['piston-clearance', 'verdict', { hole: '2.5640 in', shaft: '2.5605 in' }],
    ['crankpin-clearance', 'verdict', { hole: '1.0012 in', shaft: '0.9995 in' }],
    ['guide-clearance', 'verdict', { hole: '0.2530 in', shaft: '0.2500 in' }],
    ['guide-wobble', 'verdict', { rock: '0.005 in', lever: '0.8 in', guide: '1.6 in' }],
    ['ring-end-gap', 'verdict', { gap: '0.014 in', bore: '2.5625 in' }],
    ['bore-growth-from-gaps', 'verdict', { worn: '0.0102 in', unworn: '0.010 in' }],
    ['bore-map', 'wear-verdict', { standard: '2.5625 in', diameters: '2.5626; 2.5626; 2.5626; 2.5626 in' }],
    ['journal-wear', 'wear-verdict', { standard: '1 in', diameters: '1.0000; 1.0000; 1.0000; 1.0000 in' }],
    ['flatness-straightedge', 'verdict', { enters: '0 in', refuses: '0.001 in' }],
    ['flatness', 'verdict', { places: '0,0 60,0 60,40 0,40 30,20', heights: '0; 0; 0; 0; 0 mm' }],
    ['end-play-gasket', 'now', { play: '0.005 in', fitted: '0.015 in', offered: '0.015 in' }],
    ['valve-clearance-side-valve', 'verdict', { valve: 'intake', clearance: '0.006 in' }],
    ['valve-clearance-overhead', 'verdict', { valve: 'intake', clearance: '0.10 mm', pitch: '0.75 mm' }],
    ['coil-gap', 'verdict', { card: '0.010 in', 'run-out': '0.001 in', play: '0.001 in' }],
  ])('%s', (sheet, id, given) => {
    const said = answer(sheet, id, given as Record<string, string>);
    expect(said).toMatchObject({ verdict: 'cannot-decide' });
    expect(said.text).toMatch(/class figure only/);
    expect(said.text).toMatch(/this engine.s own/);
  });

  test('the same readings pass the maker’s limits', () => {
    expect(
      verdictOf('guide-clearance', {
        hole: '0.2530 in',
        shaft: '0.2500 in',
        least: '0.001 in',
        most: '0.0045 in',
      }),
    ).toMatchObject({ verdict: 'pass' });
  });
});

test('a coil gap is not passed while run-out and play are not measured', () => {
  const gap = { card: '0.012 in', least: '0.010 in', most: '0.014 in' };
  expect(verdictOf('coil-gap', gap)).toMatchObject({ verdict: 'cannot-decide' });
  expect(verdictOf('coil-gap', gap).text).toMatch(/not measured/);
  expect(verdictOf('coil-gap', { ...gap, 'run-out': '0 in', play: '0 in' })).toMatchObject({
    verdict: 'pass',
  });
});

describe('a torque that an ordinary bolt does not bear', () => {
  test('M6 at 30 N·m: a class 8.8 bolt breaks near 19 (800 MPa on 20.1 mm², K 0.20)', () => {
    const said = verdictOf('torque-plausible', { torque: '30 N·m', thread: 'M6' });
    expect(said).toMatchObject({ verdict: 'cannot-decide' });
    expect(said.text).toMatch(/8\.8.*breaks near 19\.3 N·m/);
    const graded = (grade: string) =>
      verdictOf('torque-plausible', { torque: '30 N·m', thread: 'M6', grade });
    expect(graded('8.8')).toMatchObject({ verdict: 'fail' });
    expect(verdictOf('torque-plausible', { torque: '10 N·m', thread: 'M6' })).toMatchObject({
      verdict: 'pass',
    });
  });

  test('nor does it hold a head down', () => {
    const head = {
      ...{ architecture: 'overhead-valve', bore: '68 mm', stroke: '54 mm', bolts: '4' },
      ...{ thread: 'M6', torque: '30 N·m' },
    };
    expect(verdictOf('firing-load', head, 'says').verdict).not.toBe('pass');
    expect(verdictOf('firing-load', head, 'says').text).toMatch(/8\.8/);
  });
});

test('a gauge that shows more than any such cylinder can hold tells nothing', () => {
  const said = answer('expected-compression', 'says', {
    ...{ architecture: 'side-valve', bore: '65 mm', stroke: '62 mm', release: 'none', reading: '400 psi' },
  });
  expect(said.text).toBe('The reading does not tell.');
  expect(said.note).toMatch(/more than/);
});

test('readings that cannot be of this part are refused', () => {
  const refused = (sheet: string, given: Record<string, string>) => () => run(findWorksheet(sheet)!, given);
  expect(
    refused('bore-map', { standard: '2.5625 in', diameters: '2.5600; 2.5602; 2.5601; 2.5600 in' }),
  ).toThrow(/under the standard bore/);
  expect(refused('bore-oversize', { standard: '2.5625 in', largest: '2.5600 in' })).toThrow(
    /under the standard bore/,
  );
  expect(refused('flatness', { places: '0,0 60,0 60,0 0,40 30,20', heights: '0; 0; 0.1; 0; 0 mm' })).toThrow(
    /two heights are given for one place/,
  );
  expect(
    answer('bore-map', 'cautions', { standard: '2.5625 in', diameters: '2.5626; 2.5626 in' }).text,
  ).toMatch(/taper was not measured/);
});

test('a two-stroke has its push on the head', () => {
  const push = answer('firing-load', 'head', {
    ...{
      architecture: 'two-stroke',
      bore: '46 mm',
      stroke: '34 mm',
      bolts: '4',
      thread: 'M5',
      torque: '6 N·m',
    },
  });
  expect(push.si).toBeGreaterThan(2000);
});

describe('what no part, oil or gauge can be is refused, not answered', () => {
  test.each([
    ['ring-end-gap', { gap: '-0.010 in', bore: '2.5625 in' }],
    ['end-play-gasket', { play: '-0.005 in', fitted: '0.015 in', offered: '0.015 in' }],
    ['compression-ratio', { bore: '65 mm', stroke: '62 mm', head: '29.391 cc', deck: '-5 mm' }],
    ['compression-ratio', { bore: '1000000000 mm', stroke: '62 mm', head: '29.391 cc' }],
    ['oil-viscosity', { 'at-forty': '100 mm²/s', 'at-hundred': '11 mm²/s', temperature: '-60 °C' }],
    [
      'expected-compression',
      { architecture: 'side-valve', bore: '65 mm', stroke: '62 mm', release: 'none', reading: '1000 psi' },
    ],
  ])('%s %j', (sheet, given) => {
    expect(() => run(findWorksheet(sheet)!, given as Record<string, string>)).toThrow(WorksheetError);
  });
});
