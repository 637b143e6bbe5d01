import { useState } from 'react';
import { Link } from 'wouter';
import { type Catalog, type Measurement, roleOf } from '../../../catalog/index.js';
import {
  type Answers,
  decisionHandle,
  type Job,
  type LimitAnswer,
  valveOf,
  valveWay,
} from '../../../job/index.js';
import { counted, plural } from '../../../phrase/index.js';
import { show } from '../../../quantity/index.js';
import { useCatalog } from '../../data/answers.js';
import { useUnits } from '../../data/queries.js';
import { usePrimary } from '../../frame/job-frame.js';
import { Sheet, type SheetProps } from '../../frame/sheet.js';
import { Cleaning } from '../cleaning/cleaning.js';
import { grouped } from '../grouped.js';
import { AskedAtReading } from './asked-at-reading.js';
import { BoreForm } from './bore-form.js';
import { BoreSection } from './bore-section.js';
import { ChooseMeasurement, type Chosen } from './choose.js';
import { DecideReading, type Deciding } from './decide-reading.js';
import { ExpectedCompression } from './expected-compression.js';
import { FaceForm } from './face-form.js';
import { FaceSection } from './face-section.js';
import { ForThisMachine } from './for-this-machine.js';
import { Looked } from './looked.js';
import { ReadingLine } from './reading-line.js';
import { TakeReading } from './take-reading.js';
import { ValveSection } from './valve-section.js';
import { WorkItOut } from './work-it-out.js';

/** Which form is open. */
type Taking =
  | { readonly form: 'choose' | 'bore' }
  | { readonly form: 'face'; readonly measure: Measurement }
  | { readonly form: 'looked'; readonly measure: Measurement }
  | { readonly form: 'reading'; readonly measure: Chosen };

/** Measure against the right limit, in the right unit, and say honestly when the tool cannot decide. */
export function Measure({ answers, job, gate }: SheetProps) {
  const [taking, setTaking] = useState<Taking>();
  const [deciding, setDeciding] = useState<Deciding>();
  usePrimary({ label: 'Add a reading', act: () => setTaking({ form: 'choose' }) });
  const all = shownOf(answers);
  const readAfter = ({ phase, measure }: (typeof all.faces)[number]) =>
    phase === 'as-found' && all.faces.some((f) => f.measure === measure && f.phase === 'after');
  // a dialog that gives way to another closes after the other is open
  const close = (form: Taking['form']) => () => setTaking((now) => (now?.form === form ? undefined : now));
  return (
    <Sheet
      job={job}
      gate={gate}
      headline={headline(all)}
      rule="Clean, at room temperature, the tool zeroed. Each size twice; a third time if they differ by more than the tool can tell."
    >
      {taking?.form === 'choose' && (
        <ChooseMeasurement
          onChoose={(m) => setTaking(formFor(answers.catalog, m))}
          onClose={close('choose')}
        />
      )}
      {job.measurements.length === 0 && taking === undefined && (
        <p className="empty">
          No reading yet. Add one, and it is held against its limit with the uncertainty of the instrument:
          pass, fail, or cannot decide with this tool.
        </p>
      )}
      {all.bores.map((bore) => (
        <BoreSection
          key={bore.phase}
          job={job}
          bore={bore}
          past={bore.phase === 'as-found' && all.bores.length > 1}
          onDecide={setDeciding}
        />
      ))}
      {all.faces.map((answer) => (
        <FaceSection
          key={`${answer.measure} ${answer.way} ${answer.phase}`}
          job={job}
          answer={answer}
          past={readAfter(answer)}
          onDecide={setDeciding}
        />
      ))}
      {all.valves.length > 0 && <ValveSection job={job} valves={all.valves} onDecide={setDeciding} />}
      <Singles job={job} answers={all.single} onDecide={setDeciding} />
      <p className="row">
        <Link href={`/job/${job.id}/on-the-mat`} className="button">
          Measure from a photograph
        </Link>
      </p>
      <ForThisMachine answers={answers} />
      <Cleaning job={job} />
      <Taken job={job} taking={taking} close={close} onTake={setTaking} />
      <DecideReading job={job} about={deciding} onClose={() => setDeciding(undefined)} />
    </Sheet>
  );
}

