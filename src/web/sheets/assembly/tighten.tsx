import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import {
  type BoltTurn,
  boltOf,
  type From,
  type Job,
  type TighteningProgress,
  turnFrom,
  turnTorque,
  written,
} from '../../../job/index.js';
import { type Quantity, show, type UnitSystem } from '../../../quantity/index.js';
import { useAnswers } from '../../data/answers.js';
import { write } from '../../data/outbox.js';
import { useShop, useUnits } from '../../data/queries.js';
import { Page } from '../../frame/page.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { Caution } from '../../parts/caution.js';
import { Camera } from '../../parts/picture.js';
import { Speak } from '../../parts/speak.js';
import { useStepKeys } from '../../parts/step-keys.js';
import { type Choice, type Question, toldAloud } from '../../talk/answers/choice.js';
import { ChoiceButton } from '../../talk/answers/choice-button.js';
import { phrases } from '../../talk/answers/phrases.js';
import { SpokenAnswers } from '../../talk/answers/spoken-answers.js';
import { useAnswering } from '../../talk/answers/use-answering.js';
import { TalkAtStep } from '../../talk/talk.js';
import { useTalk } from '../../talk/use-talk.js';
import { JointDrawing } from './joint-drawing.js';
import { strikeAct } from './take-back.js';

/** Step mode: one bolt at a time, readable from two metres, driven by space, arrows or a foot pedal. */
export function Tighten({ job, joint: handle }: { job: Job; joint: string }) {
  const joint = job.joints.get(handle);
  if (!joint) {
    return (
      <Page title="That joint is not laid out">
        <p>
          <Link href={`/job/${job.id}/assembly`}>Back to Assembly</Link>
        </p>
      </Page>
    );
  }
  return <Steps key={joint.entry} job={job} joint={joint} />;
}

/** The bolt in hand, and what is said of it and taken back: a note, a word of trouble or a click, the last first. */
function useBolts(job: Job, joint: From<'joint'>) {
  const { tightening, lastAct } = useAnswers();
  const progress = tightening.get(joint.joint)!;
  const [stood, setPlace] = useState(progress.next ?? progress.turns.length);
  const { wrong, busy, act } = useAct();
  // the next bolt is shown when it can be answered: a press at that very moment would be lost otherwise
  const place = busy ? stood : turnFrom(progress, stood);
  const turn = progress.turns[place];
  const say = async (result: From<'torque'>['result']) => {
    if (!turn || busy) return;
    setPlace(place);
    const body = torqueBody(joint, turn, result);
    const kept = await act(() => write(job.id, 'torque', body));
    if (kept && result === 'clicked') setPlace(place + 1);
  };
  const last = lastSaid(progress, place);
  const note = lastAct?.what === 'note' ? lastAct : undefined;
  const back = async () => {
    if (busy) return;
    setPlace(place);
    if (note) return void (await act(() => strikeAct(job.id, note)));
    // what was said of the bolt is taken back with the step: a click that stands would be counted twice
    const strike = { entry: last?.entry ?? '', reason: 'back in step mode' };
    const isBack = !last || (await act(() => write(job.id, 'strike', strike)));
    if (isBack && last?.result !== 'turned without rising') setPlace(Math.max(0, place - 1));
  };
  const words = note ? 'Take back the note' : backWords(progress, place, last);
  const takesBack = note !== undefined || last !== undefined;
  return { progress, place, turn, wrong, busy, say, back, words, takesBack };
}

