import { complaintsMeant } from '../../../diagnose/index.js';
import { useAnswers } from '../../data/answers.js';
import { Button } from '../../parts/act.js';

/** What the owner’s words may mean in the trade’s, less what is said already: one touch takes one. */
export function OwnerMeant(props: {
  words: string;
  /** ids of complaints */
  said: readonly string[];
  busy?: boolean;
  onTake: (said: readonly string[]) => void;
}) {
  const { words, said, busy = false, onTake } = props;
  const { catalog, engine } = useAnswers();
  const meant = complaintsMeant(catalog, engine.facts, words).filter(({ id }) => !said.includes(id));
  if (meant.length === 0) return null;
  return (
    <section className="stack tight" aria-label="In the trade’s words, it may be">
      <p className="soft">In the trade’s words, one touch takes it:</p>
      <div className="meant">
        {meant.map(({ id, name }) => (
          <Button key={id} disabled={busy} onClick={() => onTake([...said, id])}>
            {name}
          </Button>
        ))}
      </div>
    </section>
  );
}
