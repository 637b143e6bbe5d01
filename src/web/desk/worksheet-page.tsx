import { useState } from 'react';
import { Link, useSearch } from 'wouter';
import { counted } from '../../phrase/index.js';
import {
  type Answer,
  isPublished,
  run,
  toldTo,
  type Worksheet,
  WorksheetError,
  type Field as WorksheetField,
} from '../../worksheet/index.js';
import { useUnits } from '../data/queries.js';
import { Page } from '../frame/page.js';
import { Button } from '../parts/act.js';
import { Caution } from '../parts/caution.js';
import { Field } from '../parts/field.js';
import { FigureWithOrigin, NumberWithOrigin } from '../parts/number.js';
import { PictureDrawing } from './picture-drawing.js';

/** A worksheet as a form: the same definition answers on the command line and over HTTP. */
export function WorksheetPage({ worksheet: w }: { worksheet: Worksheet }) {
  const carried = carriedOver(w, useSearch());
  const [given, setGiven] = useState<Readonly<Record<string, string>>>(carried);
  const [outcome, setOutcome] = useState<Outcome>();
  const change = (id: string, text: string) => {
    setGiven({ ...given, [id]: text });
    setOutcome(undefined);
  };
  return (
    <Page title={w.question}>
      <p className="say">{w.purpose}</p>
      <Caution lines={w.cautions} />
      <form
        className="stack"
        onSubmit={(e) => {
          e.preventDefault();
          setOutcome(answer(w, given));
        }}
      >
        <div className="fields">
          {w.fields.map((f) => (
            <GivenField
              key={f.id}
              field={f}
              value={given[f.id] ?? ''}
              onChange={(text) => change(f.id, text)}
              wrong={outcome && 'wrong' in outcome && outcome.field === f.id ? outcome.wrong : undefined}
            />
          ))}
        </div>
        <div className="row">
          <Button type="submit" look="go">
            Work it out
          </Button>
          {w.examples[0] && (
            <Button
              look="quiet"
              onClick={() => {
                setGiven(w.examples[0]!.given);
                setOutcome(answer(w, w.examples[0]!.given));
              }}
            >
              {isPublished(w.examples[0]) ? 'Fill in a published example' : 'Fill in a worked example'}
            </Button>
          )}
        </div>
      </form>
      <div aria-live="polite">{outcome && <OutcomeBox outcome={outcome} />}</div>
      <Checked worksheet={w} />
      <p>
        <Link href="/desk">All worksheets</Link>
      </p>
    </Page>
  );
}

/** What a sheet of a job hands over with the address: a reading and its limits. */
function carriedOver({ fields }: Worksheet, search: string): Readonly<Record<string, string>> {
  const asked = new URLSearchParams(search);
  return Object.fromEntries(
    fields.flatMap(({ id }) => {
      const text = asked.get(id);
      return text ? [[id, text.slice(0, 400)]] : [];
    }),
  );
}

type Outcome =
  | { readonly answers: readonly Answer[] }
  | { readonly wrong: string; readonly field?: string | undefined };

function answer(w: Worksheet, given: Readonly<Record<string, string>>): Outcome {
  try {
    return { answers: run(w, given) };
  } catch (error) {
    if (error instanceof WorksheetError) return { wrong: error.message, field: error.field };
    throw error;
  }
}

function GivenField(props: {
  field: WorksheetField;
  value: string;
  onChange: (v: string) => void;
  wrong: string | undefined;
}) {
  const { field, value, onChange } = props;
  const optional = field.required === false || field.standard !== undefined;
  return (
    <Field label={field.label + (optional ? ' (may be left out)' : '')} help={field.help} wrong={props.wrong}>
      {(control) =>
        field.kind === 'choice' ? (
          <select {...control} value={value} onChange={(e) => onChange(e.target.value)}>
            <option value="">
              {field.standard ? `${labelOf(field, field.standard)} (usual)` : 'choose …'}
            </option>
            {field.choices?.map((c) => (
              <option key={c.id} value={c.id}>
                {c.label}
              </option>
            ))}
          </select>
        ) : (
          <input
            {...control}
            value={value}
            placeholder={field.standard ?? field.hint}
            autoComplete="off"
            autoCapitalize="off"
            spellCheck={false}
            onChange={(e) => onChange(e.target.value)}
          />
        )
      }
    </Field>
  );
}

const labelOf = (f: WorksheetField, id: string) => f.choices?.find((c) => c.id === id)?.label ?? id;

function OutcomeBox({ outcome }: { outcome: Outcome }) {
  if ('wrong' in outcome) {
    return (
      <div className="wrong-box" role="alert">
        <b>{outcome.wrong}</b>
      </div>
    );
  }
  return (
    <section className="card first">
      <ul className="lines answers">
        {outcome.answers.map((a) => (
          <li key={a.id} className={isLong(a) ? 'long' : undefined}>
            <div>
              {a.label}
              {a.note && <div className="soft">{a.note}</div>}
            </div>
            <AnswerWords answer={a} />
          </li>
        ))}
      </ul>
      {outcome.answers.map((a) => a.picture && <PictureDrawing key={a.id} picture={a.picture} />)}
    </section>
  );
}

const isLong = ({ value }: Answer) =>
  value.type === 'verdict' || value.type === 'list' || value.type === 'text';

function AnswerWords({ answer: { value, label, origin } }: { answer: Answer }) {
  const system = useUnits();
  if (value.type === 'quantity')
    return <NumberWithOrigin what={label} quantity={{ ...value.quantity, origin }} />;
  if (value.type === 'number')
    return (
      <FigureWithOrigin
        what={label}
        shown={value.digits === undefined ? String(value.number) : value.number.toFixed(value.digits)}
        rows={[['from', [origin.from, origin.detail].filter(Boolean).join(', ')]]}
      />
    );
  if (value.type === 'verdict') {
    return (
      <div>
        <span className={`verdict ${value.verdict}`}>{value.verdict.replace('-', ' ')}</span>
        <div className="soft">{toldTo(value.text, system)}</div>
      </div>
    );
  }
  if (value.type === 'list') {
    return (
      <ol>
        {value.items.map((i) => (
          <li key={i}>{i}</li>
        ))}
      </ol>
    );
  }
  return <b>{value.text}</b>;
}

/** What it was checked against, from the same examples that the tests run. */
function Checked({ worksheet: w }: { worksheet: Worksheet }) {
  return (
    <details className="section">
      <summary>Checked against {counted(w.examples.length, 'example')}</summary>
      <ul>
        {w.examples.map((e) => (
          <li key={e.title}>
            {e.title}: {e.source} <small>({e.mark})</small>
          </li>
        ))}
      </ul>
      {w.sources.length > 0 && (
        <>
          <h3>Sources</h3>
          <ul>
            {w.sources.map((s) => (
              <li key={s}>{s}</li>
            ))}
          </ul>
        </>
      )}
    </details>
  );
}
