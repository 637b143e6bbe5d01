import { useMemo, useState } from 'react';
import {
  checkOrder,
  FastenError,
  findThread,
  fitWrench,
  passSchemes,
  requirePlausibleTorque,
  tighteningOrder,
} from '../../../fasten/index.js';
import type { From, Job, Shop } from '../../../job/index.js';
import { parseThread, QuantityError } from '../../../quantity/index.js';
import { write } from '../../data/outbox.js';
import { useShop } from '../../data/queries.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { Dialog } from '../../parts/dialog.js';
import { Choices, SelectField, TextField } from '../../parts/field.js';
import { readWritten, WrittenField, type WrittenState } from '../../parts/written.js';
import { handleOf } from '../components.js';
import { aroundHead, type Hole, HolePattern } from './hole-pattern.js';
import { JointDrawing } from './joint-drawing.js';

/** Lays out a group of bolts: holes, torque, passes, order. The maker's sequence goes before the computed one. */
export function LayOutJoint({
  job,
  joint,
  onClose,
}: {
  job: Job;
  joint: From<'joint'> | 'new' | undefined;
  onClose: () => void;
}) {
  return (
    <Dialog title="Lay out a joint" open={joint !== undefined} onClose={onClose}>
      {joint && <Form job={job} before={joint === 'new' ? undefined : joint} onClose={onClose} />}
    </Dialog>
  );
}

type Scheme = 'half-full' | 'thirds' | 'one' | 'own';
type OrderFrom = 'computed' | 'maker';

function Form({
  job,
  before,
  onClose,
}: {
  job: Job;
  before: From<'joint'> | undefined;
  onClose: () => void;
}) {
  const shop = useShop();
  const torqueSpecs = [...job.specs.values()].filter((s) => s.value?.kind === 'torque');
  const [name, setName] = useState(before?.name ?? 'Cylinder head');
  const [spec, setSpec] = useState('');
  const [target, setTarget] = useState<WrittenState>(readWritten(before?.target.written ?? '', 'torque'));
  const [thread, setThread] = useState(before?.thread ?? '');
  const [holes, setHoles] = useState<readonly Hole[]>(before?.holes ?? aroundHead(8, 110, 80));
  const [scheme, setScheme] = useState<Scheme>(before ? 'own' : 'half-full');
  const [own, setOwn] = useState((before?.passes ?? [0.5, 1]).map((p) => `${Math.round(p * 100)}`).join(' '));
  const [round, setRound] = useState(before?.finalRound ?? false);
  const [orderFrom, setOrderFrom] = useState<OrderFrom>(
    before?.orderOrigin.from === "maker's sheet" ? 'maker' : 'computed',
  );
  const [tapped, setTapped] = useState<readonly number[]>(before?.order ?? []);
  const [page, setPage] = useState('');
  const [wrench, setWrench] = useState(before?.wrench ?? '');
  const [edge, setEdge] = useState(before?.bottomEdge ?? '');
  const { wrong, act } = useAct();

  const computed = useMemo(() => orderOf(holes), [holes]);
  const order = orderFrom === 'computed' ? (computed.order ?? []) : tapped;
  const parts =
    scheme === 'own'
      ? own
          .trim()
          .split(/[\s,/]+/)
          .map((p) => Number(p) / 100)
      : partsOf[scheme];
  const threadWrong = wrongThread(thread);
  const implausible = implausibleTorque(target, thread);

  const chooseSpec = (id: string) => {
    setSpec(id);
    const chosen = job.specs.get(id);
    if (chosen?.value) setTarget(readWritten(chosen.value.written, 'torque', chosen.value.unit));
    if (chosen) setName(chosen.label.replace(/\s*(bolt|nut|screw)s?\s*(torque)?$/i, '') || chosen.label);
  };

  const save = () =>
    act(async () => {
      if (!target.value) throw new Error('Say how tight: a torque with its unit, such as 140 in-lb.');
      if (implausible) throw new Error(implausible);
      checkOrder(order, holes.length);
      const from = job.specs.get(spec);
      const around = orderFrom === 'computed' ? computed.around : undefined;
      await write(job.id, 'joint', {
        joint: before?.joint ?? handleOf(name),
        name: name.trim(),
        holes: [...holes],
        thread: thread.trim() || undefined,
        target: target.value,
        targetOrigin: from?.origin ??
          before?.targetOrigin ?? { from: "maker's sheet", detail: page.trim() || 'page not noted' },
        passes: [...parts],
        finalRound: round,
        around: around && [...around],
        order: [...order],
        orderOrigin:
          orderFrom === 'computed'
            ? { from: 'computed', detail: computed.rule }
            : { from: "maker's sheet", detail: page.trim() || 'sequence tapped in' },
        wrench: wrench || undefined,
        bottomEdge: edge.trim() || undefined,
      });
      onClose();
    });

  return (
    <>
      {torqueSpecs.length > 0 && (
        <SelectField
          label="From the maker’s sheet"
          value={spec}
          onChange={chooseSpec}
          none="not from a confirmed line"
          choices={torqueSpecs.map((s) => ({ id: s.spec, label: `${s.label}: ${s.value?.written}` }))}
        />
      )}
      <div className="fields">
        <TextField label="What is tightened" value={name} onChange={setName} />
        <WrittenField
          label="Torque"
          kind="torque"
          state={target}
          onChange={setTarget}
          hint="140 in-lb"
          wrong={implausible}
        />
        <TextField
          label="Thread"
          value={thread}
          onChange={setThread}
          placeholder="5/16-18 or M8x1.25"
          wrong={threadWrong}
          help="Lets an impossible torque be caught."
        />
      </div>
      <HolePattern holes={holes} given={before !== undefined} onChange={setHoles} />
      <Choices<OrderFrom>
        label="Order"
        value={orderFrom}
        onChange={(v) => {
          setOrderFrom(v);
          setTapped([]);
        }}
        choices={[
          { id: 'computed', label: 'Work it out' },
          { id: 'maker', label: 'The maker’s own: tap it in' },
        ]}
        help={
          orderFrom === 'computed'
            ? computed.why
            : 'Tap the bolts in the maker’s order. Tap a bolt again to take it and those after it back.'
        }
      />
      {holes.length > 0 && (
        <JointDrawing
          joint={{ holes: [...holes], order: [...order], bottomEdge: edge }}
          {...(orderFrom === 'maker' && { onTap: (hole: number) => setTapped(tap(tapped, hole)) })}
        />
      )}
      <Passes
        scheme={scheme}
        onScheme={setScheme}
        own={own}
        onOwn={setOwn}
        round={round}
        onRound={setRound}
      />
      <WrenchChoice shop={shop} torqueNm={target.value?.si} value={wrench} onChange={setWrench} />
      <div className="fields">
        <TextField
          label="Word at the lower edge"
          value={edge}
          onChange={setEdge}
          placeholder="exhaust side"
        />
        <TextField label="Page of the maker’s sheet" value={page} onChange={setPage} placeholder="page 31" />
      </div>
      <Wrong words={wrong} />
      <div className="row end">
        <Button onClick={onClose}>Leave it</Button>
        <Button
          look="go"
          disabled={!target.value || order.length !== holes.length || threadWrong !== undefined}
          onClick={() => void save()}
        >
          Lay it out
        </Button>
      </div>
    </>
  );
}

