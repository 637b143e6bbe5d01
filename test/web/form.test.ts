import 'fake-indexeddb/auto';
import { describe, expect, expectTypeOf, test } from 'vitest';
import { builtInCatalog } from '../../src/catalog/index.js';
import { type Body, EntryError, type EntryKind, type RuleContext, readEntry } from '../../src/job/index.js';
import { draftStore } from '../../src/web/form/drafts.js';
import { FieldError, type FieldsOf, quantityIn, readField } from '../../src/web/form/field.js';
import {
  type FormOf,
  type FormStore,
  formStore,
  givenOf,
  type Line,
  plainForm,
  wrongAt,
  wrongTogether,
} from '../../src/web/form/store.js';

/** The form mechanism without its screen: description to state to body, drafts, refusals at their fields. */

const job = '0198c0de-0000-7000-8000-000000000001';

/** As the device does it: every line goes through the log's own door. */
function log(context?: RuleContext) {
  const lines: Line[] = [];
  const write = async (_: string, given: readonly Line[]) => {
    for (const { kind, body } of given)
      readEntry(
        {
          id: '0198c0de-0000-7000-8000-000000000002',
          job,
          at: '2026-01-02T10:00:00+01:00',
          by: 'test',
          kind,
          v: 1,
          body: JSON.parse(JSON.stringify(body)),
        },
        context,
      );
    lines.push(...given);
  };
  return { lines, write };
}

let stores = 0;
const freshDrafts = () => draftStore(`drafts of test ${stores++}`);

const part: FormOf<'part'> = {
  job,
  kind: 'part',
  title: 'A part',
  fields: {
    name: { as: 'text', label: 'Part', need: 'Say which part.' },
    count: { as: 'number', whole: true, label: 'How many', begin: '1' },
    price: { as: 'money', label: 'Price each', currency: '$' },
    due: { as: 'date', label: 'Due' },
    state: { as: 'choice', label: 'It is', choices: [{ id: 'wanted', label: 'wanted' }], begin: 'wanted' },
    $page: { as: 'text', label: 'Page', when: ({ name }) => name === 'gasket' },
  },
  also: (_, { $page }) => ({ part: 'part-1', ...(String($page) !== '' && { words: `page ${$page}` }) }),
};

function open<K extends 'part' | 'supplier' | 'intake' | 'wrench' | 'joint'>(
  form: FormOf<K>,
  drafts = freshDrafts(),
) {
  const { lines, write } = log();
  const store = formStore<Body<K>>(() => plainForm(form), write, drafts);
  const given = () => givenOf(plainForm(form), store.get());
  const wrong = (name: string) => wrongAt(plainForm(form), store.get(), name);
  return { store, lines, given, wrong, drafts };
}

