import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Body, fold, type Job } from '../../../src/job/index.js';
import { type Block, type RecordContent, recordContent, type Section } from '../../../src/record/index.js';
import { sectionIds } from '../../../src/record/service-record/section.js';
import { logWords } from '../../../src/record/service-record/sections/signature.js';
import { door } from '../../job/door.js';
import { jobId, Log, length, torque } from '../log.js';
import { ordinaryJob, ordinaryShop } from '../ordinary-job.js';
import { emptyJob } from '../other-jobs.js';

const printedAt = '2025-11-05T16:20:00-05:00';
const fixture = await ordinaryJob();
const shop = ordinaryShop();
const content = (job: Job, options = {}): RecordContent =>
  recordContent(door(job, { shop }), { printedAt, ...options });
const ordinary = content(fixture.job);

function section(record: RecordContent, id: Section['id']): Section {
  const found = record.sections.find((s) => s.id === id);
  if (!found) throw new Error(`no section ${id}`);
  return found;
}
function block<T extends Block['type']>(
  record: RecordContent,
  id: Section['id'],
  type: T,
): Extract<Block, { type: T }> {
  const found = section(record, id).blocks.find((b) => b.type === type);
  if (!found) throw new Error(`no ${type} in ${id}`);
  return found as Extract<Block, { type: T }>;
}
const plain = (value: unknown) => JSON.stringify(value).replaceAll('\u00a0', ' ');
const job = (write: (log: Log) => void): Job => {
  const log = new Log();
  log.add('open', { tag: 5, title: 'Tiller' });
  write(log);
  return log.fold();
};

