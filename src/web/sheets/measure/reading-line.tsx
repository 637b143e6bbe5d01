import type { ReactNode } from 'react';
import type { Job, LimitAnswer } from '../../../job/index.js';
import { decisionHandle, quantityOf } from '../../../job/index.js';
import { show, type UnitSystem } from '../../../quantity/index.js';
import { useCatalog } from '../../data/answers.js';
import { useUnits } from '../../data/queries.js';
import { Button } from '../../parts/act.js';
import { NumberWithOrigin } from '../../parts/number.js';
import { LimitStrip } from './limit-strip.js';
import { VerdictWord } from './verdict-word.js';

/** A reading or the mean of its repeats, what bounds it, what follows; its button stands below on a phone. */
export function ReadingLine(props: { job: Job; answer: LimitAnswer; onDecide: () => void }) {
  const { job, answer, onDecide } = props;
  const system = useUnits();
  const { group, decision, settled, limit } = answer;
  const { last, readings } = group;
  const made = decisionAbout(job, decisionHandle(useCatalog(), last.measure, last.place));
  return (
    <li className="reading">
      <div className="reading-head">
        <div>
          <NumberWithOrigin quantity={withOrigin(answer)} what={last.title} />{' '}
          <span className="soft">{placeWords(answer)}</span>
        </div>
        {decision ? <VerdictWord decision={decision} /> : <span className="soft">no limit</span>}
      </div>
      <div className="soft">
        {[toolWords(answer), limit && limitWords(limit, system)].filter(Boolean).join(' · ')}
      </div>
      {answer.ofClass && <p className="of-class">The limit is a figure of the class, not of this engine.</p>}
      {decision && limit && <LimitStrip answer={answer} />}
      {readings.length > 1 && (
        <div className="soft">
          read {readings.map((m) => m.value.written).join(', ')}
          {group.suspicious && (
            <b className="care">
              {' '}
              They differ by more than the tool explains: look for dirt, place and hand.
            </b>
          )}
        </div>
      )}
      {group.correction !== 0 && (
        <div className="soft">
          corrected by {signed(group.correction, last.value.unit, last.value.kind, system)} for{' '}
          {correctionWords(answer)}
        </div>
      )}
      {settled && !answer.superseded && <p>{settled.words}</p>}
      {answer.superseded && <p className="soft">Read again later, below.</p>}
      <DecideRow
        made={made}
        open={decision !== undefined && decision.verdict !== 'pass' && !answer.superseded}
        onDecide={onDecide}
      />
    </li>
  );
}

/** What was decided about a reading, and the button that decides while it is not plainly in order. */
export function DecideRow(props: {
  made: ReturnType<typeof decisionAbout>;
  open: boolean;
  /** what the button is about, where it does not stand beside it */
  about?: string;
  /** something else is to be done first */
  later?: boolean;
  onDecide: () => void;
  children?: ReactNode;
}) {
  const { made, about } = props;
  const word = made ? 'Decide again' : 'Decide';
  return (
    <>
      {made && (
        <div>
          <span className="chip">decided: {made.title}</span>
        </div>
      )}
      <div className="row">
        {props.children}
        {props.open && (
          <Button
            look={made || props.later ? 'quiet' : 'plain'}
            aria-label={about && `${word} about ${about}`}
            onClick={props.onDecide}
          >
            {word}
          </Button>
        )}
      </div>
    </>
  );
}

export function decisionAbout(job: Job, which: string) {
  return job.decisions.findLast(
    (d) => d.about === 'measurement' && (d.which === which || which.startsWith(`${d.which}.`)),
  );
}

function withOrigin({ group }: LimitAnswer) {
  const tool = group.instrument?.name ?? group.last.instrument ?? 'instrument not named';
  const count = group.readings.length;
  const detail = count > 1 ? `${tool}, mean of ${count}` : tool;
  return {
    ...group.quantity,
    ...(group.u > 0 && { u: group.u }),
    origin: { from: 'measured' as const, detail },
  };
}

function placeWords({ group: { last, readings } }: LimitAnswer): string {
  return [
    last.place,
    last.direction,
    readings.length > 1 && `mean of ${readings.length}`,
    last.phase === 'after' && 'after the work',
  ]
    .filter(Boolean)
    .join(', ');
}

function toolWords({ group }: LimitAnswer): string {
  if (group.instrument) return `${group.instrument.name}, ± ${group.instrument.uncertainty.written}`;
  return group.last.instrument
    ? `${group.last.instrument.replaceAll('-', ' ')}, not on the shop’s list`
    : 'no tool named';
}

function correctionWords({ group: { instrument, last } }: LimitAnswer): string {
  const zero = instrument?.zeroError && 'the zero of the tool';
  const warm = last.temperature && last.material && `${last.material} at ${last.temperature.written}`;
  return [zero, warm].filter(Boolean).join(' and ');
}

function signed(
  si: number,
  unit: string,
  kind: Parameters<typeof show>[0]['kind'],
  system: UnitSystem,
): string {
  return `${si > 0 ? '+' : '−'}${show({ kind, si: Math.abs(si), unit }, system)}`;
}

function limitWords(limit: NonNullable<LimitAnswer['limit']>, system: UnitSystem): string {
  const { min, max, origin } = limit;
  const say = (w: NonNullable<typeof min>) => show(quantityOf(w), system);
  const range =
    min && max ? `${say(min)} to ${say(max)}` : max ? `at most ${say(max)}` : `at least ${say(min!)}`;
  return `limit ${range} (${[origin.from, origin.detail].filter(Boolean).join(', ')})`;
}
