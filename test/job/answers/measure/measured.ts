import { type Body, type EntryKind, fold, foldShop, type Job, type Shop } from '../../../../src/job/index.js';
import { parse } from '../../../../src/quantity/index.js';

const id = (n: number) => `01900000-0000-7000-8000-${String(n).padStart(12, '0')}`;

/** A log with a line a minute, and what it folds to. */
export class Written {
  private readonly lines: { kind: EntryKind; body: unknown }[] = [];

  add<K extends EntryKind>(kind: K, body: Body<K>): this {
    this.lines.push({ kind, body });
    return this;
  }
  private entries(job: string) {
    return this.lines.map(({ kind, body }, i) => ({
      id: id(i + 1),
      job,
      at: `2026-05-04T09:${String(i).padStart(2, '0')}:00.000+00:00`,
      by: 'bench',
      kind,
      v: 1,
      body,
    }));
  }
  job(): Job {
    return fold(id(0), this.entries(id(0)));
  }
  shop(): Shop {
    return foldShop(this.entries('shop'));
  }
}

/** A number as a person wrote it. */
export const w = (written: string) => {
  const { kind, si, unit } = parse(written);
  return { written, kind, si, unit };
};

export const sheet = (detail = 'invented sheet, page 12') => ({ from: "maker's sheet" as const, detail });

export const tool = (handle: string, name: string, resolution: string, uncertainty: string) => ({
  tool: handle,
  name,
  resolution: w(resolution),
  uncertainty: w(uncertainty),
});

export const bench = new Written()
  .add('instrument', tool('telescoping', 'telescoping gauge and micrometer', '0.0001 in', '0.0007 in'))
  .add('instrument', tool('dial-bore', 'dial bore gauge', '0.0001 in', '0.0003 in'))
  .add('instrument', tool('feelers', 'straightedge and feelers', '0.001 in', '0.001 in'))
  .add('instrument', {
    ...tool('micrometer', 'micrometer', '0.0001 in', '0.0002 in'),
    zeroError: w('0.0003 in'),
  })
  .shop();
