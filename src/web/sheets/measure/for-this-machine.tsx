import { Link } from 'wouter';
import type { Answers } from '../../../job/index.js';
import { workOutOf } from './work-out-of.js';

/** The way to the worksheets of what this engine drives, by the questions that come up at it. */
export function ForThisMachine({ answers: { catalog, engine } }: { answers: Answers }) {
  const questions = workOutOf(catalog, engine);
  if (questions.length === 0) return null;
  return (
    <section className="card stack tight" aria-labelledby="for-this-machine">
      <h2 id="for-this-machine">Work out for this machine</h2>
      <div className="row">
        {questions.map(({ worksheet, words }) => (
          <Link key={worksheet} className="button" href={`/desk/${worksheet}`}>
            {words}
          </Link>
        ))}
      </div>
    </section>
  );
}
