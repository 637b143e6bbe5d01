import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Heap } from '../../../src/infer/exact/heap.js';

test('items come off a heap in order, whatever order they went on', () => {
  fc.assert(
    fc.property(fc.array(fc.integer()), (items) => {
      const heap = new Heap<number>((a, b) => a < b);
      for (const item of items) heap.push(item);
      const off = items.map(() => heap.pop());
      expect(off).toEqual([...items].sort((a, b) => a - b));
      expect(heap.pop()).toBeUndefined();
    }),
    { seed: 11, numRuns: 200 },
  );
});