describe('what is typed becomes the body of the line', () => {
  test('words are trimmed, empty fields and the form’s own questions are left out', async () => {
    const { store, lines } = open(part);
    store.change({ name: ' gasket ', price: '$1,200.50', $page: '7' });
    expect(await store.keep()).toBe(true);
    expect(lines).toEqual([
      {
        kind: 'part',
        body: {
          name: 'gasket',
          count: 1,
          price: { amount: 1200.5, currency: '$' },
          state: 'wanted',
          part: 'part-1',
          words: 'page 7',
        },
      },
    ]);
  });

  test('what the log holds stands in the fields as it was written, and is said again unchanged', async () => {
    const before = { part: 'part-1', name: 'Plug', count: 2, state: 'wanted', due: '2026-03-01' } as const;
    const { store, lines, given } = open({ ...part, before });
    expect(given()).toMatchObject({ name: 'Plug', count: '2', due: '2026-03-01', price: '' });
    await store.keep();
    expect(lines[0]!.body).toEqual(before);
  });

  test('a number with its unit is kept word for word; a bare one gets the unit that is known', async () => {
    const wrench = (unit?: string): FormOf<'wrench'> => ({
      job,
      kind: 'wrench',
      title: 'A wrench',
      fields: {
        min: { as: 'quantity', kind: 'torque', label: 'from', unit },
        max: { as: 'quantity', kind: 'torque', label: 'to' },
      },
      also: () => ({ tool: 'w', name: 'w', accuracyPercent: 4 }),
    });
    const { store, lines } = open(wrench('in-lb'));
    store.change({ min: '20', max: '25 N·m' });
    expect(await store.keep()).toBe(true);
    expect(lines[0]!.body).toMatchObject({ min: { written: '20 in-lb' }, max: { written: '25 N·m' } });
    const bare = open(wrench());
    bare.store.change({ min: '20' });
    expect(bare.wrong('min')).toMatch(/unit/);
  });

  test.each([
    ['.0025', 0.0025 * 0.0254],
    ['.035', 0.035 * 0.0254],
    ['1 1/2', 1.5 * 0.0254],
    ['1-1/2', 1.5 * 0.0254],
    ['2½', 2.5 * 0.0254],
    ['0.0030 ± 0.0002', 0.003 * 0.0254],
    ['2 mm', 0.002],
  ])('%s is understood beside a limit in inches', (text, si) => {
    const read = quantityIn(text, 'length', 'in');
    expect(read.si).toBeCloseTo(si, 9);
    expect(read.unit).toBe(text.endsWith('mm') ? 'mm' : 'in');
  });

  test.each([
    ['18', 18],
    ['2 yrs', 24],
    ['1 1/2 years', 18],
    ['26 weeks', 6],
  ])('%s is so many months', (text, months) => {
    const field = { as: 'number', label: 'Months', counts: { kind: 'time', unit: 'months' } } as const;
    expect(readField('m', field, { m: text })).toBe(months);
  });

  test('rows that are left empty are not in the line; a wrong one is said where the rows stand', async () => {
    const supplier: FormOf<'supplier'> = {
      job,
      kind: 'supplier',
      title: 'A supplier',
      fields: {
        name: { as: 'text', label: 'Name' },
        shipping: {
          as: 'rows',
          label: 'Shipping',
          row: { from: { as: 'number', label: 'from' }, cost: { as: 'number', label: 'costs' } },
          more: 'another',
        },
      },
      also: () => ({ supplier: 's' }),
    };
    const { store, lines, wrong } = open(supplier);
    store.change({
      name: 'S',
      shipping: [
        { from: '0', cost: '8' },
        { from: '', cost: '' },
        { from: 'x', cost: '1' },
      ],
    });
    expect(await store.keep()).toBe(false);
    expect(wrong('shipping')).toContain('“x” is no number');
    store.set('shipping', [
      { from: '0', cost: '8' },
      { from: '', cost: '' },
    ]);
    expect(await store.keep()).toBe(true);
    expect(lines[0]!.body).toMatchObject({ shipping: [{ from: 0, cost: 8 }] });
  });
});

describe('what cannot be kept is said at its field', () => {
  test('a needed field that is empty, in the words of the description; nothing is written', async () => {
    const { store, lines, wrong } = open(part);
    expect(await store.keep()).toBe(false);
    expect(wrong('name')).toBe('Say which part.');
    expect(lines).toEqual([]);
    store.set('name', 'plug');
    expect(wrong('name')).toBeUndefined();
  });

  test('a refusal of the log stands at the field of its place, in the log’s own words', async () => {
    const { store, wrong, lines } = open(part);
    store.change({ name: 'plug', count: '1001' });
    expect(await store.keep()).toBe(false);
    const body = { part: 'part-1', name: 'plug', count: 1001, state: 'wanted' };
    const refused = (() => {
      try {
        readEntry({
          id: crypto.randomUUID(),
          job,
          at: '2026-01-02T10:00:00Z',
          by: 'x',
          kind: 'part',
          v: 1,
          body,
        });
      } catch (error) {
        return error as EntryError;
      }
      throw new Error('it was taken');
    })();
    expect(refused.field).toBe('body.count');
    expect(refused.message).toBe(`body.count: ${wrong('count')}`);
    expect(lines).toEqual([]);
  });

  test('an error that names no field of the form is said for the whole form', async () => {
    const { store } = open({
      ...part,
      also: () => {
        throw new EntryError('body.hole: there is none', 'body.hole');
      },
    });
    store.set('name', 'plug');
    await store.keep();
    expect(store.get().wrong).toEqual({ field: undefined, words: 'body.hole: there is none' });
  });

  test('a second touch while the first is being written writes nothing twice', async () => {
    const { store, lines } = open(part);
    store.set('name', 'plug');
    expect(await Promise.all([store.keep(), store.keep()])).toEqual([true, false]);
    expect(lines).toHaveLength(1);
  });

  test('what is typed while the line before is being written stands there after it, as a draft too', async () => {
    const { store, given, lines, drafts } = open(part);
    store.set('name', 'plug');
    const first = store.keep();
    store.set('name', 'gasket');
    expect(await first).toBe(true);
    expect(given().name).toBe('gasket');
    await expect.poll(() => [...drafts.all().values()].map((draft) => draft.given.name)).toEqual(['gasket']);
    expect(lines.map(({ body }) => (body as Body<'part'>).name)).toEqual(['plug']);
  });

  test('a touch meanwhile, with something new typed, writes it after the first', async () => {
    const { store, given, lines, drafts } = open(part);
    store.set('name', 'plug');
    const first = store.keep();
    store.set('name', 'gasket');
    expect(await Promise.all([first, store.keep(), store.keep()])).toEqual([true, true, false]);
    expect(lines.map(({ body }) => (body as Body<'part'>).name)).toEqual(['plug', 'gasket']);
    expect(given().name).toBe('');
    await expect.poll(() => drafts.all().size).toBe(0);
  });
});

