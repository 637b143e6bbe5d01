import { useState } from 'react';
import { builtInCatalog, readSpecLines, type SpecLine } from '../../../catalog/index.js';
import { type Body, type Job, quantityOf } from '../../../job/index.js';
import { withOrigin } from '../../../quantity/index.js';
import { write } from '../../data/outbox.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { SelectField, TextField } from '../../parts/field.js';
import { NumberWithOrigin } from '../../parts/number.js';
import { handleOf } from '../components.js';

/** The maker's sheet as plain lines; each is matched, shown as it was understood, and confirmed one by one. */
export function MakersSheet({ job }: { job: Job }) {
  const [text, setText] = useState('');
  const [page, setPage] = useState('');
  const lines = text.trim() === '' ? [] : readSpecLines(builtInCatalog(), text);
  return (
    <section className="section stack tight">
      <h2>The maker’s sheet</h2>
      <Confirmed job={job} />
      <TextField
        label="Lines of the sheet, typed or pasted"
        value={text}
        onChange={setText}
        long
        placeholder={'head bolts 140 in-lb\nspark plug gap .030 in\nvalve clearance intake .005-.007'}
        help="One value a line. Nothing counts until you confirm it."
      />
      <TextField
        label="Where it stands"
        value={page}
        onChange={setPage}
        placeholder="service sheet, page 12"
      />
      <ul className="lines">
        {lines.map((l) => (
          <SpecLineRow key={l.line} job={job} line={l} page={page} />
        ))}
      </ul>
    </section>
  );
}

function Confirmed({ job }: { job: Job }) {
  if (job.specs.size === 0)
    return (
      <p className="soft">
        No line is confirmed yet. Without the maker’s values only figures of the class stand, and they say so.
      </p>
    );
  return (
    <div className="scroll-x">
      <table>
        <tbody>
          {[...job.specs.values()].map((s) => (
            <tr key={s.spec}>
              <td>{s.label}</td>
              <td>
                {s.text ?? (
                  <>
                    {s.value && (
                      <NumberWithOrigin
                        what={s.label}
                        quantity={withOrigin(quantityOf(s.value), originOf(s.origin))}
                      />
                    )}
                    {s.upTo && (
                      <>
                        {' to '}
                        <NumberWithOrigin
                          what={s.label}
                          quantity={withOrigin(quantityOf(s.upTo), originOf(s.origin))}
                        />
                      </>
                    )}
                  </>
                )}
              </td>
              <td className="soft">{[s.origin.from, s.origin.detail].filter(Boolean).join(', ')}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** zod writes an absent detail as `undefined`; an origin leaves it out. */
const originOf = (o: Body<'spec'>['origin']) => ({
  from: o.from,
  ...(o.detail !== undefined && { detail: o.detail }),
});

function SpecLineRow({ job, line, page }: { job: Job; line: SpecLine; page: string }) {
  const [spec, setSpec] = useState(line.spec ?? '');
  const { wrong, act } = useAct();
  const { specs } = builtInCatalog();
  const name = specs.find((s) => s.id === spec)?.name ?? line.label;
  const confirmed = job.specs.get(spec || handleOf(line.label))?.line === line.line;
  const reread =
    spec && spec !== line.spec ? readSpecLines(builtInCatalog(), `${name}: ${line.line}`)[0] : line;
  const problem = line.spec === spec ? line.problem : reread?.problem;
  const confirm = () =>
    act(() =>
      write(job.id, 'spec', {
        spec: spec || handleOf(line.label),
        label: name,
        line: line.line,
        ...(line.value && { value: asWritten(line.value) }),
        ...(line.upTo && { upTo: asWritten(line.upTo) }),
        ...(line.text && { text: line.text }),
        origin: { from: "maker's sheet", detail: page.trim() || 'page not noted' },
      }),
    );
  const choices = (line.candidates.length > 0 ? line.candidates : specs.map((s) => s.id)).map((id) => ({
    id,
    label: specs.find((s) => s.id === id)?.name ?? id,
  }));
  return (
    <li>
      <div className="stack tight">
        <span>“{line.line}”</span>
        {line.spec === undefined && (
          <SelectField
            label="Which value is it?"
            choices={choices}
            value={spec}
            onChange={setSpec}
            none="not matched"
          />
        )}
        {line.spec !== undefined && (
          <span>
            {name}:{' '}
            <b>{line.text ?? [line.value?.written, line.upTo?.written].filter(Boolean).join(' to ')}</b>
          </span>
        )}
        {problem && (
          <span className="verdict cannot-decide" style={{ whiteSpace: 'normal' }}>
            {problem}
          </span>
        )}
        <Wrong words={wrong} />
      </div>
      {confirmed ? (
        <span className="verdict pass">confirmed</span>
      ) : (
        <Button
          disabled={problem !== undefined || spec === '' || (!line.value && !line.text)}
          onClick={() => void confirm()}
        >
          Confirm
        </Button>
      )}
    </li>
  );
}

const asWritten = (q: NonNullable<SpecLine['value']>) => ({
  written: q.written ?? '',
  kind: q.kind,
  si: q.si,
  unit: q.unit,
});