function Taken(props: {
  job: Job;
  taking: Taking | undefined;
  close: (form: Taking['form']) => () => void;
  onTake: (next: Taking) => void;
}) {
  const { job, taking, close, onTake } = props;
  return (
    <>
      <BoreForm job={job} open={taking?.form === 'bore'} onClose={close('bore')} />
      <FaceForm
        job={job}
        measure={taking?.form === 'face' ? taking.measure : undefined}
        onClose={close('face')}
        onSingle={() => {
          if (taking?.form === 'face') onTake({ form: 'reading', measure: taking.measure });
        }}
      />
      <Looked
        job={job}
        measurement={taking?.form === 'looked' ? taking.measure : undefined}
        onClose={close('looked')}
      />
      <TakeReading
        job={job}
        measurement={taking?.form === 'reading' ? taking.measure : undefined}
        onClose={close('reading')}
      />
    </>
  );
}

function formFor(catalog: Catalog, chosen: Chosen): Taking {
  if (chosen === 'own') return { form: 'reading', measure: 'own' };
  if (chosen.id === roleOf(catalog, 'bore')) return { form: 'bore' };
  if (chosen.reads === 'face') return { form: 'face', measure: chosen };
  return chosen.kind === undefined
    ? { form: 'looked', measure: chosen }
    : { form: 'reading', measure: chosen };
}

/** What is read singly, under the name of what is measured. */
function Singles(props: { job: Job; answers: readonly LimitAnswer[]; onDecide: (about: Deciding) => void }) {
  const { job, answers, onDecide } = props;
  const catalog = useCatalog();
  return [...grouped(answers, (a) => a.group.last.title)].map(([title, group]) => (
    <section key={title} className="section stack tight">
      <h2>{title}</h2>
      <ul className="lines">
        {group.map((a) => (
          <SingleLine key={a.group.last.entry} job={job} answer={a} onDecide={onDecide} />
        ))}
      </ul>
      <AskedAtReading job={job} measure={group[0]!.group.last.measure} />
      {group[0]!.group.last.measure === roleOf(catalog, 'compression') && <ExpectedCompression />}
      <WorkItOut answers={group} />
    </section>
  ));
}

function SingleLine(props: { job: Job; answer: LimitAnswer; onDecide: (about: Deciding) => void }) {
  const { job, answer, onDecide } = props;
  const system = useUnits();
  const catalog = useCatalog();
  const { last, quantity } = answer.group;
  const place = [last.place, last.direction].filter(Boolean).join(', ');
  return (
    <ReadingLine
      job={job}
      answer={answer}
      onDecide={() =>
        onDecide({
          which: decisionHandle(catalog, last.measure, last.place),
          title: place ? `${last.title} (${place})` : last.title,
          value: show(quantity, system),
          says: answer.decision?.words ?? '',
          reasons: [],
        })
      }
    />
  );
}

/** What has a section of its own is not listed again reading by reading. */
function shownOf({ bores, faces, valves, limits, catalog }: Answers) {
  const drawn = new Set(
    [...bores, ...faces].flatMap((a) => a.groups.flatMap((g) => g.readings.map((m) => m.entry))),
  );
  const ofValve = (a: LimitAnswer) =>
    valveWay(catalog, a.group.last.measure) !== undefined && valveOf(a.group.last.place) !== undefined;
  const single = limits.filter(
    (a) => !drawn.has(a.group.last.entry) && !ofValve(a) && a.group.last.spot === undefined,
  );
  return { bores, faces, valves, single };
}

function headline({ bores, faces, valves, single }: ReturnType<typeof shownOf>): string {
  const verdicts = [
    ...bores.flatMap((b) => b.figures.map((f) => f.decision?.verdict)),
    ...faces.map((f) => f.figure?.decision?.verdict),
    ...valves.map((v) => v.decision.verdict),
    ...single.filter((a) => !a.superseded).map((a) => a.decision?.verdict),
  ];
  const count = (verdict: string) => verdicts.filter((v) => v === verdict).length;
  if (bores.length + faces.length + valves.length + single.length === 0) return 'Nothing is measured yet';
  const said = [
    [count('fail'), plural(count('fail'), 'is outside its limit', 'are outside their limits')],
    [count('cannot-decide'), plural(count('cannot-decide'), 'is', 'are').concat(' too close to call')],
    [count('pass'), plural(count('pass'), 'is', 'are').concat(' within limits')],
  ] as const;
  const words = said
    .filter(([n]) => n > 0)
    .map(([n, w], i) => (i === 0 ? `${counted(n, 'reading')} ${w}` : `${n} ${w}`));
  return words.length > 0 ? words.join(', ') : `${counted(verdicts.length, 'reading')}, no limits given`;
}
