import { expect, test } from 'vitest';
import { fold, jobSummary, type RawEntry } from '../../../../src/job/index.js';

const job = '01900000-0000-7000-8000-00000000000a';
const entry = (n: number, kind: string, body: unknown): RawEntry => ({
  id: `01900000-0000-7000-8000-${String(n).padStart(12, '0')}`,
  job,
  at: `2026-03-01T08:00:0${n}Z`,
  by: 'bench',
  kind,
  v: 1,
  body,
});
const open = entry(1, 'open', { tag: 12, title: 'Pump engine' });
const summaryOf = (...entries: RawEntry[]) => jobSummary(fold(job, entries));

test('an empty job says nothing that nobody told', () => {
  expect(summaryOf(open)).toEqual({
    id: job,
    tag: 12,
    title: 'Pump engine',
    invented: false,
    opened: '2026-03-01T08:00:01Z',
    lastAt: '2026-03-01T08:00:01Z',
    handedOver: false,
  });
});

test('a long complaint is cut to 140 signs, and none of them is halved', () => {
  const complaint = `${'🔧'.repeat(139)} it smokes`;
  const cut = summaryOf(open, entry(2, 'intake', { complaint })).complaint!;
  expect([...cut]).toHaveLength(140);
  expect(cut).toBe(`${'🔧'.repeat(139)}…`);
  expect(summaryOf(open, entry(2, 'intake', { complaint: 'x'.repeat(140) })).complaint).toBe('x'.repeat(140));
});

test('a complaint over several lines stands in one', () => {
  const complaint = '  Starts,\n\n then dies. ';
  expect(summaryOf(open, entry(2, 'intake', { complaint })).complaint).toBe('Starts, then dies.');
});

test('handed over is what the log says last', () => {
  const over = entry(2, 'hand-over', { receivedBy: 'Owner', declined: [], nextDue: [] });
  expect(summaryOf(open, over).handedOver).toBe(true);
  expect(summaryOf(open, over, entry(3, 'strike', { entry: over.id, reason: 'came back' })).handedOver).toBe(
    false,
  );
});
