import { describe, expect, test } from 'vitest';
import {
  externalMinors,
  minorExternalMm,
  minorInternalMm,
  pitchDiameterMm,
  stressAreaMm2,
} from '../../src/fasten/thread-form.js';
import { boltDiameterLimits, nutBoreLimits } from '../../src/fasten/thread-limits.js';
import { findThread, isPlugThread, threads, threadWords } from '../../src/fasten/threads.js';
import { parseThread } from '../../src/quantity/index.js';

describe('the thread lists', () => {
  test('every listed thread is read back from its own name', () => {
    for (const thread of threads) {
      expect(findThread(parseThread(thread.name)), thread.name).toBe(thread);
      expect(parseThread(thread.name).name).toBe(thread.name);
    }
  });

  test('no two rows are the same thread', () => {
    expect(
      new Set(threads.map(({ majorMm, pitchMm, system }) => `${system} ${majorMm} ${pitchMm}`)).size,
    ).toBe(threads.length);
  });

  test('of one size the coarse thread has the coarser pitch', () => {
    for (const coarse of threads.filter(
      ({ series }) => series.includes('UNC') || series.includes('metric coarse'),
    )) {
      const others = threads.filter(
        (each) => each !== coarse && each.system === coarse.system && each.majorMm === coarse.majorMm,
      );
      for (const other of others) expect(other.pitchMm).toBeLessThan(coarse.pitchMm);
    }
  });

  test('the spark plug threads are M10×1, M12×1.25, M14×1.25 and M18×1.5', () => {
    expect(threads.filter(isPlugThread).map(({ name }) => name)).toEqual([
      'M10×1',
      'M12×1.25',
      'M14×1.25',
      'M18×1.5',
    ]);
  });

  test('a thread outside the lists is named by its figures', () => {
    expect(threadWords(parseThread('M16×2'))).toBe('M16×2');
    expect(threadWords(parseThread('3/4-16'))).toBe('0.75-16');
    expect(threadWords(parseThread('M8'))).toBe('M8×1.25');
  });
});

describe('the 60° form', () => {
  test('root, minor, pitch and major diameter stand in this order', () => {
    for (const thread of threads) {
      const rising = [
        minorExternalMm(thread, 'sharp-root'),
        minorExternalMm(thread, 'older'),
        minorExternalMm(thread, 'unr'),
        minorInternalMm(thread),
        pitchDiameterMm(thread),
        thread.majorMm,
      ];
      expect([...rising].sort((a, b) => a - b)).toEqual(rising);
      expect(externalMinors).toHaveLength(4);
    }
  });

  test('the stress area lies between the root and the pitch circle', () => {
    const circle = (mm: number) => (Math.PI / 4) * mm * mm;
    for (const thread of threads) {
      expect(stressAreaMm2(thread)).toBeGreaterThan(circle(minorExternalMm(thread, 'sharp-root')));
      expect(stressAreaMm2(thread)).toBeLessThan(circle(pitchDiameterMm(thread)));
    }
  });

  test('a bolt always measures under its name, and a tapped hole never under its basic bore', () => {
    for (const thread of threads) {
      const bolt = boltDiameterLimits(thread);
      const bore = nutBoreLimits(thread);
      expect(bolt.mostMm).toBeLessThan(thread.majorMm);
      expect(bolt.leastMm).toBeGreaterThan(pitchDiameterMm(thread));
      expect(bore.leastMm).toBe(minorInternalMm(thread));
      expect(bore.mostMm).toBeLessThan(pitchDiameterMm(thread));
    }
  });
});
