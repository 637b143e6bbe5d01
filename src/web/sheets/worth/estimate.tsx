import { byId, type Catalog, componentsOf } from '../../../catalog/index.js';
import type { Job, WorthVerdict } from '../../../job/index.js';
import {
  listed,
  lowerFirst,
  minutesWords,
  percent,
  roughHours,
  roughMoney,
  withinSentence,
} from '../../../phrase/index.js';
import { type Driver, estimateOf, restWords, type Service, type Worth } from '../../../worth/index.js';
import { useCatalog } from '../../data/answers.js';
import { write } from '../../data/outbox.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { FigureWithOrigin } from '../../parts/number.js';

type Answered = Extract<WorthVerdict, { state: 'answered' }>;
type Rows = (readonly [label: string, words: string])[];
interface Shown {
  readonly job: Job;
  readonly verdict: Answered;
}

const judged = 'the catalog: trade judgement, no source';

/** What is found or likely, line by line; what one would do anyway; and what may still turn up, as one line. */
export function Estimate({ job, verdict }: Shown) {
  const { worth, currency, ratePerHour } = verdict;
  if (!worth.minutes) return <p className="empty">It is scrap: nothing that makes it right is left.</p>;
  const money = ratePerHour === undefined ? undefined : (amount: number) => roughMoney(currency, amount);
  return (
    <section className="section stack tight">
      <h2>Work and parts</h2>
      {worth.drivers.length > 0 && <Figures verdict={verdict} />}
      <ul className="lines drivers">
        {worth.drivers.map((d) => (
          <Repair key={d.fault} job={job} verdict={verdict} driver={d} />
        ))}
      </ul>
      <Rest worth={worth} money={money} />
      <ServiceChoices job={job} verdict={verdict} />
    </section>
  );
}

/** Total, hours and parts, each with the lines that it is made of. */
function figuresOf({ worth, currency, ratePerHour }: Answered, nameOf: (fault: string) => string) {
  const { total, minutes, parts } = estimateOf(worth);
  const money = (amount: number): string => roughMoney(currency, amount);
  const linesOf = (part: (d: Driver) => string): Rows =>
    worth.drivers.map((d) => [nameOf(d.fault), part(d)] as const);
  const partsOf = (d: Driver) => d.parts.reduce((sum, p) => sum + p.cost, 0);
  const tookOf = ({ minutes: { own, reach } }: Driver) => minutesWords(own + reach);
  const thereAndBack = ({ minutes: { own, reach } }: Driver) =>
    minutesWords(own) + (reach < 0.5 ? '' : `, there and back ${minutesWords(reach)}`);
  const inAll = total && {
    what: 'In all',
    of: total,
    say: money,
    from: `the hours at ${currency}${ratePerHour} an hour, and the parts`,
    lines: linesOf((d) => `${money(d.cost)}: ${tookOf(d)}, parts ${money(partsOf(d))}`),
  };
  return [
    ...(inAll ? [inAll] : []),
    {
      what: 'At the bench',
      of: minutes,
      say: roughHours,
      from: 'minutes of the repairs, and of getting there and back once for all',
      lines: linesOf(thereAndBack),
    },
    {
      what: 'Parts',
      of: parts,
      say: money,
      from: 'prices written down on this job, else the catalog’s',
      lines: linesOf((d) => money(partsOf(d))),
    },
  ];
}

/** The middle of each, and between which nine in ten lie. */
function Figures({ verdict }: { verdict: Answered }) {
  const faults = byId(useCatalog().faults);
  const figures = figuresOf(verdict, (id) => faults.get(id)!.name);
  return (
    <ul className="lines">
      {figures.map(({ what, of, say, from, lines }, place) => (
        <li key={what} className={place === 0 ? 'first' : undefined}>
          <span>{what}</span>
          <span className="share">
            <FigureWithOrigin
              what={what}
              shown={say(of.median)}
              rows={[
                ...lines,
                ['the middle', `${say(of.median)} of all cases; the lines above are averages`],
                ['nine in ten', `${say(of.low)} to ${say(of.high)}`],
                ['from', from],
                ['stands on', judged],
              ]}
            />
            <span className="soft">
              {say(of.low)} to {say(of.high)}
            </span>
          </span>
        </li>
      ))}
    </ul>
  );
}

