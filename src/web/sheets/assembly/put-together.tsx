import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import {
  type Answers,
  type AssemblyPlan,
  type BackStep,
  type Fastener,
  fastenerLabel,
  type Job,
} from '../../../job/index.js';
import { listed } from '../../../phrase/index.js';
import { useAnswers } from '../../data/answers.js';
import { asBody } from '../../form/as-body.js';
import { Asked, Resumed } from '../../form/form.js';
import { type Form, useForm } from '../../form/use-form.js';
import { Page } from '../../frame/page.js';
import { Button, Wrong } from '../../parts/act.js';
import { Dialog } from '../../parts/dialog.js';
import { Speak } from '../../parts/speak.js';
import type { Choice } from '../../talk/answers/choice.js';
import { phrases } from '../../talk/answers/phrases.js';
import { ActPage } from '../teardown/act-page.js';
import { Stepper } from '../teardown/counter.js';
import { Mind } from '../teardown/mind.js';
import { TickRows } from '../teardown/tick-row.js';
import { ViewRows } from '../teardown/view-rows.js';
import { GateAct } from './gate-act.js';
import { OldOneForNow } from './old-one-for-now.js';
import { Renewals } from './renewals.js';
import { SeveralBack } from './several-back.js';
import { useTakeBack } from './take-back.js';
import { TorqueLines } from './torque-lines.js';
import { Wrongs } from './wrongs.js';

/** Putting together step by step: the last off first, each gate before what would hide it. */
export function PutTogether(props: { answers: Answers; step?: string | undefined }) {
  const { answers, step: named } = props;
  const { job, assembly: plan } = answers;
  const { id } = job;
  const [, go] = useLocation();
  const leave = () => go(`/job/${id}/assembly`);
  const onDone = () => go(`/job/${id}/put-together`);
  const asked = named === undefined ? plan.gates.find((g) => g.state === 'asked') : undefined;
  const back = plan.steps.filter((s) => s.state === 'back');
  const where = `Assembly ${Math.min(back.length + 1, plan.steps.length)} / ${plan.steps.length}`;
  if (asked) {
    return (
      <GateAct
        key={asked.step}
        job={job}
        asked={asked}
        where={where}
        coverage={plan.coverage}
        onDone={onDone}
        onLeave={leave}
      />
    );
  }
  const step = named === undefined ? plan.next : plan.steps.find((s) => s.off.step === named);
  if (!step) return <SoFar id={id} job={job} plan={plan} />;
  const open = step.state !== 'back' && step.fingerTight === undefined && toTighten(answers, step);
  return (
    <Act
      key={step.off.step}
      job={job}
      step={step}
      where={where}
      onDone={open ? () => go(`/job/${id}/tighten/${open}`) : onDone}
      onLeave={leave}
    />
  );
}

/** Of a piece that went back: the joint that is laid out for it and not tight yet. */
const toTighten = ({ tightening }: Answers, { torques }: BackStep): string | undefined =>
  torques.find(({ joint }) => joint !== undefined && tightening.get(joint)?.next !== undefined)?.joint;

/** Where it ends: everything is back, or so far and no further. */
function SoFar({ id, job, plan }: { id: string; job: Job; plan: AssemblyPlan }) {
  const { leftOver, plugsForgotten } = useAnswers().tally;
  const title = plan.soFar
    ? 'So far and no further'
    : plan.steps.length === 0
      ? 'Nothing has come off'
      : leftOver.length + plugsForgotten.length > 0
        ? 'Back on, but not all is right'
        : 'Everything is back on';
  return (
    <Page title={title}>
      {plan.soFar && <p className="say">{plan.soFar}</p>}
      <Speak words={`${title}. ${plan.soFar ?? ''}`} />
      <Wrongs />
      <div className="row">
        {plan.late.map((wait) => (
          <OldOneForNow key={wait.component} job={job} wait={wait} />
        ))}
      </div>
      <p className="row">
        <Link className="button go" href={`/job/${id}/assembly`}>
          To Assembly
        </Link>
      </p>
    </Page>
  );
}

interface ActProps {
  readonly job: Job;
  readonly step: BackStep;
  readonly where: string;
  readonly onDone: () => void;
  readonly onLeave: () => void;
}

