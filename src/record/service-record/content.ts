import type { Answers } from '../../job/index.js';
import type { UnitSystem } from '../../quantity/index.js';
import type { Detail, RecordContent, Section } from './section.js';
import { cautions } from './sections/advice.js';
import { charge } from './sections/charge.js';
import { complaint } from './sections/complaint.js';
import { decisions, open } from './sections/decisions.js';
import { findings } from './sections/findings.js';
import { foot, head } from './sections/head.js';
import { machine } from './sections/machine.js';
import { measurements } from './sections/measurements.js';
import { nextService } from './sections/next-service.js';
import { photographs } from './sections/photographs.js';
import { runUp } from './sections/run-up.js';
import { signature } from './sections/signature.js';
import { specs } from './sections/specs.js';
import { summary } from './sections/summary.js';
import { torques } from './sections/torques.js';
import { parts, work } from './sections/work.js';
import { type Sheet, shopSystem } from './sheet.js';

export interface ContentOptions {
  /** ISO 8601 with offset: when it is printed, told by the caller */
  readonly printedAt: string;
  /** the shop's own setting when left out */
  readonly system?: UnitSystem;
  /** pictures printed at most; the rest is counted in words */
  readonly pictureLimit?: number;
  /** full when left out */
  readonly detail?: Detail;
}

/** Two rows of six; one row where it must be brief. */
const standardPictureLimit: Readonly<Record<Detail, number>> = { full: 12, brief: 6 };

/** What the service record of a job says, in the order in which it is printed. Pure; an empty job gives a short one. */
export function recordContent(answers: Answers, options: ContentOptions): RecordContent {
  const { job, shop } = answers;
  const detail = options.detail ?? 'full';
  const sheet: Sheet = {
    answers,
    job,
    shop,
    system: options.system ?? shopSystem(shop),
    printedAt: options.printedAt,
    pictureLimit: options.pictureLimit ?? standardPictureLimit[detail],
    detail,
    ...knowledge(answers),
  };
  return { detail, head: head(sheet), sections: sections(sheet), foot: foot(sheet) };
}

/** The first outcome of a check is its healthy one. */
function knowledge({ catalog: { checks, runUp } }: Answers): Pick<Sheet, 'healthy' | 'barsHandOver'> {
  const outcomes = new Map(checks.map((check) => [check.id, check.outcomes[0]?.words]));
  const barring = new Set(runUp.filter((item) => item.barsHandOver).map((item) => item.id));
  return {
    healthy: (check) => outcomes.get(check),
    barsHandOver: (item) => barring.has(item),
  };
}

function sections(sheet: Sheet): Section[] {
  const all = [
    summary(sheet),
    open(sheet),
    machine(sheet),
    complaint(sheet),
    findings(sheet),
    decisions(sheet),
    work(sheet),
    parts(sheet),
    charge(sheet),
    specs(sheet),
    measurements(sheet),
    torques(sheet),
    photographs(sheet),
    runUp(sheet),
    cautions(sheet),
    nextService(sheet),
    signature(sheet),
  ];
  return all.filter((section) => section !== undefined);
}