describe('the rules of its kind', () => {
  const joint: FormOf<'joint'> = {
    job,
    kind: 'joint',
    title: 'A joint',
    fields: {
      name: { as: 'text', label: 'What', need: 'Say what is tightened.' },
      target: { as: 'quantity', kind: 'torque', label: 'Torque' },
      thread: { as: 'text', label: 'Thread' },
    },
    also: {
      joint: 'head',
      holes: [{ xMm: 0, yMm: 0 }],
      order: [1],
      orderOrigin: { from: 'computed' },
      targetOrigin: { from: "maker's sheet" },
      passes: [1],
      finalRound: false,
    },
  };
  const together = <K extends EntryKind>(
    form: FormOf<K>,
    store: Pick<FormStore<Body<K>>, 'get'>,
    context?: RuleContext,
  ) => wrongTogether(plainForm(form), store.get(), context);

  test('are said at their field while the line is typed, in the words in which it is refused', async () => {
    const { store, lines, wrong } = open(joint);
    store.change({ name: 'Head', thread: '5/16-18' });
    expect(together(joint, store)).toBeUndefined(); // an empty torque is no wrong torque
    store.set('target', '140 ft-lb');
    const said = together(joint, store)!;
    expect(said).toMatchObject({
      field: 'target',
      words: expect.stringContaining('140 in-lb would be plausible'),
    });
    expect(await store.keep()).toBe(false);
    expect(wrong('target')).toBe(said.words);
    expect(lines).toEqual([]);
    store.set('target', '140 in-lb');
    expect(together(joint, store)).toBeUndefined();
    expect(await store.keep()).toBe(true);
  });

  test('are not said of a field that nobody touched, nor of a line that is not whole', () => {
    const before = { target: { written: '140 ft-lb', kind: 'torque', si: 189.81, unit: 'ft-lb' } } as const;
    const again = { ...joint, before };
    const untouched = open(again).store;
    untouched.change({ name: 'Head', thread: '5/16-18' });
    expect(together(again, untouched)).toBeUndefined();
    const nameless = open(joint).store;
    nameless.change({ thread: '5/16-18', target: '140 ft-lb' });
    expect(together(joint, nameless)).toBeUndefined();
  });

  test('a clearance at a valve that this engine does not have is refused in the log’s words', async () => {
    const clearance: FormOf<'measurement'> = {
      job,
      kind: 'measurement',
      title: 'Clearance',
      fields: {
        value: { as: 'quantity', kind: 'length', label: 'Reading' },
        place: { as: 'text', label: 'Which valve' },
      },
      also: { measure: 'valve-clearance-side-valve', title: 'Clearance' },
    };
    const on = (architecture: 'side-valve' | 'two-stroke') => ({
      facts: { architecture },
      catalog: builtInCatalog(),
    });
    const typed = async (architecture: 'side-valve' | 'two-stroke', place: string) => {
      const { lines, write } = log(on(architecture));
      const store = formStore<Body<'measurement'>>(() => plainForm(clearance), write, freshDrafts());
      store.change({ value: '0.006 in', place });
      await store.keep();
      return { lines, state: store.get(), together: together(clearance, store, on(architecture)) };
    };
    const refused = await typed('two-stroke', 'exhaust');
    expect(refused.lines).toEqual([]);
    expect(refused.state.wrong?.words).toMatch(/this engine has no valves of that kind/);
    const nowhere = await typed('side-valve', 'on the left');
    expect(nowhere.state.wrong).toEqual({ field: 'place', words: 'Say which valve: intake or exhaust.' });
    expect(nowhere.together).toEqual(nowhere.state.wrong);
    expect((await typed('side-valve', 'exhaust')).lines).toHaveLength(1);
  });
});