/** What is looked at on the way back; `usual` is taken to be so, what can hurt somebody is not before it is ticked. */
function checksOf({ checks }: BackStep) {
  const words = (of: BackStep['checks']) => [...new Set(of.map((c) => c.words))];
  const safety = words(checks.filter((c) => c.safety));
  const usual = words(checks).filter((check) => !safety.includes(check));
  return { checks: [...safety, ...usual], safety, usual };
}

/** What was done as it is ticked and counted, and what still speaks against its being covered. */
function useBack({ job, step, onDone }: ActProps) {
  const logged = step.state === 'back' ? job.steps.get(step.step) : undefined;
  const plugs = [...new Set([...step.unplug, ...(logged?.unplugged ?? [])])];
  const { checks, safety, usual } = checksOf(step);
  const here = step.renew.flatMap((r) => (r.state === 'here' && r.part ? [r.part] : []));
  const form = useForm({
    job: job.id,
    kind: 'step',
    handle: step.step,
    title: `${step.title}: back on`,
    fields: {
      $counts: { as: 'drawn', label: 'Fasteners', begin: countsBefore(step.fasteners, logged?.fasteners) },
      unplugged: { as: 'drawn', label: 'Plugs out', begin: logged?.unplugged ?? plugs },
      checked: { as: 'drawn', label: 'As it should be', begin: logged?.checked ?? usual },
      $fitted: { as: 'drawn', label: 'New parts in', begin: here.map((part) => part.part) },
      words: {
        as: 'text',
        label: 'Note',
        hint: 'sealant, which way round, how it felt',
        begin: logged?.words,
      },
    },
    also: ({ unplugged = [], checked = [] }, { $counts }) => ({
      step: step.step,
      stage: 'assembly',
      title: `${step.title}: back on`,
      state: 'done',
      putsBack: step.off.step,
      component: step.off.component,
      fasteners: step.fasteners.flatMap((f, i): Fastener[] => {
        const count = ($counts as number[])[i] ?? 0;
        return count > 0 ? [{ ...f, count }] : [];
      }),
      unplugged,
      checked,
    }),
    lines: (body, { $fitted }) => [
      ...here
        .filter(({ part }) => ($fitted as string[]).includes(part))
        .map((part) => ({ kind: 'part' as const, body: { ...asBody(part), state: 'fitted' } })),
      { kind: 'step', body },
    ],
    onDone,
  });
  const look = safety.find((check) => !form.list('checked').includes(check));
  const begun = safety.length > 1 && look !== safety[0];
  const spoken = begun ? `Look: ${look ?? safety.at(-1)}` : spokenOf(step);
  return { logged, form, plugs, checks, here, look, spoken };
}

/**
 * The one touch says all that it claims: what can hurt somebody is looked at point by point, and the last of them, where
 * nothing else is open, says that the piece is back.
 */
function goWords(
  look: string | undefined,
  { logged, doubts, plugs }: { logged: boolean; doubts: number; plugs: readonly string[] },
): string {
  if (look && doubts > 1) return `It is so: ${look}`;
  if (!look && doubts > 0) return 'It is back on · next';
  if (!look && logged) return 'Keep it so';
  const said = [plugs.length > 0 && 'plugs out', look].filter(Boolean);
  return `Back on, ${said.length > 0 ? said.join(', ') : 'all right'} · next`;
}

/** Within a step the key takes back what was looked at last, else what was done last; of a piece that is back it only leads on. */
function useBackKey(at: Pick<ActProps, 'step' | 'onDone'> & { form: Form; logged: boolean }) {
  const { step, form, logged, onDone } = at;
  const takeBack = useTakeBack();
  if (logged) return { words: 'Back', act: onDone };
  const checked = form.list('checked');
  const ticked = checksOf(step).safety.findLast((check) => checked.includes(check));
  if (ticked === undefined) return takeBack;
  const without = checked.filter((check) => check !== ticked);
  return { words: `Not so yet: ${ticked}`, act: () => form.set('checked', without) };
}

