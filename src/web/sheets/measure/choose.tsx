import { useState } from 'react';
import type { Measurement } from '../../../catalog/index.js';
import { useAnswers, useCatalog } from '../../data/answers.js';
import { Button } from '../../parts/act.js';
import { type Findable, findable, found, grouped } from './choosable.js';

export type Chosen = Measurement | 'own';

/** Everything that is measured on such an engine, by the part a person is working on, or by typing. */
export function ChooseMeasurement(props: { onChoose: (m: Chosen) => void; onClose: () => void }) {
  const { onChoose, onClose } = props;
  const [typed, setTyped] = useState('');
  const catalog = useCatalog();
  const { facts } = useAnswers().engine;
  const all = found(findable(catalog, facts), typed);
  const fit = all.filter((f) => f.fits);
  const rest = all.filter((f) => !f.fits);
  return (
    <section className="card stack tight" aria-label="What is measured">
      <header>
        <h2>What is measured?</h2>
        <Button look="quiet" onClick={onClose}>
          Close
        </Button>
      </header>
      <input
        aria-label="Find a measurement"
        placeholder="find: bore, ring, clearance, flat …"
        value={typed}
        onChange={(e) => setTyped(e.target.value)}
      />
      {grouped(catalog, fit).map(({ title, of }) => (
        <MeasureButtons key={title} title={title} of={of} onChoose={onChoose} />
      ))}
      {all.length === 0 && <p className="empty">Nothing by these words. Name it yourself below.</p>}
      {rest.length > 0 && (
        <details open={fit.length === 0}>
          <summary>Not on this kind of engine, as written down ({rest.length})</summary>
          <MeasureButtons title="" of={rest} onChoose={onChoose} />
        </details>
      )}
      <div className="row">
        <Button look="quiet" onClick={() => onChoose('own')}>
          Something else
        </Button>
      </div>
    </section>
  );
}

function MeasureButtons(props: {
  title: string;
  of: readonly Findable[];
  onChoose: (m: Measurement) => void;
}) {
  return (
    <div className="stack tight">
      {props.title && <h3>{props.title}</h3>}
      <div className="choices measures">
        {props.of.map(({ measure }) => (
          <Button key={measure.id} onClick={() => props.onChoose(measure)}>
            {measure.shortName ?? measure.name}
          </Button>
        ))}
      </div>
    </div>
  );
}