describe('a group of facts', () => {
  const facts = (before: Partial<Body<'intake'>>): FormOf<'intake'> => ({
    job,
    kind: 'intake',
    title: 'Owner',
    changes: true,
    before,
    fields: {
      owner: { as: 'text', label: 'Owner' },
      'consent.by': { as: 'text', label: 'Given by' },
      'consent.how': { as: 'text', label: 'How' },
      stopLimit: { as: 'money', label: 'Call above', currency: '$' },
    },
    also: ({ consent }) => (consent ? { consent: { ...consent, given: consent.by !== '' } } : {}),
  });
  const before = { owner: 'Ola', consent: { given: true, by: 'Ola', how: 'telephone' } };

  test('only what was changed is written; a part with several fields is written whole', async () => {
    const { store, lines } = open(facts(before));
    store.set('consent.by', 'Bo');
    await store.keep();
    expect(lines[0]!.body).toEqual({ consent: { given: true, by: 'Bo', how: 'telephone' } });
  });

  test('emptied words are written as none; an emptied sum is refused, for its line must be struck', async () => {
    const { store, lines, wrong } = open(facts({ ...before, stopLimit: { amount: 90, currency: '$' } }));
    store.set('owner', '');
    await store.keep();
    expect(lines[0]!.body).toEqual({ owner: '' });
    store.set('stopLimit', '');
    expect(await store.keep()).toBe(false);
    expect(wrong('stopLimit')).toBe('$90 still stands in the log. Strike that line to take it back.');
  });
});

describe('drafts', () => {
  test('what was typed outlives the form and the page, and is dropped when it is written', async () => {
    const first = freshDrafts();
    const name = `drafts of test ${stores - 1}`;
    open(part, first).store.set('name', 'half ty');
    expect(open(part, first).given().name).toBe('half ty');
    await first.keep('another', { given: {}, title: 'x', job });
    const afterReload = draftStore(name);
    await afterReload.load();
    const again = open(part, afterReload);
    expect(again.given().name).toBe('half ty');
    expect(again.store.get().resumed).toBe(true);
    await again.store.keep();
    expect(afterReload.all().has(`${job} part new`)).toBe(false);
    await afterReload.drop('nothing of that name'); // after the one before it
    const later = draftStore(name);
    await later.load();
    expect([...later.all().keys()]).toEqual(['another']);
  });

  test('a form that opened before the drafts were read takes its own up, unless something was typed meanwhile', async () => {
    const first = freshDrafts();
    const name = `drafts of test ${stores - 1}`;
    await first.keep(`${job} part new`, { given: { name: 'plug' }, title: 'A part', job });
    for (const [typed, stands] of [
      [undefined, 'plug'],
      ['coil', 'coil'],
    ] as const) {
      const drafts = draftStore(name);
      const { store, given } = open(part, drafts);
      const stop = store.subscribe(() => {});
      if (typed) store.set('name', typed);
      await drafts.load();
      expect(given().name).toBe(stands);
      stop();
    }
  });

  test('giving up drops it, and typing back what the log says leaves none', async () => {
    const { store, drafts, given } = open(part);
    store.set('name', 'plug');
    expect(drafts.all().size).toBe(1);
    store.giveUp();
    expect(drafts.all().size).toBe(0);
    expect(given().name).toBe('');
    store.set('count', '2');
    store.set('count', '1');
    expect(drafts.all().size).toBe(0);
  });

  test('another one of the same: what stays is kept standing, the rest begins anew', async () => {
    const { store, given, lines } = open(part);
    store.change({ name: 'plug', due: '2026-03-01' });
    await store.keep({ stays: ['due'], also: { state: 'ordered' } });
    expect(lines[0]!.body).toMatchObject({ state: 'ordered' });
    expect(given()).toMatchObject({ name: '', due: '2026-03-01' });
  });
});

test('a description can only name fields of its kind’s body, with a kind of field that can say them', () => {
  type Part = FieldsOf<Body<'part'>>;
  expectTypeOf<'name'>().toExtend<keyof Part>();
  const misspelt = { nmae: { as: 'text', label: 'Part' } } as const;
  // @ts-expect-error a part has no such field
  const wrongName: Part = { nmae: misspelt.nmae };
  // @ts-expect-error a price is a sum with its currency, not a date
  const wrongKind: Part = { price: { as: 'date', label: 'Price' } };
  const choices = [{ id: 'lost', label: 'x' }] as const;
  // @ts-expect-error a part is never in this state
  const wrongChoice: Part = { state: { as: 'choice', label: 'It is', choices } };
  const nested: FieldsOf<Body<'intake'>> = { 'consent.by': { as: 'text', label: 'By' } };
  expect([wrongName, wrongKind, wrongChoice, nested]).toHaveLength(4);
  expect(new FieldError('price', 'x').field).toBe('price');
});