function Act(props: ActProps) {
  const { job, step, where, onDone, onLeave } = props;
  const [asking, setAsking] = useState(false);
  const { logged, form, plugs, checks, here, look, spoken } = useBack(props);
  const back = useBackKey({ step, form, logged: Boolean(logged), onDone });
  const doubts = doubtsOf(step, {
    counts: form.list<number>('$counts'),
    plugged: plugs.filter((port) => !form.list('unplugged').includes(port)),
    notSo: checks.filter((check) => !form.list('checked').includes(check)),
    notFitted: here.filter(({ part }) => !form.list('$fitted').includes(part)).map(({ name }) => name),
  });
  return (
    <ActPage
      job={job}
      stage="assembly"
      where={where}
      title={`${step.title} back on`}
      say={sayOf(step)}
      spoken={spoken}
      back={back?.act}
      backWords={back?.words}
      onLeave={onLeave}
      tight={tightAloud(step)}
      choices={[
        ...(look
          ? [{ label: 'It is not so', say: phrases.notSo, writes: false, act: () => setAsking(true) }]
          : []),
      ]}
      alsoSaid={oneMissing(step, form, !look && !logged && doubts.length === 0)}
      other={!logged && <SeveralBack job={job} />}
      go={{
        say: look ? phrases.isSo : phrases.next,
        label: goWords(look, { logged: Boolean(logged), doubts: doubts.length, plugs }),
        act: () => {
          if (look) form.set('checked', [...form.list('checked'), look]);
          if (doubts.length <= (look ? 1 : 0)) return form.keep();
          if (!look) setAsking(true);
          return undefined;
        },
        disabled: form.busy,
      }}
      side={
        <>
          <Resumed form={form} />
          <BackSide job={job} step={step} form={form} rows={{ here, plugs, checks }} />
          <Asked form={form} names={['words']} />
          <Wrong words={form.wrong} />
        </>
      }
    >
      <Mind cautions={step.cautions} lookAlikes={step.lookAlikes} harm />
      <Renewals renew={step.renew} />
      <Advice step={step} />
      <ViewRows job={job} views={step.views.filter((v) => v.shown)} stage="teardown" when="before" />
      <Doubts open={asking} doubts={doubts} onClose={() => setAsking(false)} onGo={() => void form.keep()} />
    </ActPage>
  );
}

/** Said where all that came out is of one kind: the piece is back, and one of it was left over. */
function oneMissing(step: BackStep, form: Form, isSure: boolean): Choice[] {
  const [kind, ...others] = step.fasteners;
  if (!isSure || !kind || others.length > 0) return [];
  const act = () => {
    form.set('$counts', [kind.count - 1]);
    return form.keep();
  };
  return [{ label: `Back on, one ${fastenerLabel(kind)} missing`, say: phrases.missing, writes: true, act }];
}

/** The maker's line alone: a figure of the class is for the eyes, with the words beside it. */
function tightAloud({ torques }: BackStep): string | undefined {
  const known = torques.flatMap(({ name, spec }) => (spec?.value ? [`${name}, ${spec.value.written}`] : []));
  return known.length > 0 ? `${listed(known)}.` : undefined;
}

/** What is counted in, tightened, new, unplugged and looked at. */
function BackSide(props: {
  job: Job;
  step: BackStep;
  form: Form;
  rows: Pick<ReturnType<typeof useBack>, 'here' | 'plugs' | 'checks'>;
}) {
  const { job, step, form } = props;
  const { here, plugs, checks } = props.rows;
  return (
    <>
      <CountIn step={step} form={form} />
      {step.fingerTight && <p className="care">! {step.fingerTight}</p>}
      <TorqueLines job={job} torques={step.torques} />
      <TickRows
        form={form}
        name="$fitted"
        items={here.map(({ part }) => part)}
        says={(part) => `New one in: ${here.find((p) => p.part === part)!.name}`}
      />
      <TickRows form={form} name="unplugged" items={plugs} says={(port) => `Plug out of: ${port}`} />
      <TickRows form={form} name="checked" items={checks} says={(check) => check} />
    </>
  );
}

/** Each kind of fastener counted in, or all of it at once. */
function CountIn({ step, form }: { step: BackStep; form: Form }) {
  const counts = form.list<number>('$counts');
  const set = (i: number, count: number) =>
    form.set(
      '$counts',
      counts.map((c, j) => (j === i ? count : c)),
    );
  return step.fasteners.map((f, i) => (
    <div className="act-row" key={fastenerLabel(f)}>
      <div>
        <b>{fastenerLabel(f)}</b>
        {counts[i]! < f.count && (
          <Button look="quiet" onClick={() => set(i, f.count)}>
            All {f.count} are in
          </Button>
        )}
      </div>
      <Stepper name={fastenerLabel(f)} value={counts[i]!} of={f.count} onChange={(n) => set(i, n)} />
    </div>
  ));
}