describe('the ordinary job', () => {
  test('its sections stand in the order of the record', () => {
    expect(ordinary.sections.map((s) => s.id)).toEqual([...sectionIds]);
  });

  test('the owner’s words are printed word for word', () => {
    expect(block(ordinary, 'complaint', 'quote')).toEqual({
      type: 'quote',
      words: 'Ran fine when I parked it. Now it starts only after many pulls and then only on half choke.',
      by: 'J. Alder',
    });
  });

  test('a struck line is not printed, but it is counted', () => {
    expect(plain(ordinary)).not.toContain('85 psi');
    expect(plain(ordinary)).not.toContain('release valve fitted');
    expect(block(ordinary, 'signature', 'signature').words).toContain('77 lines, 1 struck');
  });

  test('the shop’s working notes are not printed; what parts cost is, because the owner pays for them', () => {
    expect(plain(ordinary)).not.toContain('pays on pick-up');
    expect(plain(section(ordinary, 'parts'))).toContain('USD12.40');
    expect(block(ordinary, 'signature', 'signature').words).toContain(
      '1 working note of the shop is not printed',
    );
  });

  test('spoken notes are working notes, and a line says that they are kept as sound', () => {
    const words = (spoken: number, written: number) => {
      const said = job((log) => {
        const sound = { sha256: 'ab'.repeat(32), mime: 'audio/wav', bytes: 9000, seconds: 4 } as const;
        for (let n = 0; n < written; n += 1) log.add('note', { words: 'rust under the fan' });
        for (let n = 0; n < spoken; n += 1) log.add('spoken-note', { sound, stage: 'teardown' });
      });
      return block(content(said), 'signature', 'signature').words;
    };
    expect(words(1, 2)).toContain(
      '3 working notes of the shop are not printed, 1 of them kept as sound in the shop’s log.',
    );
    expect(words(2, 0)).toContain(
      '2 working notes of the shop are not printed: kept as sound in the shop’s log.',
    );
  });

  test('how many lines were answered by voice is said with how many there are', () => {
    const said = job((log) => {
      log.add('note', { words: 'rust under the fan' });
      log.add('note', { words: 'dry' });
    });
    const [line] = said.log;
    const marked = {
      ...said,
      log: [{ ...line!, entry: { ...line!.entry, spoken: true as const } }, ...said.log.slice(1)],
    };
    expect(logWords(marked)).toContain(`${said.log.length} lines, 1 answered by voice.`);
    expect(logWords(said)).not.toContain('voice');
  });

  test('a torque stands in both units, with the page it comes from', () => {
    const [target] = block(ordinary, 'torques', 'joint').facts;
    expect(plain(target)).toBe(
      plain({
        label: 'Target',
        value: '140 in-lb (15.8 N·m) on 5/16-18, dry threads',
        origin: 'maker’s sheet, page 31',
      }),
    );
  });

  test('the summary says what was wrong, what was done and what comes next', () => {
    const { parts } = block(ordinary, 'summary', 'trio');
    expect(parts.map((part) => part.title)).toEqual(['What was wrong', 'What was done', 'What to do next']);
    expect(plain(parts[0]?.lines)).toBe(
      plain([
        // the record says what became of what was found
        'Idle passages plugged: repaired.',
        'Exhaust valve does not close: repaired.',
        'Fuel gone stale: repaired.',
        'Exhaust valve clearance, cold: 0.001 in, under the limit.',
      ]),
    );
    expect(parts[1]?.lines).toContain('Fitted: Head gasket, Carburetor kit and Fuel hose, 1/4 in.');
    expect(parts[2]?.lines).toContain('Declined, still to be done: Muffler guard left off against advice.');
    expect(parts[2]?.lines).toContain('Oil change and valve check: May 15, 2026.');
  });

  test('a measurement stands as found and after, each with its verdict by sign and word', () => {
    const rows = block(ordinary, 'measurements', 'table').rows;
    const valve = rows.find(([title]) => title?.text.startsWith('Exhaust valve'))!;
    expect(valve[1]).toMatchObject({ verdict: { sign: 'fail', word: 'under the limit' } });
    expect(valve[2]).toMatchObject({ verdict: { sign: 'pass', word: 'within' } });
    expect(valve[3]).toMatchObject({ sub: 'maker’s sheet, page 22' });
    expect(plain(valve[4])).toContain('Feeler gauges, ± 0.0005 in');
    const crankpin = rows.find(([title]) => title?.text === 'Crankpin')!;
    expect(crankpin[1]).toMatchObject({ verdict: { sign: 'cannot-decide', word: 'too close to call' } });
  });

  test('a doubtful finding is marked as doubtful', () => {
    const rows = block(ordinary, 'findings', 'table').rows;
    expect(rows.filter((row) => row[1]?.care).map((row) => row[0]?.text)).toEqual([
      'Leak-down at the firing top',
    ]);
  });

  test('a part put back for now stands out and says when it is replaced', () => {
    const boxes = section(ordinary, 'open').blocks.filter((b) => b.type === 'box');
    expect(boxes.map((box) => box.tone)).toEqual(['stop', 'care']);
    expect(plain(boxes[1])).toContain('To be replaced: the new spring arrives, or the next oil change.');
  });

  test('photographs of the same thing stand side by side, before then after', () => {
    const { groups, more } = block(ordinary, 'photographs', 'pictures');
    expect(groups.map((g) => [g.about, ...g.pictures.map((p) => p.label)])).toEqual([
      ['Linkages', 'Before', 'After'],
      ['Cylinder head', 'Before', 'After'],
      ['Carburetor', 'Before', 'After'],
    ]);
    expect(more).toBe('1 film clip named in the shop’s log');
  });

  test('an engine without a plate says what its measured size leaves open', () => {
    const facts = block(ordinary, 'machine', 'facts').facts;
    expect(facts.find((f) => f.label === 'Displacement')).toEqual({
      label: 'Displacement',
      value: '195 cc',
      origin: 'computed from bore and stroke',
    });
    expect(facts.some((f) => f.label === 'Left open')).toBe(true);
  });

  test('in a metric shop every length is printed in millimeters, with the reading as it was written', () => {
    const rows = block(content(fixture.job, { system: 'metric' }), 'measurements', 'table').rows;
    expect(plain(rows[0]?.[1])).toContain('0.025 mm');
    expect(plain(rows[0]?.[1])).toContain('written 0.001 in');
  });

  test('the shop’s own setting decides the system when the caller does not', () => {
    expect(
      plain(recordContent(door(fixture.job, { shop: ordinaryShop('metric') }), { printedAt })),
    ).toContain('66 mm × 57 mm');
  });

  test('every figure of the machine, the specifications and the joints says where it is from', () => {
    const facts = [...block(ordinary, 'machine', 'facts').facts, ...block(ordinary, 'specs', 'facts').facts];
    const figures = facts.filter((fact) => /\d/.test(fact.value));
    expect(figures.length).toBeGreaterThan(4);
    expect(figures.filter((fact) => !fact.origin)).toEqual([]);
  });
});

