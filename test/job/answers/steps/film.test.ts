import { describe, expect, test } from 'vitest';
import { type Body, whenOf } from '../../../../src/job/index.js';
import { door } from '../../door.js';
import { bench } from '../../plan-job.js';

/** An engine of which the next step of the plan that hides something was taken off, a minute after the line before it. */
function takenApart() {
  const at = bench('overhead-valve', { starter: 'rope' });
  at.want('flywheel');
  at.add('note', { words: 'Camera runs' });
  const steps = at.plan().steps;
  const step = steps.find((s) => s.views.length > 0)!;
  const line = at.takeOff(step);
  const off = Date.parse(whenOf(line));
  const film = (more: { beganMs?: number; seconds?: number; file?: string } = {}) =>
    door(at.job()).viewsOnFilm({ file: 'bench.mp4', beganMs: off - 90_000, seconds: 180, ...more });
  return { ...at, step, off, film };
}

const still = (seconds: number): Body<'photograph'>['still'] => ({
  film: 'bench.mp4',
  seconds,
  at: '2026-03-01T09:04:00.000+00:00',
});
const picture = { sha256: 'a'.repeat(64), mime: 'image/jpeg', bytes: 9, width: 3, height: 2 } as const;

describe('a view that nobody photographed', () => {
  test('is looked for from the line before its piece came off to that line, both among the moments', () => {
    const { film, step, off } = takenApart();
    const views = film();
    expect(views.map((v) => v.caption)).toEqual(step.views.map((v) => v.view));
    for (const { moments, stage, when, about } of views) {
      expect([stage, when]).toEqual(['teardown', 'before']);
      expect(step.views.map((v) => v.key)).toContain(about);
      // the note a minute before the step, thirty seconds into the film
      expect(moments.map((m) => m.seconds)).toEqual([30, 42, 54, 66, 78, 90]);
      expect(moments.map((m) => Date.parse(m.at))).toEqual(
        [30, 42, 54, 66, 78, 90].map((s) => off - 90_000 + s * 1000),
      );
    }
  });

  test('has no moments in a film that ended before or began after, and those alone that a short film holds', () => {
    const { film, off } = takenApart();
    const seconds = (more: object) => film(more)[0]!.moments.map((m) => m.seconds);
    expect(seconds({ beganMs: off + 1000 })).toEqual([]);
    expect(seconds({ beganMs: off - 400_000 })).toEqual([]);
    expect(seconds({ beganMs: off - 2000, seconds: 10 })).toEqual([0, 1, 2]);
  });

  test('is looked for at most two minutes back, and lines of the same touch are not before it', () => {
    const at = takenApart();
    const { lines, step, off } = at;
    lines.splice(
      0,
      lines.length,
      ...lines.map((line) =>
        Date.parse(line.at) < off ? { ...line, at: '2026-03-01T08:00:00.000+00:00' } : line,
      ),
    );
    const other = at.add('step', { step: 'own', stage: 'teardown', title: 'own', state: 'done' });
    lines.splice(lines.length - 1, 1, {
      ...other,
      at: new Date(off - 200).toISOString().replace('Z', '+00:00'),
    });
    const view = at.film({ beganMs: off - 600_000, seconds: 600 }).find((v) => v.of === step.name)!;
    expect(view.moments.map((m) => m.seconds)).toEqual([480, 504, 528, 552, 576, 600]);
  });

  test('is none any more once a picture of it was taken out of the film, and that picture is as old as the film', () => {
    const at = takenApart();
    const [first, ...rest] = at.film();
    const { caption, about, stage, when } = first!;
    at.add('photograph', { picture, caption, stage, when, ...(about && { about }), still: still(42) });
    expect(at.film().map((v) => v.caption)).toEqual(rest.map((v) => v.caption));
  });

  test('a line that was struck neither takes a piece off nor bounds the search', () => {
    const at = takenApart();
    const note = at.lines.find(({ kind }) => kind === 'note')!;
    at.add('strike', { entry: note.id, reason: 'slip' });
    const { moments } = at.film({ beganMs: at.off - 120_000 })[0]!;
    expect(moments[0]!.seconds).toBe(0);
    at.add('strike', { entry: at.lines.find(({ kind }) => kind === 'step')!.id, reason: 'slip' });
    expect(at.film()).toEqual([]);
  });
});

test('a piece that was named by its times in this film has its moments between them, whatever the clock says', () => {
  const at = takenApart();
  const clip = { file: 'bench.mp4', from: '1:00', to: '1:10' };
  at.add('photograph', { clip, caption: 'governor spring', stage: 'teardown', when: 'during' });
  at.add('photograph', {
    clip: { ...clip, file: 'other.mp4' },
    caption: 'choke link',
    stage: 'teardown',
    when: 'during',
  });
  const named = at.film({ beganMs: 0 }).filter((v) => v.moments.length > 0);
  expect(named.map((v) => [v.caption, v.moments.map((m) => m.seconds)])).toEqual([
    ['governor spring', [60, 62, 64, 66, 68, 70]],
  ]);
  at.add('photograph', {
    picture,
    caption: 'governor spring',
    stage: 'teardown',
    when: 'during',
    still: still(62),
  });
  expect(at.film({ beganMs: 0 }).filter((v) => v.moments.length > 0)).toEqual([]);
});