/** All that came out is taken to be in again, and stands there to be counted: what is left in the bag is said. */
function countsBefore(out: readonly Fastener[], back: readonly Fastener[] | undefined): number[] {
  const known = new Map(back?.map((f) => [fastenerLabel(f), f.count]));
  return out.map((f) => (back ? (known.get(fastenerLabel(f)) ?? 0) : f.count));
}

/** How it goes together: which way round, what is oiled, what is sealed. */
function Advice({ step }: { step: BackStep }) {
  const lines = [
    ...step.wayRound.map((a) => ({ ...a, label: 'Way round' })),
    ...step.lubricants.map((a) => ({ ...a, label: 'Oil' })),
    ...step.sealants.map((a) => ({ ...a, label: 'Sealant' })),
  ];
  return lines.map((a) => (
    <div className="act-row" key={`${a.label} ${a.of}`}>
      <span>
        <span className="soft">{a.label}:</span> {a.words}
        {step.components.length > 1 && <span className="soft"> ({a.of})</span>}
      </span>
    </div>
  ));
}

function doubtsOf(
  step: BackStep,
  seen: {
    readonly counts: readonly number[];
    readonly plugged: readonly string[];
    readonly notSo: readonly string[];
    readonly notFitted: readonly string[];
  },
): { readonly word: string; readonly say: string }[] {
  const where = step.off.bag ? ` in bag ${step.off.bag}` : '';
  return [
    ...step.fasteners.flatMap((f, i) => {
      const left = f.count - seen.counts[i]!;
      if (left > 0) return [{ word: 'left over', say: `${left} × ${fastenerLabel(f)}${where}` }];
      return left < 0 ? [{ word: 'too many', say: `${-left} × ${fastenerLabel(f)} more than came out` }] : [];
    }),
    ...seen.plugged.map((port) => ({
      word: 'still plugged',
      say: `${port}: take the plug out before it is covered`,
    })),
    ...seen.notFitted.map((say) => ({ word: 'here, not fitted', say })),
    ...step.renew.filter((r) => r.state === 'late').map((r) => ({ word: 'not here', say: r.name })),
    ...seen.notSo.map((say) => ({ word: 'not looked at, or not so', say })),
    ...(step.state === 'waits'
      ? [{ word: 'waits', say: `for ${listed(step.waitsFor.flatMap((w) => w.parts.map((p) => p.name)))}` }]
      : []),
    ...(step.state === 'later' ? [{ word: 'still off', say: `${listed(step.under)} goes back first` }] : []),
  ];
}

function Doubts(props: {
  open: boolean;
  doubts: readonly { readonly word: string; readonly say: string }[];
  onClose: () => void;
  onGo: () => void;
}) {
  return (
    <Dialog title="Before it is covered" open={props.open} onClose={props.onClose}>
      <ul className="plain stack tight">
        {props.doubts.map((d) => (
          <li key={`${d.word} ${d.say}`}>
            <b className={`verdict wraps ${d.word.startsWith('not looked at') ? 'cannot-decide' : 'fail'}`}>
              {d.word}
            </b>{' '}
            {d.say}
          </li>
        ))}
      </ul>
      <p className="soft">A bolt left over or a plug still in keeps Assembly closed until it is put right.</p>
      <div className="row end">
        <Button look="go" onClick={props.onClose}>
          Go back
        </Button>
        <Button
          onClick={() => {
            props.onClose();
            props.onGo();
          }}
        >
          Log it as it is
        </Button>
      </div>
    </Dialog>
  );
}

function sayOf(step: BackStep): string {
  const parts = listed(step.waitsFor.flatMap((w) => w.parts.map((p) => p.name)));
  return [
    step.state === 'waits' && `Waits for ${parts}.`,
    step.state === 'later' && `First: ${listed(step.under)}.`,
    step.off.bag && `Bag ${step.off.bag}.`,
    step.off.words && `Noted when it came off: ${step.off.words}`,
  ]
    .filter(Boolean)
    .join(' ');
}

function spokenOf(step: BackStep): string {
  return [
    `Put back: ${step.title}`,
    step.off.bag && `from bag ${step.off.bag}`,
    ...step.fasteners.map((f) => `${f.count} ${fastenerLabel(f)}`),
    ...step.unplug.map((p) => `Take the plug out of ${p}`),
    ...step.checks.map((c) => c.words),
  ]
    .filter(Boolean)
    .join('. ');
}