const partsOf: Readonly<Record<Exclude<Scheme, 'own'>, readonly number[]>> = {
  'half-full': passSchemes.find((s) => s.id === 'half-full')!.parts,
  thirds: passSchemes.find((s) => s.id === 'thirds')!.parts,
  one: [1],
};

function Passes(props: {
  scheme: Scheme;
  onScheme: (s: Scheme) => void;
  own: string;
  onOwn: (v: string) => void;
  round: boolean;
  onRound: (v: boolean) => void;
}) {
  return (
    <div className="stack tight">
      <Choices<Scheme>
        label="Passes"
        value={props.scheme}
        onChange={props.onScheme}
        choices={[
          { id: 'half-full', label: 'half, full' },
          { id: 'thirds', label: '30, 70, 100 %' },
          { id: 'one', label: 'one pass' },
          { id: 'own', label: 'own' },
        ]}
        help="The maker’s own steps go before these."
      />
      {props.scheme === 'own' && (
        <TextField
          label="Percent of full torque, pass by pass"
          value={props.own}
          onChange={props.onOwn}
          placeholder="50 100"
        />
      )}
      <label className="tick">
        <input type="checkbox" checked={props.round} onChange={(e) => props.onRound(e.target.checked)} />
        Then once round in a circle at full torque
      </label>
    </div>
  );
}

/** The shop's wrenches for this torque, the fit ones first, each with its reason. */
function WrenchChoice(props: {
  shop: Shop;
  torqueNm: number | undefined;
  value: string;
  onChange: (v: string) => void;
}) {
  const { shop, torqueNm } = props;
  if (torqueNm === undefined || shop.wrenches.length === 0) return null;
  const fits = fitWrench(
    torqueNm,
    shop.wrenches.map((w) => ({
      tool: w.tool,
      name: w.name,
      minNm: w.min.si,
      maxNm: w.max.si,
      accuracyPercent: w.accuracyPercent,
    })),
  );
  const chosen = fits.find((f) => f.wrench.tool === props.value);
  return (
    <SelectField
      label="Torque wrench"
      value={props.value}
      onChange={props.onChange}
      none="not named"
      choices={fits.map((f) => ({ id: f.wrench.tool, label: `${f.fit ? '✓' : '✕'} ${f.wrench.name}` }))}
      help={chosen?.why ?? fits[0]?.why}
    />
  );
}

function orderOf(holes: readonly Hole[]): {
  order?: readonly number[];
  around?: readonly number[];
  rule: string;
  why: string;
} {
  try {
    const { order, around, rule, why, source } = tighteningOrder(holes);
    return { order, around, rule: `${rule} (${source})`, why };
  } catch (error) {
    if (error instanceof FastenError) return { rule: '', why: error.message };
    throw error;
  }
}

/** A tap puts a bolt at the end of the order; a tap on one already in takes it and those after it back. */
function tap(order: readonly number[], hole: number): number[] {
  const at = order.indexOf(hole);
  return at >= 0 ? order.slice(0, at) : [...order, hole];
}

function wrongThread(text: string): string | undefined {
  if (text.trim() === '') return undefined;
  try {
    parseThread(text);
    return undefined;
  } catch (error) {
    if (error instanceof QuantityError) return error.message;
    throw error;
  }
}

function implausibleTorque(target: WrittenState, thread: string): string | undefined {
  if (!target.value || thread.trim() === '' || wrongThread(thread)) return undefined;
  const named = parseThread(thread);
  if (!findThread(named)) return undefined;
  try {
    requirePlausibleTorque(target.value, named);
    return undefined;
  } catch (error) {
    if (error instanceof QuantityError) return error.message;
    throw error;
  }
}
