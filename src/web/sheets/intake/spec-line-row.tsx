import { type ReactNode, useState } from 'react';
import { byId, readSpecLineAs, type SpecLine } from '../../../catalog/index.js';
import { type Body, type Job, written } from '../../../job/index.js';
import { showAsWritten } from '../../../quantity/index.js';
import { useCatalog } from '../../data/answers.js';
import { write } from '../../data/outbox.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { SelectField } from '../../parts/field.js';

/** One line as it was understood; where the match is not exact the person says which value it is. */
export function SpecLineRow(props: {
  job: Job;
  line: SpecLine;
  page: string;
  cut?: Body<'spec'>['cut'];
  /** why the line may not say what stands on the sheet */
  doubt?: string | undefined;
  /** the line as it was written, or as it can be seen and changed */
  said?: ReactNode;
}) {
  const { job, line, page, cut, doubt } = props;
  const [chosen, setChosen] = useState('');
  const spec = line.spec ?? chosen;
  const { wrong, act } = useAct();
  const catalog = useCatalog();
  const { specs } = catalog;
  const read = spec === '' || spec === line.spec ? line : readSpecLineAs(catalog, spec, line.line);
  const name = byId(specs).get(spec)?.name ?? read.label;
  const confirmed = job.specs.get(spec)?.line === line.line;
  const origin = { from: "maker's sheet" as const, detail: page || 'page not noted' };
  const said = { spec, label: name, line: line.line, ...valuesOf(read), origin, ...(cut && { cut }) };
  const confirm = () => act(() => write(job.id, 'spec', said));
  const near = line.candidates.length > 0 ? line.candidates : specs.map((s) => s.id);
  return (
    <li>
      <div className="stack tight">
        {props.said ?? <span>“{line.line}”</span>}
        {line.spec === undefined && (
          <SelectField
            label="Which value is it?"
            choices={near.map((id) => ({ id, label: byId(specs).get(id)?.name ?? id }))}
            value={spec}
            onChange={setChosen}
            none="not matched"
          />
        )}
        <Understood name={spec === '' ? undefined : name} read={read} doubt={doubt} />
        <Wrong words={wrong} />
      </div>
      {confirmed ? (
        <span className="verdict pass">confirmed</span>
      ) : (
        <Button
          disabled={read.problem !== undefined || spec === '' || (!read.value && !read.text)}
          onClick={() => void confirm()}
        >
          Confirm
        </Button>
      )}
    </li>
  );
}

const valuesOf = ({ value, upTo, text }: SpecLine) => ({
  ...(value && { value: asWritten(value) }),
  ...(upTo && { upTo: asWritten(upTo) }),
  ...(text && { text }),
});

/** What the line was understood to say, and what speaks against it. */
function Understood(props: { name: string | undefined; read: SpecLine; doubt: string | undefined }) {
  const { name, read, doubt } = props;
  return (
    <>
      {name !== undefined && (
        <span>
          {name}: <b>{understood(read)}</b>
        </span>
      )}
      {read.assumed && <span className="soft">{read.assumed}</span>}
      {(read.problem ?? doubt) && (
        <span className="verdict cannot-decide wraps">{read.problem ?? `Look twice: ${doubt}`}</span>
      )}
      {read.likely && <span className="soft">Probably meant: {showAsWritten(read.likely)}</span>}
    </>
  );
}

const understood = (l: SpecLine) =>
  l.text ??
  [
    l.bound,
    [l.value, l.upTo]
      .filter((q) => q !== undefined)
      .map(showAsWritten)
      .join(' to '),
  ]
    .filter(Boolean)
    .join(' ');

/** The catalog's quantity as an entry keeps it; one that nobody wrote is written out in its own unit. */
function asWritten(q: NonNullable<SpecLine['value']>) {
  return written(showAsWritten(q), q.kind, q.unit);
}
