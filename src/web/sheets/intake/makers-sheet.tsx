import { useState } from 'react';
import { byId, readSpecLineAs, readSpecLines, type SpecLine } from '../../../catalog/index.js';
import { type Body, type Job, quantityOf, written } from '../../../job/index.js';
import { showAsWritten, withOrigin } from '../../../quantity/index.js';
import { useCatalog } from '../../data/answers.js';
import { write } from '../../data/outbox.js';
import { Asked } from '../../form/form.js';
import { useForm } from '../../form/use-form.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { SelectField } from '../../parts/field.js';
import { NumberWithOrigin } from '../../parts/number.js';

/** The maker's sheet as plain lines; each is matched, shown as it was understood, and confirmed one by one. */
export function MakersSheet({ job }: { job: Job }) {
  const form = useForm({
    job: job.id,
    kind: 'spec',
    handle: 'lines of the sheet',
    title: 'Lines of the maker’s sheet',
    fields: {
      $text: {
        as: 'long',
        label: 'Lines of the sheet, typed or pasted',
        hint: 'head bolts 140 in-lb\nspark plug gap .030 in\nvalve clearance intake .005-.007',
        help: 'One value a line. Nothing counts until you confirm it.',
      },
      $page: { as: 'text', label: 'Where it stands', hint: 'service sheet, page 12' },
    },
  });
  const catalog = useCatalog();
  const text = form.text('$text');
  const page = form.text('$page');
  const lines = text === '' ? [] : readSpecLines(catalog, text);
  return (
    <section className="section stack tight">
      <h2>The maker’s sheet</h2>
      <Confirmed job={job} />
      <Asked form={form} />
      <ul className="lines">
        {lines.map((l) => (
          <SpecLineRow key={`${l.line} ${l.spec ?? l.label}`} job={job} line={l} page={page} />
        ))}
      </ul>
      {form.differs && (
        <div>
          <Button look="quiet" onClick={form.giveUp}>
            Clear these lines
          </Button>
        </div>
      )}
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

/** One line as it was understood; where the match is not exact the person says which value it is. */
function SpecLineRow({ job, line, page }: { job: Job; line: SpecLine; page: string }) {
  const [spec, setSpec] = useState(line.spec ?? '');
  const { wrong, act } = useAct();
  const catalog = useCatalog();
  const { specs } = catalog;
  const read = spec === '' || spec === line.spec ? line : readSpecLineAs(catalog, spec, line.line);
  const name = byId(specs).get(spec)?.name ?? read.label;
  const confirmed = job.specs.get(spec)?.line === line.line;
  const confirm = () =>
    act(() =>
      write(job.id, 'spec', {
        spec,
        label: name,
        line: line.line,
        ...(read.value && { value: asWritten(read.value) }),
        ...(read.upTo && { upTo: asWritten(read.upTo) }),
        ...(read.text && { text: read.text }),
        origin: { from: "maker's sheet", detail: page || 'page not noted' },
      }),
    );
  const near = line.candidates.length > 0 ? line.candidates : specs.map((s) => s.id);
  return (
    <li>
      <div className="stack tight">
        <span>“{line.line}”</span>
        {line.spec === undefined && (
          <SelectField
            label="Which value is it?"
            choices={near.map((id) => ({ id, label: byId(specs).get(id)?.name ?? id }))}
            value={spec}
            onChange={setSpec}
            none="not matched"
          />
        )}
        {spec !== '' && (
          <span>
            {name}: <b>{understood(read)}</b>
          </span>
        )}
        {read.assumed && <span className="soft">{read.assumed}</span>}
        {read.problem && <span className="verdict cannot-decide wraps">{read.problem}</span>}
        {read.likely && <span className="soft">Probably meant: {showAsWritten(read.likely)}</span>}
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
