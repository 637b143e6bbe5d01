import { expect, test } from 'vitest';
import { fold } from '../../../src/job/index.js';
import { recordContent } from '../../../src/record/service-record/content.js';
import { door } from '../../job/door.js';
import { jobId, log } from '../../job/entries.js';

/** A trimmer that its owner takes home without the work. */
function declined(reason = 'too dear', title = 'Declined') {
  const { add, lines } = log();
  add('open', { tag: 4, title: 'Trimmer' });
  add('intake', { machine: 'Trimmer', architecture: 'two-stroke', use: 'trimmer', starter: 'rope' });
  add('observation', { check: 'stop-control', title: 'Stop control', outcomes: ['no'] });
  add('observation', { title: 'Handle', outcomes: [], words: 'cracked at the clamp' });
  add('step', {
    step: 'muffler',
    stage: 'teardown',
    title: 'Muffler',
    component: 'muffler',
    state: 'done',
    bag: '1',
  });
  add('decision', { about: 'machine', title, choice: 'declined', reason });
  add('hand-over', {
    receivedBy: 'Ida Brekke',
    told: 'do not run it',
    declined: ['it cannot be stopped'],
    nextDue: [],
  });
  return recordContent(door(fold(jobId, lines)), { printedAt: '2026-03-02T10:00:00+00:00' });
}
const words = (id: string) => JSON.stringify(declined().sections.find((s) => s.id === id));

test('what was found and not repaired is said, though nobody decided on it', () => {
  expect(words('summary')).toContain('does not stop the engine: found, not repaired.');
});

test('pieces that are off are named with their bags', () => {
  expect(words('open')).toContain('Handed back with these pieces off');
  expect(words('open')).toContain('Muffler, bag 1');
});

test('own words are printed as words, nothing is priced that was not fitted, and no service falls due', () => {
  expect(words('findings')).toContain('“cracked at the clamp”');
  expect(words('charge')).toContain('none fitted');
  expect(words('next')).toContain('What the owner was told');
  expect(words('next')).not.toContain('Next service');
});

test('what the owner declines is one sentence with one colon at most, with a reason and without', () => {
  const title = 'The owner declines: it goes back as it is';
  const box = (reason: string) =>
    JSON.stringify(declined(reason, title).sections.find((s) => s.id === 'open'));
  expect(box('')).toContain('"The owner declines: it goes back as it is."');
  expect(box('too dear')).toContain(
    '"lead":"The owner declines, it goes back as it is:","words":"too dear."',
  );
  expect(box('')).not.toMatch(/:"[,}]/);
});