describe('what a record must not get wrong', () => {
  test('a job with nothing but its tag gives a record that says so', () => {
    const record = content(emptyJob());
    expect(record.head.title).toBe('Machine without a name');
    expect(record.sections.map((s) => s.id)).toEqual(['summary', 'advice', 'signature']);
    expect(block(record, 'summary', 'trio').parts.map((part) => part.lines)).toEqual([
      ['No fault is written down.'],
      ['No work is written down.'],
      ['No next service is written down. See the advice below.'],
    ]);
  });

  test('any part of a log gives a record, and what is struck in it is not printed', () => {
    fc.assert(
      fc.property(fc.subarray([...fixture.entries]), (entries) => {
        const record = content(fold(jobId, entries));
        const ids = record.sections.map((s) => s.id);
        expect(ids).toEqual(sectionIds.filter((id) => ids.includes(id)));
        const isStruck = entries.some((e) => e.kind === 'strike') && plain(entries).includes('85 psi');
        if (isStruck) expect(plain(record)).not.toContain('85 psi');
      }),
      { seed: 17, numRuns: 200 },
    );
  });

  test('a hole that turned without rising fails the joint, whatever the others did', () => {
    const joint = block(content(jointJob(['clicked', 'turned without rising'])), 'torques', 'joint');
    expect(joint.verdict).toEqual({ sign: 'fail', word: 'not every hole came to its torque' });
    expect(joint.holes.map((hole) => hole.state)).toEqual(['clicked', 'failed']);
    expect(joint.facts.find((f) => f.label === 'Remarks')?.value).toBe(
      'number 1 turned without rising in pass 1',
    );
  });

  test('a hole that nobody logged is not counted as tightened', () => {
    const joint = block(content(jointJob(['clicked'])), 'torques', 'joint');
    expect(joint.verdict).toEqual({ sign: 'cannot-decide', word: '1 of 2 holes not logged in every pass' });
    expect(joint.facts.find((f) => f.label === 'Clicked')?.value).toBe('pass 1: 1 of 2');
  });

  test('a wrench set to another torque than the pass wants is remarked', () => {
    const joint = block(content(jointJob(['clicked', 'clicked'], '120 in-lb')), 'torques', 'joint');
    expect(plain(joint.facts)).toContain('number 1 in pass 1: wrench set to 120 in-lb (13.6 N·m)');
  });

  test('the drawing numbers a hole by its place in the order', () => {
    const joint = block(content(jointJob(['clicked', 'clicked'])), 'torques', 'joint');
    expect(joint.holes.map((hole) => hole.turns)).toEqual([[2], [1]]);
  });

  test('a reading without a known instrument is compared as read, and says so', () => {
    const record = content(
      job((log) => log.add('measurement', { ...gap('0.020 in'), instrument: 'borrowed-tool' })),
    );
    const [row] = block(record, 'measurements', 'table').rows;
    expect(row?.[1]?.verdict).toEqual({ sign: 'pass', word: 'within' });
    expect(row?.[4]).toEqual({ text: 'borrowed tool', sub: 'as read' });
    expect(block(record, 'measurements', 'words').words).toContain(
      'as read: compared without an uncertainty',
    );
  });

  test('repeated readings are all named', () => {
    const record = content(
      job((log) => ['0.020 in', '0.021 in', '0.022 in'].map((text) => log.add('measurement', gap(text)))),
    );
    const [row, ...rest] = block(record, 'measurements', 'table').rows;
    expect(rest).toEqual([]);
    expect(plain(row?.[1])).toContain('mean of 3: 0.020 in, 0.021 in, 0.022 in');
  });

  test('a later decision on a part put back for now closes it', () => {
    const decided = (choice: string, reason: string) => ({
      about: 'part' as const,
      which: 'spring',
      title: 'Spring',
      choice,
      reason,
    });
    const record = content(
      job((log) => {
        log.add('decision', decided('provisional', 'new one late'));
        log.add('decision', decided('renew', 'it came'));
      }),
    );
    expect(record.sections.some((s) => s.id === 'open')).toBe(false);
    expect(plain(block(record, 'decisions', 'table').rows)).toContain('Renewed');
  });

  test('a part put back for now is open until the new one is fitted, and falls due at the next service', () => {
    const spring = { part: 'spring', name: 'Governor spring', count: 1 };
    const said = (state: 'ordered' | 'fitted') =>
      content(
        job((log) => {
          log.add('part', { ...spring, state: 'ordered' });
          log.add('decision', {
            about: 'part',
            which: 'spring',
            title: 'Old spring',
            choice: 'provisional',
            reason: 'not stretched',
          });
          log.add('hand-over', { receivedBy: 'the owner', declined: [], nextDue: [] });
          if (state === 'fitted') log.add('part', { ...spring, state });
        }),
      );
    expect(plain(said('ordered').sections.find((s) => s.id === 'open'))).toContain('with the next service');
    expect(plain(said('ordered').sections.find((s) => s.id === 'next'))).toContain('Fit Governor spring');
    expect(said('fitted').sections.some((s) => s.id === 'open' || s.id === 'next')).toBe(false);
  });

  test('a line that a newer program wrote is counted', () => {
    const log = new Log();
    log.add('open', { tag: 5, title: 'Tiller' });
    const newer = {
      ...log.entries[0]!,
      id: '0198f000-0000-7000-8000-00000000aaaa',
      kind: 'ultrasound',
      body: { any: 1 },
    };
    const record = content(fold(jobId, [...log.entries, newer]));
    expect(block(record, 'signature', 'signature').words).toContain('1 line written by another version');
  });

  test('pictures are limited to the stated number, pairs stay whole, the rest is counted', () => {
    const record = content(fixture.job, { pictureLimit: 5 });
    const { groups, more } = block(record, 'photographs', 'pictures');
    expect(groups.flatMap((g) => g.pictures)).toHaveLength(4);
    expect(more).toContain('2 more in the shop’s log');
  });

  test('a generator is never joined to a house’s wiring; a pump is not told so', () => {
    const advice = (use: 'generator' | 'pump') =>
      plain(section(content(job((log) => log.add('intake', { use }))), 'advice'));
    expect(advice('generator')).toContain('Never feed a house’s wiring');
    expect(advice('pump')).not.toContain('wiring');
    expect(advice('pump')).toContain('carbon monoxide');
  });
});