function Steps({ job, joint }: { job: Job; joint: From<'joint'> }) {
  const bolts = useBolts(job, joint);
  const { progress, place, turn, wrong, say } = bolts;
  const back = () => void bolts.back();
  const [, go] = useLocation();
  const leave = () => go(`/job/${job.id}/assembly`);
  const about = turn ? inHand(joint, turn, progress) : joint.name;
  const talk = useTalk(job.id, { stage: 'assembly', about });
  const onward = useOnward(progress);
  const buttons = boltChoices(bolts);
  const question = boltQuestion(joint, progress, place, buttons);
  const voice = useAnswering(question);
  const clicked = turn ? () => void say('clicked') : onward.act;
  useStepKeys(clicked, back, leave, talk, voice);

  if (!turn)
    return <Finished joint={joint} progress={progress} onward={onward} onBack={back} onLeave={leave} />;
  return (
    <div className="step">
      <BoltHead job={job} joint={joint} turn={turn} progress={progress} onLeave={leave} />
      <JointDrawing joint={joint} lit={litFor(progress, place)} />
      <TorqueNow joint={joint} turn={turn} />
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: on a phone this region scrolls, and a keyboard must reach it */}
      <section className="stack" tabIndex={0} aria-label="This bolt">
        <BoltWords joint={joint} turn={turn} progress={progress} />
        <Caution lines={beforeTheWrench} />
        <Wrong words={wrong} />
        <SpokenAnswers question={question} voice={voice} />
        <TalkAtStep job={job} stage="assembly" about={about} talk={talk} byPedal={!voice.on} />
      </section>
      {/* anew for each bolt: a touch meant for the one before finds nothing yet */}
      <BoltButtons key={place} choices={buttons} />
    </div>
  );
}

const beforeTheWrench = [
  'Cold engine only. Stop if the bolt turns without the torque rising.',
  'The maker’s manual comes first.',
];

/** "Cylinder head, bolt 3, pass 1 of 2" */
const inHand = (joint: From<'joint'>, turn: BoltTurn, progress: TighteningProgress) =>
  `${joint.name}, bolt ${turn.bolt}, ${passName(turn, progress)}`;

function torqueBody(joint: From<'joint'>, turn: BoltTurn, result: From<'torque'>['result']) {
  const set = show(turnTorque(joint, turn), undefined, { unit: joint.target.unit });
  const { hole, bolt, pass } = turn;
  return { joint: joint.joint, hole, bolt, pass, set: written(set, 'torque'), wrench: joint.wrench, result };
}

/** What was last said at this bolt, or of the one before: going back takes it back. */
function lastSaid(progress: TighteningProgress, place: number): From<'torque'> | undefined {
  const turn = progress.turns[place];
  const trouble = progress.trouble.findLast((t) => t.hole === turn?.hole && t.pass === turn.pass);
  return trouble ?? progress.done.get(place - 1);
}

/** Nothing where there is nothing to go back to. */
function backWords(
  progress: TighteningProgress,
  place: number,
  last: From<'torque'> | undefined,
): string | undefined {
  if (last && last.result !== 'clicked') return 'Take that back';
  if (place === 0) return undefined;
  return last ? `Take back bolt ${progress.turns[place - 1]!.bolt}` : 'Back';
}

/** What a bolt is answered with, as buttons and as phrases; the last is what the pedal says. */
function boltChoices({ words, takesBack, busy, back, say }: ReturnType<typeof useBolts>): Choice[] {
  return [
    {
      label: words ?? 'Back',
      say: phrases.takeBack,
      writes: takesBack,
      act: back,
      disabled: words === undefined || busy,
    },
    {
      label: 'Turns, does not rise',
      say: phrases.turns,
      look: 'danger',
      writes: true,
      act: () => say('turned without rising'),
      disabled: busy,
    },
    {
      label: 'Clicked · next bolt',
      say: phrases.clicked,
      look: 'go',
      writes: true,
      act: () => say('clicked'),
      disabled: busy,
    },
  ];
}

