import { Link } from 'wouter';
import { amountOf, decisionHandle, type Job, type ValveAnswer } from '../../../job/index.js';
import { show } from '../../../quantity/index.js';
import { useCatalog } from '../../data/answers.js';
import { write } from '../../data/outbox.js';
import { useUnits } from '../../data/queries.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { Caution } from '../../parts/caution.js';
import { NumberWithOrigin } from '../../parts/number.js';
import type { Deciding } from './decide-reading.js';
import { DecideRow, decisionAbout } from './reading-line.js';
import { VerdictWord } from './verdict-word.js';

/** Valve clearance as it stands now, and what to do: stock off the stem in steps, or the adjuster. */
export function ValveSection(props: {
  job: Job;
  valves: readonly ValveAnswer[];
  onDecide: (about: Deciding) => void;
}) {
  const cuts = props.valves.some((v) => v.stem?.action === 'shorten stem');
  return (
    <section className="section stack tight">
      <h2>Valve clearance, cold</h2>
      {cuts && (
        <Caution
          lines={[
            'What is ground off a stem does not grow back. Half of it first, then measure; the last cut is a touch.',
            'Only a tight valve is ground. A wide one is cured at the seat or with another valve, never at the stem.',
            'Set it after lapping: lapping lets the valve down and closes the clearance.',
          ]}
        />
      )}
      <ul className="lines">
        {props.valves.map((v) => (
          <ValveLine key={v.valve} job={props.job} valve={v} onDecide={props.onDecide} />
        ))}
      </ul>
    </section>
  );
}

function ValveLine(props: { job: Job; valve: ValveAnswer; onDecide: (about: Deciding) => void }) {
  const { job, valve: v, onDecide } = props;
  const system = useUnits();
  const { act, wrong } = useAct();
  const { group, settled } = v.answer;
  const say = (x: number) => show(amountOf(x, v.unit), system);
  const which = decisionHandle(useCatalog(), group.last.measure, v.valve);
  const made = decisionAbout(job, which);
  const { decision, stem } = v;
  const title = `${v.valve === 'intake' ? 'Intake' : 'Exhaust'} valve clearance`;
  const cut = stem?.action === 'shorten stem' ? stem : undefined;
  const logCut = () =>
    act(() =>
      write(job.id, 'decision', {
        about: 'measurement',
        which,
        title: `${title} ${group.last.value.written}: ${say(cut!.firstCut)} off the stem`,
        choice: 'recondition',
        reason: `Tight. Range ${say(v.min)} to ${say(v.max)}; ${say(cut!.remove)} in all, the first cut ${say(cut!.firstCut)}.`,
      }),
    );
  return (
    <li className="reading">
      <ValveHead valve={v} title={title} say={say} />
      <Repeats valve={v} />
      {v.ofClass && <p className="of-class">The range is of the class, not of this engine.</p>}
      <p>
        <b>{v.words}</b>
      </p>
      {settled && <p>{settled.words}</p>}
      <Wrong words={wrong} />
      <DecideRow
        made={made}
        open={decision.verdict !== 'pass'}
        about={`the ${v.valve} valve`}
        later={cut !== undefined}
        onDecide={() =>
          onDecide({
            which,
            title,
            value: group.last.value.written,
            says: decision.words,
            reasons: [v.words],
          })
        }
      >
        {cut && cut.firstCut > 0 && (
          <Button onClick={() => void logCut()}>Ground {say(cut.firstCut)} off: measure again</Button>
        )}
        {v.turn && v.turn !== 'leave' && (
          <Link className="button" href={turnSheet(v)}>
            How far to turn
          </Link>
        )}
      </DecideRow>
    </li>
  );
}

function ValveHead(props: { valve: ValveAnswer; title: string; say: (x: number) => string }) {
  const { valve: v, title, say } = props;
  const { group } = v.answer;
  const origin = { from: 'measured' as const, detail: group.instrument?.name ?? 'instrument not named' };
  return (
    <>
      <div className="reading-head">
        <div>
          {v.valve}{' '}
          <NumberWithOrigin
            what={title}
            quantity={{ ...group.quantity, ...(group.u > 0 && { u: group.u }), origin }}
          />
          <span className="soft">
            , {say(v.min)} to {say(v.max)}
            {group.last.phase === 'after' && ', after the work'}
          </span>
        </div>
        <VerdictWord decision={v.decision} />
      </div>
      <div className="soft">
        {[
          group.instrument?.name ?? 'no tool named',
          [v.origin.from, v.ofClass ? '' : v.origin.detail].filter(Boolean).join(', '),
        ].join(' · ')}
        {v.before !== undefined && ` · read ${say(v.before)} before`}
      </div>
    </>
  );
}

function Repeats({ valve: { answer } }: { valve: ValveAnswer }) {
  const { group } = answer;
  if (group.readings.length < 2) return null;
  return (
    <div className="soft">
      mean of {group.readings.map((m) => m.value.written).join(', ')}
      {group.suspicious && (
        <b className="care">
          {' '}
          They differ by more than the feelers explain: was something done between them?
        </b>
      )}
    </div>
  );
}

/** The reading carried over into the reference desk, which asks for thread pitch and rocker ratio. */
function turnSheet(v: ValveAnswer): string {
  const given = new URLSearchParams({
    valve: v.valve,
    clearance: v.answer.group.last.value.written,
    least: `${v.min} ${v.unit}`,
    most: `${v.max} ${v.unit}`,
  });
  return `/desk/valve-clearance-overhead?${given}`;
}
