import { useState } from 'react';
import {
  amountOf,
  type BoreAnswer,
  type BoringPlan,
  type Job,
  nextSize,
  usualBoring,
} from '../../../job/index.js';
import { of, show, to } from '../../../quantity/index.js';
import { useCatalog } from '../../data/answers.js';
import { useUnits } from '../../data/queries.js';
import { Choices, TextField } from '../../parts/field.js';
import { NumberWithOrigin } from '../../parts/number.js';
import { BorePicture } from './bore-picture.js';
import type { Deciding } from './decide-reading.js';
import { WorkedLine } from './worked-line.js';

/** A bore read at heights and directions: its picture, what it says, and what boring it would take. */
export function BoreSection(props: {
  job: Job;
  bore: BoreAnswer;
  past: boolean;
  onDecide: (about: Deciding) => void;
}) {
  const { job, bore, past, onDecide } = props;
  const count = bore.groups.reduce((n, g) => n + g.readings.length, 0);
  const reject = bore.figures.find((f) => f.measure === bore.groups[0]!.last.measure);
  const bound = reject?.limit && boundSize(bore, reject.limit.max, reject.title);
  const plan = usePlan(bore);
  const catalog = useCatalog();
  const next = past ? undefined : nextSize(bore, plan.value, { job, catalog });
  return (
    <section className="section stack tight">
      <h2>
        Bore, {count} readings{bore.phase === 'after' ? ', after the work' : ''}
      </h2>
      <p className="soft">{toolWords(bore)}</p>
      {bore.missing.length > 0 && (
        <p className="empty">
          Still to read before wear, taper and out-of-round can be told: {bore.missing.join('; ')}.
        </p>
      )}
      {bore.cannot && <p className="wrong-line">{bore.cannot}</p>}
      <BorePicture bore={bore} limit={bound} />
      <ul className="lines">
        {bore.figures.map((figure) => (
          <WorkedLine
            key={figure.measure}
            job={job}
            figure={figure}
            of="Bore"
            how={`from ${count} readings at ${bore.heights.length} heights and ${bore.directions.length} directions`}
            reasons={reasonsOf(next?.answer.choice, bore)}
            past={past}
            onDecide={onDecide}
          />
        ))}
      </ul>
      {bore.standard && <StandardWords bore={bore} />}
      {bore.map && <AllReadings bore={bore} />}
      {next && <NextSize next={next} bore={bore} plan={plan} />}
    </section>
  );
}

/** The bound as a diameter, wherever it is a bound on the wear. */
function boundSize({ standard }: BoreAnswer, max: number, title: string): number {
  return title === 'Wear' ? standard!.size + max : max;
}

function toolWords({ instruments, asRead }: BoreAnswer): string {
  const named = instruments.map((i) => `${i.name}, ± ${i.uncertainty.written}`).join('; ');
  if (!asRead) return named;
  return `${named ? `${named}; some` : 'All'} readings were taken with a tool of unknown uncertainty, so this is compared as read.`;
}

function StandardWords({ bore }: { bore: BoreAnswer }) {
  const { standard, unit } = bore;
  const { size, origin, range, guessed } = standard!;
  return (
    <p className="soft">
      Standard <NumberWithOrigin what="Standard bore" quantity={{ ...amountOf(size, unit), origin }} />
      {range && `, the middle of ${range[0]} to ${range[1]} ${unit}`}
      {guessed && ': the smallest reading stands in, because no standard size is written down'}. The outside
      of the hatched wall is not to scale. A two-point gauge cannot see three lobes.
    </p>
  );
}

function AllReadings({ bore }: { bore: BoreAnswer }) {
  const map = bore.map!;
  return (
    <details>
      <summary>All readings</summary>
      <div className="scroll-x">
        <table>
          <thead>
            <tr>
              <th scope="col">Height</th>
              {bore.directions.map((d) => (
                <th key={d} scope="col">
                  {d}
                </th>
              ))}
              <th scope="col">out of round</th>
            </tr>
          </thead>
          <tbody>
            {bore.heights.map((h, i) => (
              <tr key={h}>
                <th scope="row">{h}</th>
                {bore.directions.map((d) => {
                  const cell = map.cells.find((c) => c.depth === i + 1 && c.direction === d)!;
                  return (
                    <td key={d}>{show(amountOf(cell.diameter, bore.unit), undefined, { digits: 6 })}</td>
                  );
                })}
                <td>{trimmed(map.outOfRoundByDepth[i]!)}</td>
              </tr>
            ))}
            <tr>
              <th scope="row">taper</th>
              {map.taperByDirection.map((t, i) => (
                <td key={bore.directions[i]}>{trimmed(t)}</td>
              ))}
              <td />
            </tr>
          </tbody>
        </table>
      </div>
    </details>
  );
}