/** What is said at a bolt: its buttons, and what can be asked and is only told. */
function boltQuestion(
  joint: From<'joint'>,
  progress: TighteningProgress,
  place: number,
  buttons: readonly Choice[],
): Question {
  const [turn, next] = progress.turns.slice(place);
  const key = `${joint.entry} ${place} ${progress.done.size} ${progress.trouble.length}`;
  if (!turn) return { key, choices: [] };
  const told = [
    toldAloud(phrases.tight, `${torqueAloud(joint, turn)}, ${passName(turn, progress)}.`),
    toldAloud(phrases.again, spoken(joint, turn)),
    toldAloud(phrases.whatNext, next ? spoken(joint, next) : 'That is the last one.'),
  ];
  return { key, choices: [...buttons, ...told] };
}

function BoltButtons({ choices }: { choices: readonly Choice[] }) {
  return (
    <footer>
      {choices.map((choice) => (
        <ChoiceButton key={choice.say} choice={choice} autoFocus={choice.look === 'go'} />
      ))}
    </footer>
  );
}

function BoltHead(props: {
  job: Job;
  joint: From<'joint'>;
  turn: BoltTurn;
  progress: TighteningProgress;
  onLeave: () => void;
}) {
  const { job, joint, turn, progress } = props;
  return (
    <header>
      <Button look="quiet" onClick={props.onLeave}>
        Leave
      </Button>
      <span>
        Tag {job.tag} · {joint.name} · {passName(turn, progress)}
      </span>
      <span className="row">
        bolt {turn.bolt} of {joint.holes.length}
        <Camera job={job.id} stage="assembly" about={`${joint.name}, bolt ${turn.bolt}`} />
        <Speak words={spoken(joint, turn)} />
      </span>
    </header>
  );
}

const spoken = (joint: From<'joint'>, turn: BoltTurn): string =>
  `Bolt ${turn.bolt}. ${torqueAloud(joint, turn)}.`;

/** What is said aloud: no signs that a voice would stumble over. */
function torqueAloud(joint: From<'joint'>, turn: BoltTurn): string {
  const torque = show(turnTorque(joint, turn), undefined, { unit: joint.target.unit });
  const units: Readonly<Record<string, string>> = {
    'in-lb': 'inch pounds',
    'ft-lb': 'foot pounds',
    N·m: 'newton meters',
  };
  return torque.replace(joint.target.unit, units[joint.target.unit] ?? joint.target.unit);
}

const passName = (turn: BoltTurn, { passes }: TighteningProgress) =>
  turn.isRound ? 'last round at full torque' : `pass ${turn.pass} of ${passes}`;

function litFor(progress: TighteningProgress, place: number) {
  const turn = progress.turns[place]!;
  const before = progress.turns[place - 1];
  const inPass = progress.turns.flatMap((t, i) =>
    t.pass === turn.pass && progress.done.has(i) && i !== place ? [t.hole] : [],
  );
  return {
    next: turn.hole,
    before: before?.pass === turn.pass ? before.hole : undefined,
    done: new Set(inPass),
    trouble: new Set(progress.trouble.map((t) => t.hole).filter((h) => h !== turn.hole)),
  };
}

const inSystem = (q: Quantity, system: UnitSystem) => show(q, system);

/** The number that the wrench is set to. It stays in sight wherever the click can be said. */
function TorqueNow({ joint, turn }: { joint: From<'joint'>; turn: BoltTurn }) {
  const system = useUnits();
  const torque = turnTorque(joint, turn);
  const [number, ...unit] = show(torque, undefined, { unit: joint.target.unit }).split(' ');
  return (
    <div className="torque-now">
      <div className="big" data-system={system}>
        {number} <small>{unit.join(' ')}</small>
      </div>
      <div className="also">{inSystem(torque, /N·m|kgf/.test(joint.target.unit) ? 'inch' : 'metric')}</div>
    </div>
  );
}