function Repair({ job, verdict, driver: d }: Shown & { driver: Driver }) {
  const catalog = useCatalog();
  const { act, wrong } = useAct();
  const { currency, ratePerHour } = verdict;
  const fault = byId(catalog.faults).get(d.fault)!;
  const chosen = job.decisions.findLast((e) => e.about === 'fault' && e.which === d.fault);
  const asService = chosen?.choice === 'service' && fault.service;
  const standing = asService
    ? 'service, as wanted'
    : d.present > 0.995
      ? 'found'
      : `${percent(d.present)} likely, counted by that chance`;
  const took = d.minutes.own + d.minutes.reach;
  return (
    <li>
      <div>
        <b>{asService ? fault.service.offer : fault.name}</b>
        <div className="soft">
          {standing}
          {!asService && `: ${fault.repair}`}
        </div>
        <Wrong words={wrong} />
      </div>
      <div className="share">
        <FigureWithOrigin
          what={fault.name}
          shown={ratePerHour === undefined ? minutesWords(took) : roughMoney(currency, d.cost)}
          rows={repairRows(catalog, job, d, verdict)}
        />
        {ratePerHour !== undefined && <div className="soft">{minutesWords(took)}</div>}
        {asService && (
          <Button
            look="quiet"
            onClick={() =>
              void act(() => write(job.id, 'strike', { entry: chosen.entry, reason: 'not wanted after all' }))
            }
          >
            Leave it out
          </Button>
        )}
      </div>
    </li>
  );
}

const mostPieces = 6;

function repairRows(catalog: Catalog, job: Job, d: Driver, { currency, ratePerHour }: Answered): Rows {
  const { architecture: kind } = job.intake;
  const architecture = kind === 'unknown' ? undefined : kind;
  const pieces = byId(architecture ? componentsOf(catalog, architecture) : []);
  const prices = byId(catalog.prices);
  const names = d.pieces.map((id) => lowerFirst(pieces.get(id)?.name ?? id));
  const more = names.length - mostPieces;
  const shownNames = [...names.slice(0, mostPieces), ...(more > 0 ? [`${more} more`] : [])];
  const reach = d.minutes.reach >= 0.5;
  return [
    ['the repair', `${minutesWords(d.minutes.own)}, on average, by ${judged}`],
    ...(reach
      ? [
          [
            'there and back',
            `${minutesWords(d.minutes.reach)}, shared with the repairs that need the same off${names.length > 0 ? `: ${listed(shownNames)}` : ''}`,
          ] as const,
        ]
      : []),
    ...d.parts
      .filter((p) => p.cost >= 0.5)
      .map(({ id, cost }): Rows[number] => {
        const price = prices.get(id)!;
        const { from, to } = price.on?.[architecture ?? 'side-valve'] ?? price;
        const span = `; ${currency}${from} to ${currency}${to} where it is bought`;
        return [price.names[0]!, `${roughMoney(currency, cost)} on average${span}`];
      }),
    ...(ratePerHour === undefined
      ? []
      : [['an hour', `${currency}${ratePerHour}, as written under Shop`] as const]),
  ];
}

/** What nobody has looked for, with its chance. */
function Rest({ worth, money }: { worth: Worth; money: ((amount: number) => string) | undefined }) {
  const faults = byId(useCatalog().faults);
  const names = worth.rest.most.map(
    (f) => `${withinSentence(faults.get(f.fault)!.name)} (${percent(f.present)})`,
  );
  return (
    <p>
      {restWords(worth, money)}
      {names.length > 0 && <span className="soft"> The likeliest: {names.join('; ')}.</span>}
    </p>
  );
}

function ServiceChoices({ job, verdict }: Shown) {
  const { service } = verdict.worth;
  if (service.length === 0) return null;
  return (
    <>
      <h3>Service, if the owner wants it</h3>
      <ul className="lines">
        {service.map((s) => (
          <ServiceChoice key={s.fault} job={job} verdict={verdict} service={s} />
        ))}
      </ul>
    </>
  );
}

function ServiceChoice({ job, verdict, service: s }: Shown & { service: Service }) {
  const fault = byId(useCatalog().faults).get(s.fault)!;
  const { act, wrong, busy } = useAct(job);
  const { offer } = fault.service!;
  const wanted = {
    about: 'fault',
    which: s.fault,
    choice: 'service',
    title: `${offer}: wanted`,
    reason: '',
  } as const;
  const { currency } = verdict;
  const parts = roughMoney(currency, s.parts);
  return (
    <li>
      <div>
        <b>{offer}</b>
        <div className="soft">
          {minutesWords(s.minutes)} and {parts} of parts; {percent(s.present)} likely to need it
        </div>
        <Wrong words={wrong} />
      </div>
      <div className="share">
        {s.cost !== undefined && <span>{roughMoney(currency, s.cost)} </span>}
        <Button
          disabled={busy}
          aria-label={`Count it in: ${offer}`}
          onClick={() => void act(() => write(job.id, 'decision', wanted))}
        >
          Count it in
        </Button>
      </div>
    </li>
  );
}
