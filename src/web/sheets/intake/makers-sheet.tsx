import { readSpecLines } from '../../../catalog/index.js';
import { type Body, type Job, quantityOf } from '../../../job/index.js';
import { withOrigin } from '../../../quantity/index.js';
import { useCatalog } from '../../data/answers.js';
import { Asked } from '../../form/form.js';
import { useForm } from '../../form/use-form.js';
import { type KeptPage, PhotographPage } from '../../page/photograph-page.js';
import { Button } from '../../parts/act.js';
import { Cut } from '../../parts/cut.js';
import { NumberWithOrigin } from '../../parts/number.js';
import { SeenLines } from './seen-lines.js';
import { SpecLineRow } from './spec-line-row.js';

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
      $seen: { as: 'drawn', label: 'Lines of the photographed sheet' },
    },
  });
  const catalog = useCatalog();
  const text = form.text('$text');
  const page = form.text('$page');
  const lines = text === '' ? [] : readSpecLines(catalog, text);
  const seen = form.given.$seen as KeptPage | undefined;
  return (
    <section className="section stack tight">
      <h2>The maker’s sheet</h2>
      <Confirmed job={job} />
      <PhotographPage
        job={job}
        label="Photograph the sheet"
        caption="maker’s sheet, laid straight"
        onRead={(sheet) => form.set('$seen', sheet)}
      />
      <Asked form={form} names={['$text', '$page']} />
      {seen && (
        <SeenLines job={job} sheet={seen} page={page} onChange={(sheet) => form.set('$seen', sheet)} />
      )}
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
              <td className="soft">
                {[s.origin.from, s.origin.detail].filter(Boolean).join(', ')}
                <WhereItStands job={job} cut={s.cut} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** The line in the photograph of the sheet from which a value was taken. */
function WhereItStands({ job, cut }: { job: Job; cut: Body<'spec'>['cut'] }) {
  const picture = job.photographs.find((p) => p.picture?.sha256 === cut?.picture)?.picture;
  return cut && picture ? <Cut cut={cut} of={picture} alt="the line as it stands on the sheet" /> : null;
}

/** zod writes an absent detail as `undefined`; an origin leaves it out. */
const originOf = (o: Body<'spec'>['origin']) => ({
  from: o.from,
  ...(o.detail !== undefined && { detail: o.detail }),
});