function BoltWords(props: { joint: From<'joint'>; turn: BoltTurn; progress: TighteningProgress }) {
  const { joint, turn, progress } = props;
  const shop = useShop();
  const number = show(turnTorque(joint, turn), undefined, { unit: joint.target.unit }).split(' ')[0];
  const wrench = shop.wrenches.find((w) => w.tool === joint.wrench);
  const neighbours = passesAround(joint, turn, progress);
  return (
    <div>
      <p className="line-large">
        {joint.wrench ? (
          <>
            Wrench <b>{wrench?.name ?? joint.wrench.replaceAll('-', ' ')}</b>, set to <b>{number}</b>
          </>
        ) : (
          'No wrench named: use one with this torque in the upper part of its range'
        )}
      </p>
      <p className="line-large">
        {joint.condition ? `${joint.condition} · ` : ''}
        {[joint.targetOrigin.from, joint.targetOrigin.detail].filter(Boolean).join(', ')}
      </p>
      {neighbours && <p className="line-large">{neighbours}</p>}
    </div>
  );
}

function passesAround(joint: From<'joint'>, turn: BoltTurn, { passes }: TighteningProgress): string {
  const parts = joint.finalRound ? [...joint.passes, 1] : joint.passes;
  const at = (pass: number) =>
    show({ kind: 'torque', si: joint.target.si * parts[pass - 1]!, unit: joint.target.unit }, undefined, {
      unit: joint.target.unit,
    });
  const said = [
    turn.pass > 1 && `Pass ${turn.pass - 1} was ${at(turn.pass - 1)}`,
    turn.pass < passes && `pass ${turn.pass + 1} will be ${at(turn.pass + 1)}`,
  ];
  return said.filter(Boolean).join(', ').replace(/^pass/, 'Pass');
}

interface Onward {
  readonly complete: boolean;
  /** whether more is to be put back */
  readonly more: boolean;
  readonly act: () => void;
}

/** Where the on key leads once every bolt was gone over: to the next piece, or to the sheet that tells what is wrong. */
function useOnward(progress: TighteningProgress): Onward {
  const [, go] = useLocation();
  const { job, assembly } = useAnswers();
  const more = assembly.next !== undefined || assembly.gates.some(({ state }) => state === 'asked');
  const complete = progress.next === undefined && progress.trouble.length === 0;
  const page = more && complete ? 'put-together' : 'assembly';
  return { complete, more, act: () => go(`/job/${job.id}/${page}`) };
}

function Finished(props: {
  joint: From<'joint'>;
  progress: TighteningProgress;
  onward: Onward;
  onBack: () => void;
  onLeave: () => void;
}) {
  const { joint, progress, onward } = props;
  const { complete, more } = onward;
  const missed = progress.turns.filter((_, i) => !progress.done.has(i));
  return (
    <div className="step">
      <header>
        <span>{joint.name}</span>
        <Speak words={`${joint.name}: ${complete ? 'tight' : 'not finished'}.`} />
      </header>
      <JointDrawing
        joint={joint}
        lit={{
          done: new Set(complete ? joint.order : []),
          trouble: new Set(progress.trouble.map((t) => t.hole)),
        }}
      />
      <div className="stack">
        <div className={complete ? 'verdict pass large' : 'verdict cannot-decide large'}>
          {complete ? 'tight' : 'not finished'}
        </div>
        {missed.length > 0 && (
          <p className="line-large">
            Not clicked:{' '}
            {missed
              .slice(0, 8)
              .map((t) => `bolt ${t.bolt} in pass ${t.pass}`)
              .join(', ')}
            {missed.length > 8 && ` and ${missed.length - 8} more`}
          </p>
        )}
        {progress.trouble.map((t) => (
          <p className="line-large" key={t.entry}>
            Bolt {boltOf(t)} {t.result}: find out why before it is run.
          </p>
        ))}
      </div>
      <footer>
        <Button onClick={props.onBack}>Back</Button>
        {more && complete && <Button onClick={props.onLeave}>To Assembly</Button>}
        <Button look="go" autoFocus onClick={onward.act}>
          {more && complete ? 'Go on putting together' : 'To Assembly'}
        </Button>
      </footer>
    </div>
  );
}
