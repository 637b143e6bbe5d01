import { expect, test } from 'vitest';
import { of, parse, requirePlausible } from '../../src/quantity/index.js';
import { expectRefusal } from './refusal.js';

const bolt = {
  low: of(20, 'in-lb'),
  high: of(25, 'ft-lb'),
  because: 'a 5/16-18 bolt',
  likelyUnits: ['in-lb', 'ft-lb', 'N·m'],
};

test('a torque in the wrong pounds is refused, and the likely reading named', () => {
  const error = expectRefusal(() => requirePlausible(parse('140 ft-lb'), bolt), 'implausible');
  expect(error.message).toBe(
    '140 ft-lb is far above what a 5/16-18 bolt takes (at most 25 ft-lb); 140 in-lb would be plausible',
  );
  expect(error).toMatchObject({ text: '140 ft-lb', hint: '140 in-lb would be plausible' });
});

test('too little is refused the same way, the bound in the unit that was written', () => {
  const error = expectRefusal(() => requirePlausible(parse('15 in-lb'), bolt), 'implausible');
  expect(error.message).toBe(
    '15 in-lb is below what a 5/16-18 bolt takes (at least 20 in-lb); 15 ft-lb or 15 N·m would be plausible',
  );
});

test('what lies within or on the bounds is handed back itself', () => {
  for (const text of ['20 in-lb', '140 in-lb', '25 ft-lb', '15 N·m']) {
    const torque = parse(text, 'torque');
    expect(requirePlausible(torque, bolt)).toBe(torque);
  }
});

test('when no unit makes sense of the number none is offered', () => {
  const error = expectRefusal(() => requirePlausible(parse('9000 ft-lb'), bolt), 'implausible', 'far above');
  expect(error.hint).toBeUndefined();
});

test('units of another kind are never offered, bounds of another kind never compared', () => {
  const error = expectRefusal(
    () => requirePlausible(parse('140 ft-lb'), { ...bolt, likelyUnits: ['psi', 'in-lb'] }),
    'implausible',
  );
  expect(error.hint).toBe('140 in-lb would be plausible');
  expectRefusal(() => requirePlausible(parse('140 psi'), bolt), 'kind-mismatch');
});