const trimmed = (x: number) => String(Number(x.toPrecision(3)));

interface Plan {
  readonly value: BoringPlan;
  readonly center: BoringPlan['center'];
  readonly setCenter: (center: BoringPlan['center']) => void;
  readonly sizes: string;
  readonly setSizes: (sizes: string) => void;
}

function usePlan({ unit }: BoreAnswer): Plan {
  const inUnit = (inches: number) => Number(to(of(inches, 'in'), unit).toFixed(unit === 'mm' ? 2 : 4));
  const usual = unit === 'mm' ? [0.25, 0.5, 0.75] : usualBoring.oversizesIn.map(inUnit);
  const [center, setCenter] = useState<BoringPlan['center']>('worn');
  const [sizes, setSizes] = useState(usual.join('; '));
  const oversizes = sizes
    .split(/[;\s]+/)
    .map(Number)
    .filter((n) => n > 0);
  return {
    value: {
      oversizes: oversizes.length > 0 ? oversizes : usual,
      cleanUp: inUnit(usualBoring.cleanUpIn),
      center,
    },
    center,
    setCenter,
    sizes,
    setSizes,
  };
}

type Next = NonNullable<ReturnType<typeof nextSize>>;

function reasonsOf(choice: Next['answer']['choice'] | undefined, { unit, standard }: BoreAnswer): string[] {
  if (!choice || !standard) return ['Bore is worn beyond its limit.'];
  return [
    `Bore to ${trimmed6(choice.finished)} ${unit}, ${choice.oversize} over.`,
    'Hone, new rings, watch it.',
  ];
}

const trimmed6 = (x: number) => String(Number(x.toPrecision(6)));

/** If it is bored: the next size that surely cleans up, and how the piston would fit. */
function NextSize({ next, bore, plan }: { next: Next; bore: BoreAnswer; plan: Plan }) {
  const system = useUnits();
  const { answer, clearance } = next;
  const { unit } = bore;
  return (
    <details open={bore.figures.some((f) => f.decision?.verdict === 'fail')}>
      <summary>If it is bored: the next size</summary>
      <div className="stack tight">
        <p>
          <b>{answer.words}</b>
        </p>
        {answer.choice && (
          <p>
            Bore to {trimmed6(answer.choice.finished)} {unit}: {trimmed(answer.choice.stock)} {unit} of stock
            beyond the wear.
          </p>
        )}
        {clearance && (
          <p>
            Piston clearance then{' '}
            <NumberWithOrigin
              what="Piston clearance after boring"
              quantity={{
                ...clearance.quantity,
                origin: {
                  from: 'computed',
                  detail: 'bore less the skirt as read, both larger by the oversize; measure the real piston',
                },
              }}
            />
            {fitWords(clearance, unit, system)}
          </p>
        )}
        {!clearance && (
          <p className="soft">With a reading of the piston skirt the clearance is worked out too.</p>
        )}
        <ul className="plain">
          {answer.choices.map((c) => (
            <li key={c.oversize}>
              {c.oversize} {unit} over:{' '}
              <span className={`verdict ${c.cleansUp.verdict}`}>
                {c.cleansUp.verdict === 'pass'
                  ? 'cleans up'
                  : c.cleansUp.verdict === 'fail'
                    ? 'does not clean up'
                    : 'cannot tell'}
              </span>
            </li>
          ))}
        </ul>
        <PlanFields plan={plan} unit={unit} />
      </div>
    </details>
  );
}

function PlanFields({ plan, unit }: { plan: Plan; unit: string }) {
  return (
    <div className="fields">
      <Choices
        label="Where the new bore stands"
        value={plan.center}
        onChange={plan.setCenter}
        choices={[
          { id: 'worn', label: 'on the worn hole' },
          { id: 'old', label: 'on the old center' },
        ]}
      />
      <TextField
        label={`Oversizes sold, ${unit}`}
        value={plan.sizes}
        onChange={plan.setSizes}
        help="The usual ones stand here (common practice). Write what you can really buy."
      />
    </div>
  );
}

function fitWords(
  { quantity, limit }: NonNullable<Next['clearance']>,
  unit: string,
  system: Parameters<typeof show>[1],
): string {
  const value = to(quantity, unit);
  const low = limit.min === undefined ? '' : `${show(amountOf(limit.min, unit), system)} to `;
  const span = `${low}${show(amountOf(limit.max, unit), system)}`;
  const inside = value <= limit.max && (limit.min === undefined || value >= limit.min);
  const whose = limit.ofClass
    ? 'of the class, not of this engine'
    : (limit.origin.detail ?? limit.origin.from);
  return `, ${inside ? 'within' : 'outside'} ${span} (${whose}).`;
}