function gap(text: string) {
  return {
    measure: 'ring-gap',
    title: 'Ring gap',
    value: length(text),
    limit: { max: length('0.030 in'), origin: { from: "maker's sheet" as const } },
    phase: 'as-found' as const,
  };
}

/** Two holes, tightened second first; results by hole. */
function jointJob(results: readonly ('clicked' | 'turned without rising')[], lastSet = '100 in-lb'): Job {
  return job((log) => {
    log.add('joint', {
      joint: 'cover',
      name: 'Cover',
      holes: [
        { xMm: 0, yMm: 0 },
        { xMm: 30, yMm: 0 },
      ],
      target: torque('100 in-lb'),
      targetOrigin: { from: "maker's sheet" },
      passes: [1],
      finalRound: false,
      order: [2, 1],
      orderOrigin: { from: "shop's own" },
    });
    results.forEach((result, i) => {
      const set = torque(i === results.length - 1 ? lastSet : '100 in-lb');
      log.add('torque', { joint: 'cover', hole: i + 1, pass: 1, set, result });
    });
  });
}

describe('what was heard', () => {
  const recording = (phase: 'before' | 'after', rpm: number, attempts: number) =>
    ({
      recording: phase,
      name: `${phase}.wav`,
      phase,
      temperature: 'cold',
      strokes: 4,
      cylinders: 1,
      seconds: 10,
      mean: { rpm, u: 3 },
      rivalsRpm: [],
      says: '',
      track: [0, 1, 2].map((t) => ({ t, rpm: rpm + t, u: 3 })),
      starts: { attempts, caught: true },
      segments: [],
      marks: [],
    }) satisfies Body<'recording'>;
  const heard = job((log) => {
    log.add('recording', recording('before', 2950, 8));
    log.add('recording', recording('after', 3310, 2));
  });

  test('the full record sets before beside after and draws both against one scale', () => {
    const full = content(heard, { detail: 'full' });
    expect(plain(block(full, 'run-up', 'table').rows)).toContain('"8"},{"text":"2","strong":true}');
    const { curves } = block(full, 'run-up', 'speeds');
    expect(curves.map(({ label, points }) => [label, points.length])).toEqual([
      ['Before: before.wav', 3],
      ['After: after.wav', 3],
    ]);
  });

  test('the brief record says it in a line', () => {
    expect(plain(block(content(heard, { detail: 'brief' }), 'run-up', 'list'))).toContain(
      'Pulls until it caught, cold: 2, before 8 · Speed: 3310 ± 6 rpm, before 2950 ± 6 rpm',
    );
  });
});
