import { describe, expect, test } from 'vitest';
import { headMetals, plugSeats, plugTorque, plugTorqueExtremes } from '../../src/fasten/spark-plug.js';
import { parseThread } from '../../src/quantity/index.js';

describe('spark plugs', () => {
  test('aluminum never takes more than iron, a conical seat never more than a gasket', () => {
    const most = (seat: (typeof plugSeats)[number], head: (typeof headMetals)[number]) =>
      plugTorque(parseThread('M14×1.25'), seat, head).highNm;
    for (const seat of plugSeats) expect(most(seat, 'aluminum')).toBeLessThanOrEqual(most(seat, 'iron'));
    for (const head of headMetals) expect(most('conical', head)).toBeLessThan(most('new gasket', head));
  });

  test('a used gasket turns less than a new one and takes the same torque', () => {
    const [fresh, used] = (['new gasket', 'used gasket'] as const).map((seat) =>
      plugTorque(parseThread('M14×1.25'), seat, 'aluminum'),
    );
    expect(used!.turns.high).toBeLessThan(fresh!.turns.low);
    expect(used!.highNm).toBe(fresh!.highNm);
  });

  test('the extremes span every row of a thread; other threads have none', () => {
    expect(plugTorqueExtremes(parseThread('M14×1.25'))).toEqual({ lowNm: 10, highNm: 35 });
    expect(plugTorqueExtremes(parseThread('M8'))).toBeUndefined();
  });

  test('a thread that is no plug thread, and a seat that is not made, are refused by name', () => {
    expect(() => plugTorque(parseThread('M14×2'), 'new gasket', 'iron')).toThrow(
      expect.objectContaining({ field: 'thread' }),
    );
    expect(() => plugTorque(parseThread('M10×1'), 'conical', 'iron')).toThrow(
      expect.objectContaining({ field: 'seat' }),
    );
  });
});
