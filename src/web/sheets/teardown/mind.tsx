import type { Caution as CatalogCaution, LookAlike } from '../../../catalog/index.js';
import { capital } from '../../../phrase/index.js';
import { Caution } from '../../parts/caution.js';

/** What to mind before the act: dangers first, then what passes for something else, then what fits the wrong way round. */
export function Mind(props: {
  cautions: readonly CatalogCaution[];
  lookAlikes: readonly LookAlike[];
  /** sentences of this step alone */
  also?: readonly string[];
  /** on the way back it is said what comes of it */
  harm?: boolean;
}) {
  const { cautions, lookAlikes, also = [], harm = false } = props;
  const pairs = lookAlikes.filter((l) => l.pair);
  const oneWay = lookAlikes.filter((l) => !l.pair);
  const wordsOf = (l: LookAlike) => (harm ? `${l.tell} ${l.harm}` : l.tell);
  return (
    <>
      <Caution stop={cautions.some((c) => c.severity === 3)} lines={cautions} />
      <Caution
        lines={[
          ...also,
          ...pairs.map((l) => ({
            title: capital(`${l.pair![0]} and ${l.pair![1]} look alike`),
            words: wordsOf(l),
          })),
        ]}
      />
      {oneWay.length > 0 && (
        <details className="one-way">
          <summary>Fits the wrong way round: {oneWay.map((l) => l.name.toLowerCase()).join('; ')}</summary>
          <ul>
            {oneWay.map((l) => (
              <li key={l.id}>
                <b>{l.name}.</b> {wordsOf(l)}
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}
